import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { acceptanceView } from '../../../src/report/view-model/acceptance.ts'
import { resultOf } from '../../fixtures/result.ts'
import { STORIES } from '../stories.ts'

const story = (name: string): ResultDocument => {
  const found = STORIES.find(([own]) => own === name)
  if (found === undefined) throw new Error(name)
  return found[1]
}
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('what was promised, what was measured', () => {
  const view = acceptanceView(story('after the work'), 'metric')
  it('one row each, with what counts as kept', () =>
    expect(view.rows.map((row) => [row.what, plain(row.promised), plain(row.measured), row.result])).toEqual([
      ['Speed on the level, mean of both ways', '3.9 km/h or more', '3.7 km/h', 'not kept'],
      ['Relief pressure, left', '150 bar to 160 bar', '154 bar', 'kept'],
      ['Oil at work, at the air of the test', 'nothing', '71 °C', 'open'],
    ]))
  it('the runs both ways, and the verdict', () => {
    expect(view.runs.map(plain)).toEqual(['Forward: 20 m in 19.0 s, 3.8 km/h', 'Back: 20 m in 20.0 s, 3.6 km/h'])
    expect(view.verdict).toContain('Not everything is as it was promised')
    expect(acceptanceView(story('after the repair'), 'metric').verdict).toContain('within the limits we checked')
  })
  it('in the customer’s units', () =>
    expect(plain(acceptanceView(story('after the work'), 'us').rows[0]?.measured ?? '')).toBe('2.3 mph'))
  it('is not there until there was a test', () =>
    expect(acceptanceView(resultOf('decline'), 'metric')).toMatchObject({ shown: false, rows: [] }))
})
