/**
 * The motor model against published flow, pressure, speed and torque tables of orbital motors (reference/measured.json, the
 * sources stand there): first fitted to each table, then predicting all of them from the displacement on the plate and the
 * tool's defaults alone. The spread of the second is the tool's honesty about a motor that nobody has measured.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { motorSpeed, motorTorque } from '../src/formulas/motor.ts'
import { percentile } from '../src/ranges/hypercube.ts'
import { MOTOR_DEFAULTS } from '../src/scenario/resolve-motor.ts'
import { MOTOR_HONESTY } from '../src/tables/model-honesty.ts'
import {
  cubicMetresPerRevFromCm3,
  cubicMetresPerSecondFromLpm,
  pascalsFromBar,
  rpmFromRevsPerSecond,
} from '../src/units/shop-units.ts'

interface Point {
  readonly id: string
  readonly topic: string
  readonly suspect?: boolean
  readonly inputs: { readonly V_cm3: number; readonly Q_lpm: number; readonly dp_bar: number }
  readonly output: { readonly n_rpm: number; readonly T_Nm?: number }
}

const all: readonly Point[] = JSON.parse(
  readFileSync(new URL('./reference/measured.json', import.meta.url), 'utf8'),
).points

/** Misprints are marked in the file; points at standstill or all but (under 2 rpm) carry no speed to compare. */
const points = all.filter(
  ({ topic, suspect, inputs, output }) =>
    topic === 'motor' && suspect !== true && inputs.dp_bar <= 145 && output.n_rpm >= 2,
)

const tableOf = ({ id }: Point): string => id.split('-').slice(1, 3).join('-')

const tables = new Map<string, Point[]>()
for (const point of points) tables.set(tableOf(point), [...(tables.get(tableOf(point)) ?? []), point])

/** The reference viscosity is that of the table: the model's own factor is 1. */
const MU = 0.0366

/** Least squares in speed: n = a Q - b dp2/1e7 is linear in a = 1/((1+e) V) and b = k/((1+e) V). */
const fit = (rows: readonly Point[]) => {
  let [qq, qd, dd, nq, nd] = [0, 0, 0, 0, 0]
  for (const { inputs, output } of rows) {
    const q = cubicMetresPerSecondFromLpm(inputs.Q_lpm)
    const d = pascalsFromBar(inputs.dp_bar) ** 2 / 1e7
    const n = output.n_rpm / 60
    qq += q * q
    qd += q * d
    dd += d * d
    nq += n * q
    nd += n * d
  }
  const determinant = qq * dd - qd * qd
  const a = (nq * dd - nd * qd) / determinant
  const b = (nq * qd - nd * qq) / determinant
  const displacement = cubicMetresPerRevFromCm3((rows[0] as Point).inputs.V_cm3)
  return { offset: 1 / (a * displacement) - 1, leak: b / a }
}

const predicted = ({ inputs }: Point, offset: number, leak: number): number =>
  rpmFromRevsPerSecond(
    motorSpeed(
      cubicMetresPerSecondFromLpm(inputs.Q_lpm),
      cubicMetresPerRevFromCm3(inputs.V_cm3),
      offset,
      leak,
      pascalsFromBar(inputs.dp_bar),
      MU,
      MU,
    ),
  )

const rms = (errors: readonly number[]): number => Math.sqrt(errors.reduce((sum, e) => sum + e * e, 0) / errors.length)

const spread = (values: readonly number[]) => {
  const sorted = [...values].sort((x, y) => x - y)
  return [0.1, 0.5, 0.9].map((share) => percentile(sorted, share) ?? Number.NaN)
}

describe('fitted', () => {
  test('there are tables enough', () => {
    expect(tables.size).toBeGreaterThanOrEqual(18)
    expect(points.length).toBeGreaterThan(600)
  })

  const errorsUpTo = (bar: number) =>
    [...tables.values()].map((rows) => {
      const some = rows.filter(({ inputs }) => inputs.dp_bar <= bar)
      const { offset, leak } = fit(some)
      return rms(some.map((point) => predicted(point, offset, leak) - point.output.n_rpm))
    })

  test('speed to 2 rpm (root mean square) up to 110 bar for nine tables in ten', () => {
    const errors = errorsUpTo(110)
    const within = errors.filter((error) => error <= 2).length
    expect(within / errors.length, errors.map((e) => e.toFixed(2)).join(' ')).toBeGreaterThanOrEqual(0.9)
  })

  /**
   * Up to 145 bar a form with two figures cannot do that: exponents of 2 to 3 leave a third and more of the tables above
   * 2 rpm. measured.md gives a median of 1.5 rpm over 25 tables, of which these are two in three; its worst is 3.9.
   */
  test('up to 145 bar the median table is fitted to 1.8 rpm, none worse than 3.9', () => {
    const errors = errorsUpTo(145)
    expect(spread(errors)[1]).toBeLessThan(1.8)
    expect(Math.max(...errors)).toBeLessThan(3.9)
  })

  /** measured.md, "Fits": e -0.008 / 0.014 / 0.033, k100/V 0.60 / 1.11 / 2.02 e-8 (p10 / p50 / p90 over 25 tables). */
  test('offsets and leaks lie where the published fits do', () => {
    const fits = [...tables.entries()]
      .filter(([, rows]) => (rows[0] as Point).inputs.V_cm3 >= 185)
      .map(([, rows]) => fit(rows))
    const [, offset = 0] = spread(fits.map((f) => f.offset))
    expect(Math.abs(offset - 0.014)).toBeLessThan(0.01)
    const leaks = [...tables.entries()]
      .filter(([, rows]) => (rows[0] as Point).inputs.V_cm3 >= 185)
      .map(([, rows]) => fit(rows).leak / cubicMetresPerRevFromCm3((rows[0] as Point).inputs.V_cm3))
    const [, leak = 0] = spread(leaks)
    expect(leak).toBeGreaterThan(0.8e-8)
    expect(leak).toBeLessThan(1.4e-8)
  })
})

/** 15 L/min and more, 185 cm3/rev and more: where travel motors of these machines run. */
const usual = points.filter(({ inputs }) => inputs.V_cm3 >= 185 && inputs.Q_lpm >= 14 && inputs.dp_bar <= 110)

describe('from the plate and the defaults alone', () => {
  const errors = usual.map((point) => {
    const leak = MOTOR_DEFAULTS.leakOverDisplacement * cubicMetresPerRevFromCm3(point.inputs.V_cm3)
    return predicted(point, MOTOR_DEFAULTS.offset, leak) / point.output.n_rpm - 1
  })

  test('the spread of the speed error is the one that the tool states', () => {
    const [p10 = 0, p50 = 0, p90 = 0] = spread(errors)
    expect(p10).toBeCloseTo(MOTOR_HONESTY.speed.p10, 3)
    expect(p50).toBeCloseTo(MOTOR_HONESTY.speed.p50, 3)
    expect(p90).toBeCloseTo(MOTOR_HONESTY.speed.p90, 3)
  })

  /** measured.md: the label alone is off by -3.3 to +8.5 %, so eight errors in ten cannot be narrower than a few percent. */
  test('it is neither flattering nor useless', () => {
    const { p10, p50, p90 } = MOTOR_HONESTY.speed
    expect(Math.abs(p50)).toBeLessThan(0.02)
    expect(p90 - p10).toBeGreaterThan(0.03)
    expect(p90 - p10).toBeLessThan(0.15)
  })

  /**
   * measured.md, loaded prediction for 310 cm3/rev, p10 / p50 / p90 in rpm: at 100 bar 39.0 / 41.4 / 44.4 on 4 US gpm, so
   * -5.8 to +7.2 %; at 140 bar 34.8 / 38.8 / 43.0, so -10.3 to +10.8 %. Eight points in ten must lie inside that.
   */
  test('it lies inside the published spread, to 110 bar and to 145', () => {
    const errorsOf = (rows: readonly Point[]) =>
      rows.map((point) => {
        const leak = MOTOR_DEFAULTS.leakOverDisplacement * cubicMetresPerRevFromCm3(point.inputs.V_cm3)
        return predicted(point, MOTOR_DEFAULTS.offset, leak) / point.output.n_rpm - 1
      })
    const [low = 0, , high = 0] = spread(errorsOf(usual))
    expect(low).toBeGreaterThan(-0.072)
    expect(high).toBeLessThan(0.072)
    const [lowest = 0, , highest = 0] = spread(errorsOf(points))
    expect(lowest).toBeGreaterThan(-0.108)
    expect(highest).toBeLessThan(0.108)
  })

  /** measured.md, table "Torque efficiency", 80 to 110 bar and 20 to 30 L/min: .80 / .84 / .88. */
  test('torque by the default efficiency is inside the published band', () => {
    const ratios = usual
      .filter(({ inputs, output }) => output.T_Nm !== undefined && inputs.Q_lpm <= 31 && inputs.dp_bar >= 28)
      .map(({ inputs, output }) => {
        const dp = pascalsFromBar(inputs.dp_bar)
        const displacement = cubicMetresPerRevFromCm3(inputs.V_cm3)
        return (output.T_Nm ?? 0) / motorTorque(displacement, dp, MOTOR_DEFAULTS.hydromechanical)
      })
    const [p10 = 0, p50 = 0, p90 = 0] = spread(ratios)
    expect(Math.abs(p50 - 1)).toBeLessThan(0.02)
    expect(p10).toBeGreaterThan(0.9)
    expect(p90).toBeLessThan(1.1)
  })
})
