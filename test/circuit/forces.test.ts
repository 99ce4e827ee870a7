/** What a point asks of the running gear, by hand for the invented machine: 980 kg weigh 9610.5 N; firm soil 0.09, 0.65, 0.8. */
import { describe, expect, test } from 'vitest'
import { canTurn, demandOf, differentialFor, startingPull } from '../../src/circuit/forces.ts'
import { preparePlant } from '../../src/circuit/plant.ts'
import type { Machine, Site } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const travel = (over: Partial<Machine['travel']>): Machine => ({ ...wren(), travel: { ...wren().travel, ...over } })
const demand = (point: Parameters<typeof demandOf>[1], site: Partial<Site> = {}, machine = wren()) =>
  demandOf(preparePlant(machine, { ...wrenSite, ...site }), point)

const WEIGHT = 980 * 9.80665

describe('needed force', () => {
  // 0.09 x 9610.5 = 864.95 N.
  test('on the level it is rolling alone, on both motors', () => {
    const { needed, applied, motors, spinning } = demand('level')
    expect(needed).toBeCloseTo(864.95, 2)
    expect([applied, motors, spinning]).toEqual([needed, 2, false])
  })
  // 9610.5 (0.09 + 0.2)/sqrt(1.04) = 2732.9 N; the ground holds 0.8 x 9610.5/sqrt(1.04) = 7539.1 N.
  test('up 20 % the grade comes on top', () => {
    const { needed, applied, spinning } = demand('grade')
    expect(needed).toBeCloseTo(2732.9, 1)
    expect([applied, spinning]).toEqual([needed, false])
  })
  // Ground that holds 0.2 of the weight: 1884.8 N of the 2732.9 N that the grade asks for.
  test('more than the ground holds spins, and no more than it holds is applied', () => {
    const { needed, applied, spinning } = demand('grade', { ground: { ...wrenSite.ground, adhesion: 0.2 } })
    expect(needed).toBeCloseTo(2732.9, 1)
    expect(applied).toBeCloseTo(1884.8, 1)
    expect(spinning).toBe(true)
  })
  // M = 0.65 x 9610.5 x 0.98/4 (1.108 - 0.18 x 0.98/0.76) = 1530.47 x 0.87589 = 1340.5 N.m; a track 432.47 + 1340.5/0.76 =
  // 2196.3 N; both 4392.7 N.
  test('turning on the spot asks it of each track, one lever of one', () => {
    const turn = demand('turn')
    expect(turn.needed).toBeCloseTo(4392.6, 0)
    expect([turn.applied, turn.motors, turn.spinning]).toEqual([turn.needed, 2, false])
    const one = demand('oneTrack')
    expect(one.needed).toBeCloseTo(2196.3, 0)
    expect([one.applied, one.motors, one.spinning]).toEqual([one.needed, 1, false])
  })
  test('turning is not held back by adhesion', () => {
    expect(demand('turn', { ground: { ...wrenSite.ground, adhesion: 0.1 } }).spinning).toBe(false)
  })
})

test('only tracks of known gauge and length turn', () => {
  expect(canTurn(wren())).toBe(true)
  expect(canTurn(travel({ running: 'wheels' }))).toBe(false)
  expect(canTurn(travel({ gauge: null }))).toBe(false)
  expect(canTurn(travel({ groundContactLength: null }))).toBe(false)
})

// 865 N on two motors: 432.5 N x 0.8231 m/(2 pi x 0.92 x 1) = 61.58 N.m; x 2 pi/(235e-6 x 0.85) = 19.37 bar. Twice the ratio,
// half of it.
test('the pressure across one motor', () => {
  expect(differentialFor(wren(), 865, 2, 235e-6) / 1e5).toBeCloseTo(19.37, 2)
  expect(differentialFor(travel({ finalDriveRatio: 2 }), 865, 2, 235e-6) / 1e5).toBeCloseTo(9.685, 2)
})

// Start: 235e-6 x 155e5 x 0.68/2 pi = 394.21 N.m; x 2 pi x 0.92/0.8231 m = 2768.4 N a motor.
test('pull from standstill', () => {
  expect(startingPull(wren(), 155e5, 2, 235e-6)).toBeCloseTo(2 * 2768.5, -1)
  expect(startingPull(wren(), 155e5, 1, 235e-6)).toBeCloseTo(2768.5, -1)
})

test('the weight is that of the mass', () => {
  expect(demand('level', { ground: { ...wrenSite.ground, rollingResistance: 1, adhesion: 2 } }).needed).toBeCloseTo(
    WEIGHT,
    6,
  )
})
