/**
 * One screw turned in the machine file, and the way a technician expects the answer to move. Directions only: common
 * practice, no source.
 */
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import type { ResultDocument } from '../../src/evaluation.ts'
import { type Edit, MACHINE, SCENARIO, sample } from '../fixtures/fernhill.ts'

/** Without readings: they would calibrate the change away. */
const bare: readonly Edit[] = [[SCENARIO, /\nmeasured:[\s\S]*?\n(?=status:)/u, '\n']]

const resultOf = (...edits: readonly Edit[]): ResultDocument => evaluate(sample(...bare, ...edits), { ranges: false })

const asIs = resultOf()
const level = ({ baseline }: ResultDocument): number => baseline.travel.level.speedKmh
const oil = ({ baseline }: ResultDocument): number => baseline.heat.steadyOilC ?? 151
const reliefPower = ({ baseline }: ResultDocument): number =>
  baseline.findings.find((f) => f.check === 'engine-power')?.value as number

const machine = (find: string | RegExp, put: string): Edit => [MACHINE, find, put]
const scenario = (find: string | RegExp, put: string): Edit => [SCENARIO, find, put]

describe('a screw turned', () => {
  test('a bigger pump is faster and asks the engine for more', () => {
    const turned = resultOf(machine('displacement: 7.9 cm3/rev', 'displacement: 9.5 cm3/rev'))
    expect(level(turned)).toBeGreaterThan(1.1 * level(asIs))
    expect(reliefPower(turned)).toBeGreaterThan(1.15 * reliefPower(asIs))
  })

  test('smaller motors are faster and pull less', () => {
    const turned = resultOf(machine('displacement: 235 cm3/rev', 'displacement: 195 cm3/rev'))
    expect(level(turned)).toBeGreaterThan(1.1 * level(asIs))
    expect(turned.baseline.travel.grade.tractiveForceN).toBeLessThan(0.85 * asIs.baseline.travel.grade.tractiveForceN)
  })

  test('a higher relief pulls more and asks the engine for more, the level speed stays', () => {
    const turned = resultOf(machine('setting: 155 bar', 'setting: 170 bar'))
    expect(turned.baseline.travel.grade.tractiveForceN).toBeGreaterThan(asIs.baseline.travel.grade.tractiveForceN)
    expect(reliefPower(turned)).toBeGreaterThan(reliefPower(asIs))
    expect(level(turned)).toBeCloseTo(level(asIs), 9)
  })

  test('a slower engine is slower in proportion', () => {
    const turned = resultOf(machine('rated-speed: 3000 rpm', 'rated-speed: 2700 rpm'))
    expect(level(turned) / level(asIs)).toBeGreaterThan(0.88)
    expect(level(turned) / level(asIs)).toBeLessThan(0.92)
  })

  test('a wider work hose drops less and heats less', () => {
    const turned = resultOf(machine(/swivel-to-motor: \{ hose: -4/u, 'swivel-to-motor: { hose: -6'))
    const drop = (r: ResultDocument) =>
      r.baseline.lines.find((l) => l.id === 'travel.lines.swivel-to-motor')?.dropBar ?? 0
    expect(drop(turned)).toBeLessThan(0.5 * drop(asIs))
    expect(oil(turned)).toBeLessThan(oil(asIs))
  })

  test('thicker oil starves the pump sooner on a cold morning', () => {
    const turned = resultOf(machine(/grade: ISO VG 46.*\n.*\n.*\n/u, 'grade: ISO VG 68\n'))
    const cold = (r: ResultDocument) => r.baseline.travel.levelCold.pumpFlowLpm
    expect(cold(turned)).toBeLessThan(cold(asIs))
  })

  test('a hotter day is hotter oil, more surface is cooler oil', () => {
    expect(oil(resultOf(scenario('ambient: 31 °C', 'ambient: 36 °C')))).toBeGreaterThan(oil(asIs) + 2)
    expect(oil(resultOf(machine('other-cooling-surface: 0.9 m2', 'other-cooling-surface: 1.4 m2')))).toBeLessThan(
      oil(asIs) - 5,
    )
  })

  test('more holding against the relief is hotter oil', () => {
    const turned = resultOf(
      scenario(/duty: .*/u, 'duty: {travel: 20 %, work: 50 %, relief: 16 %, attachment: 0 %, idle: 14 %}'),
    )
    expect(oil(turned)).toBeGreaterThan(oil(asIs) + 5)
  })

  test('height takes power from the engine, not flow from the pump', () => {
    const turned = resultOf(scenario('altitude: 240 m', 'altitude: 2400 m'))
    const power = (r: ResultDocument) => r.baseline.findings.find((f) => f.check === 'engine-power')
    expect(power(asIs)?.severity).not.toBe('stop')
    expect(power(turned)?.severity).toBe('stop')
    expect(level(turned)).toBeGreaterThan(0.97 * level(asIs))
  })

  test('sand is slower and no place to turn; a wider gauge turns more easily', () => {
    const sand = resultOf(scenario('ground: firm soil', 'ground: sand'))
    expect(level(sand)).toBeLessThan(level(asIs))
    const wide = resultOf(machine('gauge: 0.76 m', 'gauge: 0.95 m'))
    expect(wide.baseline.travel.turn?.neededForceN).toBeLessThan(asIs.baseline.travel.turn?.neededForceN ?? 0)
  })

  test('a heavier machine needs more on every point and is no faster', () => {
    const turned = resultOf(machine('mass: 980 kg', 'mass: 1250 kg'))
    expect(turned.baseline.travel.level.neededForceN / asIs.baseline.travel.level.neededForceN).toBeCloseTo(
      1250 / 980,
      9,
    )
    expect(level(turned)).toBeLessThan(level(asIs))
  })

  test('a tank boxed in is hotter than one in the wash of the fan', () => {
    const boxed = resultOf(machine('setting: exposed', 'setting: boxed in'))
    const washed = resultOf(machine('setting: exposed', 'setting: in fan wash'))
    expect(oil(boxed)).toBeGreaterThan(oil(asIs))
    expect(oil(washed)).toBeLessThan(oil(asIs))
  })

  test('ranges bracket the nominal figures and differ from option to option', () => {
    const { baseline, baselineRange, options } = evaluate(sample())
    const { p10, p50, p90 } = baselineRange?.speedKmh ?? { p10: null, p50: null, p90: null }
    expect(p10).toBeLessThan(baseline.travel.level.speedKmh)
    expect(p90).toBeGreaterThan(baseline.travel.level.speedKmh)
    expect(Math.abs((p50 ?? 0) / baseline.travel.level.speedKmh - 1)).toBeLessThan(0.02)
    for (const { range } of options) expect(range?.speedKmh.p10).toBeLessThan(range?.speedKmh.p90 ?? 0)
  })
})
