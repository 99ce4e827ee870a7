/** Whether a change shows in anything that is worked out of a machine. */
import type { Evaluation, Finding } from '../evaluation.ts'
import { noticeable } from '../tables/limits.ts'

/** Far under the last digit of any figure that is told, whatever its unit: what is as good as nothing on both sides. */
const HAIR = 1e-6

const isMapping = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null

/** Numbers within 2 % of each other, everything else word for word, through lists and mappings. */
const isSame = (was: unknown, is: unknown): boolean => {
  if (typeof was === 'number' && typeof is === 'number')
    return Math.abs(is - was) <= noticeable.value * Math.max(Math.abs(was), Math.abs(is)) + HAIR
  if (!isMapping(was) || !isMapping(is)) return was === is
  const keys = Object.keys(was)
  return keys.length === Object.keys(is).length && keys.every((key) => key in is && isSame(was[key], is[key]))
}

/** What was found, without the words and without the mark of what existed, which the machine itself never bears. */
const found = (findings: readonly Finding[], other: ReadonlySet<string>) =>
  findings
    // Some checks compare with the machine before, and are made of an option only: what is within its limits says nothing new.
    .filter(({ id, severity }) => other.has(id) || severity !== 'ok')
    .map(({ id, value, limit, severity }) => ({ id, value, limit, severity }))

/** The curve, and when it passes a limit, follow from the heat: a hair decides whether oil of 70 °C ever gets there. */
const told = ({ heat, findings, ...rest }: Evaluation, than: Evaluation) => {
  const { curve: _, minutesTo: __, ...balance } = heat
  return { ...rest, heat: balance, findings: found(findings, new Set(than.findings.map(({ id }) => id))) }
}

/**
 * Nothing differs by more than the 2 % from which on a change is one: travel points, circuits, lines, drops, heat, and what
 * every check says of them.
 */
export const hasSameFigures = (was: Evaluation, is: Evaluation): boolean => isSame(told(was, is), told(is, was))
