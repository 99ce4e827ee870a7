/** An inlet that gets better and stays short of its limit: told where the way stands, and on the first page. */
import { describe, expect, it } from 'vitest'
import type { Finding, ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import type { Units } from '../../../src/report/format.ts'
import { coolerAndFilter, evaluation, finding, resultOf } from '../../fixtures/result.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

const inlet = (value: number, check = 'inlet-pressure-cold', over: Partial<Finding> = {}): Finding =>
  finding({
    id: `${check}:circuits.main.lines.suction`,
    component: 'circuits.main.lines.suction',
    check,
    value,
    limit: 0.7,
    unit: 'bar abs',
    severity: value < 0.7 ? 'change' : 'ok',
    existing: true,
    ...over,
  })

const story = (before: Finding, after: Finding, over: Partial<ResultDocument> = {}): ResultDocument => {
  const state = (one: Finding) => evaluation({ levelKmh: 2.31, gradeKmh: 1.84, settledC: 66, findings: [one] })
  const option = { ...coolerAndFilter, evaluation: state(after) }
  return resultOf('protect', { baseline: state(before), options: [option], ...over })
}

const told = (result: ResultDocument, units: Units = 'metric') => {
  const { answer, ways } = customerView(result, { units, paper: 'a4' })
  const of = (texts: readonly string[]) => texts.map(plain).filter((text) => text.includes('gets its oil more easily'))
  return { page: of(answer.cautions), way: of(ways.rows[1]?.reasons ?? []) }
}

const COLD =
  'Suction hose: at the coldest start the pump gets its oil more easily, 0.55 bar absolute in place of 0.20 bar absolute, but it needs 0.70 bar absolute. Warm it up slowly without load all the same.'

describe('an inlet that stays short', () => {
  it('is told with what it was, what it is and what the pump needs', () =>
    expect(told(story(inlet(0.2), inlet(0.55)))).toEqual({ page: [COLD], way: [COLD] }))

  // 0.20 bar is 2.9 psi, 0.55 is 8.0, 0.70 is 10.2.
  it('in the customer’s units', () =>
    expect(told(story(inlet(0.2), inlet(0.55)), 'us').way[0]).toMatch(
      /8\.0 psi absolute in place of 2\.9 psi absolute.*10\.2? psi/u,
    ))

  it('warm too, in its own words', () => {
    const [text] = told(story(inlet(0.5, 'inlet-pressure'), inlet(0.6, 'inlet-pressure'))).way
    expect(text).toContain('Suction hose: the pump gets its oil more easily, 0.60 bar absolute in place of 0.50')
    expect(text).toContain('It is not cured by this.')
  })

  it('where thin air alone makes it a watch', () =>
    expect(
      told(story(inlet(0.3, undefined, { severity: 'watch' }), inlet(0.5, undefined, { severity: 'watch' }))).way,
    ).toHaveLength(1))

  // 2 % over 0.500 is 0.510.
  it.each([
    ['cured', 0.5, 0.71],
    ['no better', 0.5, 0.5],
    ['better by less than 2 %', 0.5, 0.509],
    ['worse', 0.5, 0.45],
    ['never short', 0.75, 0.8],
  ])('not one that is %s', (_, was, is) => expect(told(story(inlet(was), inlet(is)))).toEqual({ page: [], way: [] }))

  it('against the repaired machine where there is a fault', () => {
    const restored = evaluation({ levelKmh: 2.4, gradeKmh: 2, settledC: 66, findings: [inlet(0.55)] })
    expect(told(story(inlet(0.2), inlet(0.55), { restored })).page).toEqual([])
  })
})
