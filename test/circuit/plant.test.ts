/** The machine made ready, by hand: engine line at the site, who feeds whom, what stands at an inlet. */
import { describe, expect, test } from 'vitest'
import { conditionsAt, inletPressure, preparePlant, strainerDrop } from '../../src/circuit/plant.ts'
import type { Circuit, Machine } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const circuit = (name: string, over: Partial<Circuit>): Circuit => ({
  ...(wren().circuits[0] as Circuit),
  name,
  ...over,
})
const withCircuits = (...circuits: readonly Circuit[]): Machine => ({ ...wren(), circuits })

describe('engine', () => {
  // 8600 W at 50 rev/s are 27.375 N.m. 3 % per 300 m above 150 m, 1 % per 5.5 K above 29: 450 m and 34.5 °C leave 0.97 x 0.99.
  test('its torque falls with height and heat, its speeds do not', () => {
    const { engine } = preparePlant(wren(), { ...wrenSite, altitude: 450, ambient: 34.5 })
    expect(engine.derate).toBeCloseTo(0.9603, 12)
    expect(engine.ratedTorque).toBeCloseTo(27.375 * 0.9603, 3)
    // 50 (1 + 0.06) = 53 rev/s without load; 70 % of 50 is 35.
    expect([engine.ratedSpeed, engine.highIdle, engine.lowest]).toEqual([50, 53, 35])
    expect([engine.droop, engine.rise]).toEqual([0.06, 0.12])
  })
})

describe('who feeds whom', () => {
  const feeds = (motors: number, ...circuits: readonly Circuit[]) => {
    const machine = withCircuits(...circuits)
    const plant = preparePlant({ ...machine, travel: { ...machine.travel, motors } }, wrenSite)
    return [plant.motorsFed, plant.driving]
  }
  test('one circuit both tracks, one circuit a track, and one that drives nothing', () => {
    const none = circuit('implements', { drives: 'no track' })
    expect(feeds(2, circuit('main', {}), none)).toEqual([[2, 0], [0]])
    const [left, right] = [circuit('left', { drives: 'left track' }), circuit('right', { drives: 'right track' })]
    expect(feeds(2, left, right)).toEqual([
      [1, 1],
      [0, 1],
    ])
    expect(feeds(4, none, left, right)).toEqual([
      [0, 2, 2],
      [1, 2],
    ])
  })
  test('suction lines that are shared are one group for all that share them', () => {
    const { suctionGroups } = preparePlant(
      withCircuits(
        circuit('a', {}),
        circuit('b', { suctionSharedWith: 'a' }),
        circuit('c', {}),
        circuit('d', { suctionSharedWith: 'a' }),
      ),
      wrenSite,
    )
    expect(suctionGroups).toEqual([[0, 1, 3], [0, 1, 3], [2], [0, 1, 3]])
  })
})

describe('inlet', () => {
  const site = { ...wrenSite, altitude: 0 }
  const oil = { oil: 50, nu: 30e-6, rho: 845, mu: 30e-6 * 845 }

  // 40 L/min drop 0.05 bar at 32 mm2/s: 20 L/min at 64 as much.
  test('a strainer drops with flow and viscosity, none nothing', () => {
    expect(strainerDrop(wren().strainer, 20 / 6e4, 64e-6)).toBeCloseTo(5000, 9)
    expect(strainerDrop(null, 20 / 6e4, 64e-6)).toBe(0)
  })

  /**
   * 24 L/min in 19 mm, 0.6 m, one elbow: v = 1.4108 m/s, head 840.9 Pa, Re 893.5, f = 64/Re = 0.07163 (Blasius 0.05787), f L/D
   * 2.262, elbow 800/893.5 + 0.4 (1 + 25.4/19) = 1.830, ends 1.5: 5.592 x 840.9 = 4702 Pa. Strainer: 0.05 bar x 30/40 of the
   * flow x 30/32 of the viscosity = 3516 Pa. 101325 - 4702 - 3516 = 93107 Pa.
   */
  test('atmosphere less suction line less strainer', () => {
    const plant = preparePlant(wren(), site)
    expect(inletPressure(plant, oil, 0, 24 / 6e4, 30 / 6e4)).toBeCloseTo(93_107, -1)
    expect(inletPressure(plant, oil, 0, 0, 0)).toBe(101_325)
  })

  test('without a line the strainer alone, without a strainer the line alone', () => {
    const [main] = wren().circuits as [Circuit]
    const bare = preparePlant(withCircuits({ ...main, lines: { ...main.lines, suction: null } }), site)
    expect(inletPressure(bare, oil, 0, 24 / 6e4, 30 / 6e4)).toBeCloseTo(101_325 - 3516, 0)
    const open = preparePlant({ ...wren(), strainer: null }, site)
    expect(inletPressure(open, oil, 0, 24 / 6e4, 30 / 6e4)).toBeCloseTo(101_325 - 4702, -1)
  })
})

describe('most that a pump can take in', () => {
  const limits = (machine: Machine, oil = -6) => conditionsAt(preparePlant(machine, { ...wrenSite, altitude: 0 }), oil)

  test('warm, or with nothing in front of it, all it wants', () => {
    expect(limits(wren(), 50).intakeLimits).toEqual([Number.POSITIVE_INFINITY])
    const [main] = wren().circuits as [Circuit]
    const bare = { ...withCircuits({ ...main, lines: { ...main.lines, suction: null } }), strainer: null }
    expect(limits(bare, -40).intakeLimits).toEqual([Number.POSITIVE_INFINITY])
  })

  // Two pumps of 16 and 8 cm3 behind a strainer of 0.05 bar at 60 L/min and 32 mm2/s, without lines: in step they pass
  // (101325 - 20000)/5000 x 60 L/min x 32/nu, two thirds and one third of it.
  test('cold, with pumps in step, its share of what leaves 0.2 bar', () => {
    const [main] = wren().circuits as [Circuit]
    const bare = (name: string, displacement: number): Circuit => ({
      ...main,
      name,
      pump: { ...main.pump, displacement },
      lines: { ...main.lines, suction: null },
    })
    const strainer = { part: null, ratedFlow: 60 / 6e4, drop: 0.05e5, viscosity: 32e-6 }
    const { nu, intakeLimits } = limits({ ...withCircuits(bare('a', 16e-6), bare('b', 8e-6)), strainer }, -20)
    const passes = ((101_325 - 20_000) / 5000) * (60 / 6e4) * (32e-6 / nu)
    // In step at a tenth over high idle (53 rev/s) they would want 24 cm3 x 58.3 rev/s, which is more.
    expect(24e-6 * 53 * 1.1).toBeGreaterThan(passes)
    expect((intakeLimits[0] as number) / passes).toBeCloseTo(2 / 3, 9)
    expect((intakeLimits[1] as number) / passes).toBeCloseTo(1 / 3, 9)
  })

  test('where the air itself is thinner than 0.2 bar, nothing', () => {
    // 11 500 m: 101325 (1 - 0.259414)^5.2559 = 20.9 kPa; 12 000 m: 19.3 kPa.
    const plant = preparePlant(wren(), { ...wrenSite, altitude: 12_000 })
    expect(plant.atmosphere).toBeLessThan(20_000)
    expect(conditionsAt(plant, 50).intakeLimits).toEqual([0])
  })
})
