/** One figure at a time to both ends of its tolerance: against an evaluation of the machine with that figure written so. */
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import type { Reading, ResultDocument } from '../../src/evaluation.ts'
import { type Edit, MACHINE, SCENARIO, sample } from '../fixtures/fernhill.ts'

/** Without readings nothing is calibrated away; without options there is one machine. */
const bare: readonly Edit[] = [
  [SCENARIO, /\nmeasured:[\s\S]*?\n(?=status:)/u, '\n'],
  [SCENARIO, /\noptions:[\s\S]*$/u, '\n'],
]
const resultOf = (ranges: boolean, ...edits: readonly Edit[]): ResultDocument =>
  evaluate(sample(...bare, ...edits), { ranges })
const of = ({ readings }: ResultDocument, path: string): Reading | null =>
  readings.find((reading) => reading.path === path) ?? null
const speed = ({ baseline }: ResultDocument): number => baseline.travel.level.speedKmh
const oil = ({ baseline }: ResultDocument): number => baseline.heat.steadyOilC ?? 150
const relief = (text: string): Edit => [MACHINE, 'setting: 155 bar', `setting: ${text}`]
const pump = (text: string): Edit => [MACHINE, 'displacement: 7.9 cm3/rev', `displacement: ${text}`]

describe('an assumed figure', () => {
  test('a displacement moves speed and oil as the machine with that displacement does', () => {
    const reading = of(resultOf(true, pump('8.0 cm3/rev ± 10 % (assumed)')), 'circuits.main.pump.displacement')
    const [low, known, high] = ['7.2', '8.0', '8.8'].map((v) => resultOf(false, pump(`${v} cm3/rev`)))
    if (low === undefined || known === undefined || high === undefined) throw new Error('three machines')
    const share = Math.max(Math.abs(speed(low) / speed(known) - 1), Math.abs(speed(high) / speed(known) - 1))
    const kelvins = Math.max(Math.abs(oil(low) - oil(known)), Math.abs(oil(high) - oil(known)))
    expect(reading?.effectOnSpeedPercent).toBeCloseTo(100 * share, 6)
    // The nominal answer comes from a table of the heat, each sample from the balance itself.
    expect(reading?.effectOnOilK).toBeCloseTo(kelvins, 0)
    expect(reading?.label).toBe('Pump: displacement')
  })

  test('a relief moves the oil and, on the level, not the speed', () => {
    const reading = of(resultOf(true, relief('155 bar ± 10 % (assumed)')), 'circuits.main.relief.setting')
    expect(reading?.effectOnSpeedPercent).toBeCloseTo(0, 6)
    expect(reading?.effectOnOilK).toBeGreaterThan(0.5)
  })

  test('one without a tolerance, and one that was read, are not listed', () => {
    expect(of(resultOf(true, relief('155 bar (assumed)')), 'circuits.main.relief.setting')).toBeNull()
    expect(of(resultOf(true, relief('155 bar ± 10 % (measured)')), 'circuits.main.relief.setting')).toBeNull()
  })

  test('a pump that an option puts in its place takes the doubt away with it, not the doubt of today', () => {
    const option = '\noptions: [{name: P, changes: {circuits: {main: {pump: {displacement: 8.8 cm3/rev}}}}}]\n'
    const assumed = pump('8.0 cm3/rev ± 10 % (assumed)')
    const alone = of(resultOf(true, assumed), 'circuits.main.pump.displacement')
    const edits: readonly Edit[] = [bare[0] as Edit, [SCENARIO, /\noptions:[\s\S]*$/u, option], assumed]
    const withOption = of(evaluate(sample(...edits)), 'circuits.main.pump.displacement')
    expect(withOption?.effectOnSpeedPercent).toBeCloseTo(alone?.effectOnSpeedPercent ?? 0, 9)
  })

  test('without ranges nothing is asked', () => {
    expect(resultOf(false, relief('155 bar ± 10 % (assumed)')).readings).toEqual([])
  })
})
