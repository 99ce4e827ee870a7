/**
 * The bank of invented cases against the demo scenarios that stand on it: outcome, speeds, the limiter that must be named
 * first, what must appear, and the price band. Source: trade reference section 9, "Expected results table" (a coarser model,
 * about a tenth slower; prices at 140 an hour). Where ours differs, the reason stands beside it.
 */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import type { OptionResult, ResultDocument } from '../../src/evaluation.ts'
import { loadQuestions } from '../../src/shell/load.ts'

const FOLDER = join(import.meta.dirname, '../../scenarios')

const resultsOf = (file: string): readonly ResultDocument[] =>
  loadQuestions(file, FOLDER).map(({ read }) => {
    if ('problems' in read) throw new Error(JSON.stringify(read.problems))
    return evaluate(read.loaded, { ranges: false })
  })

const resultOf = (file: string): ResultDocument => resultsOf(file)[0] as ResultDocument

const option = (result: ResultDocument, name: RegExp): OptionResult => {
  const found = result.options.find((one) => name.test(one.name))
  if (found === undefined) throw new Error(`no option like ${name}`)
  return found
}

const parts = ({ consequences, changes }: OptionResult): string =>
  [...consequences.map((c) => `${c.component} ${c.kind}`), ...changes.map((c) => c.component)].join(' ')

const jobs = ({ cost }: OptionResult): readonly string[] => cost.labour.map(({ job }) => job)

const checked = ({ evaluation }: OptionResult, check: string, component: string) =>
  evaluation.findings.find((finding) => finding.check === check && finding.component === component)

const within = (value: number, low: number, high: number): void => {
  expect(value).toBeGreaterThanOrEqual(low)
  expect(value).toBeLessThanOrEqual(high)
}

describe('bank', () => {
  test('S1: the pump is declined, first for the engine; the smaller motors lose the turn', () => {
    const result = resultOf('twice-as-fast.yaml')
    expect(result.recommendation.kind).toBe('decline')
    const pump = option(result, /Pump/u)
    expect(pump.answer.reasons[0]?.code).toBe('engine-power')
    expect(parts(pump)).toContain('travel.swivel')
    expect(parts(pump)).toContain('.valve')
    const motors = option(result, /Motors/u)
    // The bank gains 27 % with 315 for 400 cm3; ours goes from 310 to 250 and gains 24 %.
    within(motors.gain.speedRatio ?? 0, 1.2, 1.3)
    expect(motors.evaluation.findings.find((f) => f.check === 'turn-start')?.severity).toBe('stop')
    expect(motors.cost.lines.find((line) => /motor/iu.test(line.what))?.quantity).toBe(2)
    // Commissioning, before and after: booked with anything that is done.
    expect(jobs(motors)).toContain('test and record')
    within(motors.cost.likely, 1900, 2300)
  })

  test('S2: cooler by its W/K, bypass, lamps for the fan, filter, breather; no pump', () => {
    const result = resultOf('too-hot-to-touch.yaml')
    expect(result.recommendation).toMatchObject({ kind: 'protect', option: 'Cooler and return filter' })
    within(result.baseline.heat.steadyOilC ?? 0, 86, 90)
    const kit = option(result, /Cooler/u)
    for (const part of ['cooler', 'cooler-bypass', 'lamp-set', 'filter', 'breather']) expect(parts(kit)).toContain(part)
    expect(kit.evaluation.findings.find(({ check }) => check === 'fan-current')?.severity).toBe('ok')
    expect(option(result, /pump/u).answer.answer).toBe('decline')
    within(kit.cost.likely, 2300, 3000)
  })

  test('S3: worn by 20 % and more; restored first, with a clean tank and a filter', () => {
    const result = resultOf('slower-every-season.yaml')
    expect(result.recommendation.kind).toBe('restore')
    expect(result.recommendation.faults.map((f) => f.component)).toContain('circuits.left.pump')
    // The bank: 1.41 to 1.68 km/h, a fifth more; ours loses less on the level, where the leak counts least.
    within((result.restored?.travel.level.speedKmh ?? 0) / result.baseline.travel.level.speedKmh, 1.1, 1.25)
    // Two elements: the machine never had a filter, the new one brings its first; the coupling is looked at in the pump
    // swap, and the oil sample at 50 h is follow-up, not part of the repair: neither is a line of the quote.
    expect(result.restoration?.cost.labour.map(({ job }) => job)).toContain('clean reservoir')
    expect(result.restoration?.consequences.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['tandem pump', 'filter', 'breather']),
    )
    // The worn pump goes back for its deposit, which is in no total.
    expect(result.restoration?.cost.deposits.map(({ part }) => part)).toEqual(['tandem-r-055'])
    within(result.restoration?.cost.likely ?? 0, 2700, 3500)
  })

  test('S4: full flow fails at the engine; limited flow on conditions', () => {
    const result = resultOf('high-flow-trencher.yaml')
    const full = option(result, /full pressure/u)
    expect(full.answer.reasons[0]?.code).toBe('engine-power')
    const limited = option(result, /limited/u)
    expect(limited.answer.answer).toBe('conditions')
    for (const part of ['relief', 'cooler', 'coupler']) expect(parts(limited)).toContain(part)
    expect(limited.cost.unpriced.join()).toMatch(/couplers/u)
    // Suction: 1.4 m/s of 1.2, and enough pressure left at the inlet, so that it is watched and not made bigger. A case
    // drain is not in the format: the trencher of the file states none.
    expect(checked(limited, 'line-velocity', 'circuits.arms.lines.suction')?.severity).toBe('watch')
    // The bank's band is 3,900 to 4,800: ours is dearer by the valve, the auxiliary hoses and the filter that it
    // finds too small for the flow, and by the lamps that give the cooler's fan its current.
    within(limited.cost.likely, 4800, 6000)
  })

  test('S8: two restored, four protected, nothing modified; one quote for the yard', () => {
    // The bank's unit D crawls at 1.22 km/h on the level with its relief at 95 bar; by our balance a low relief costs pull on
    // the slope and in the turn, not speed on the level, so our D is timed near the others and found by its gauges.
    const results = resultsOf('rental-yard.yaml')
    expect(results.map(({ recommendation }) => recommendation.kind).sort()).toEqual(
      ['protect', 'protect', 'protect', 'protect', 'restore', 'restore'].sort(),
    )
    for (const result of results) expect(option(result, /Bigger pump/u).answer.answer).toBe('decline')
    const total = results.reduce((sum, { recommendation, restoration, options }) => {
      const chosen = options.find(({ name }) => name === recommendation.option)
      return sum + (recommendation.kind === 'restore' ? (restoration?.cost.likely ?? 0) : (chosen?.cost.likely ?? 0))
    }, 0)
    within(total, 9500, 11_000)
  })

  test('S12: nearly double in high, the pull for grade and turn unchanged in low; consent, shift line, price', () => {
    const result = resultOf('two-speed-travel.yaml')
    expect(result.recommendation.kind).toBe('upgrade-on-conditions')
    const motors = option(result, /Two-speed/u)
    // The bank: 1.80 to 3.49 km/h, 1.94 times.
    within(motors.gain.speedRatio ?? 0, 1.85, 2)
    expect(motors.evaluation.travel.turn?.tractiveForceN).toBeCloseTo(
      result.baseline.travel.turn?.tractiveForceN ?? 0,
      3,
    )
    expect(motors.answer.reasons.map(({ code }) => code)).toContain('maker-consent')
    expect(parts(motors)).toContain('shift')
    expect(motors.cost.unpriced.join()).toMatch(/shifts/u)
    // High is for the flat: the pull of the grade is that of the large displacement. The spare passage takes the shift line.
    expect(motors.evaluation.travel.level.displacementCm3).toBeCloseTo(245, 6)
    expect(motors.evaluation.travel.grade.displacementCm3).toBeCloseTo(490, 6)
    expect(checked(motors, 'swivel-passages', 'travel.swivel')?.severity).toBe('ok')
    expect(motors.answer.conditions.join()).toMatch(/brakes/iu)
    // Preferred direction of each motor, and the decal: no figure, no part; for the technician, not for the quote.
    within(motors.cost.likely, 4400, 5400)
  })
})
