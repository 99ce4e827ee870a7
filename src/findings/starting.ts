/** Whether the machine gets going from standstill; the checks of grade and turn differ only in what they ask of it. */
import type { Point } from '../evaluation.ts'
import type { Judged } from './check.ts'
import { isBelow } from './judging.ts'

export interface Start {
  readonly pull: number
  readonly needed: number
  readonly point: Point
  readonly source: string
}

/**
 * Pull against what is needed. Where the pull would do and the point stalls all the same, the engine dies under full
 * levers or the tracks spin: that is told in words, because the two forces would say otherwise.
 */
export const judgeStart = ({ pull, needed, point, source }: Start): Judged => {
  const held = { component: 'travel', source, worseWhenHigher: false }
  if (isBelow(pull, needed)) return { ...held, value: pull, limit: needed, unit: 'N', severity: 'stop' }
  if (!point.stalled) return { ...held, value: pull, limit: needed, unit: 'N', severity: 'ok' }
  const how = point.limitedBy === 'engine' ? 'engine stalls' : 'stands still'
  return { ...held, value: how, limit: 'moves at full lever', unit: '', severity: 'stop' }
}
