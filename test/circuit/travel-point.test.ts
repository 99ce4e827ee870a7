/** Travel points of the invented machine by the rules of the method: who drives, what limits, speed and pull by hand. */
import { describe, expect, test } from 'vitest'
import { conditionsAt, type Plant, preparePlant } from '../../src/circuit/plant.ts'
import { solveTravel } from '../../src/circuit/travel-figures.ts'
import { solveLevel, solvePoint } from '../../src/circuit/travel-point.ts'
import { dropOfLine, dropOfRestriction, dropOfSwivel } from '../../src/circuit/way.ts'
import type { Circuit, Machine, Site } from '../../src/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

const [main] = wren().circuits as [Circuit]
const V = 235e-6

const travel = (over: Partial<Machine['travel']>, machine = wren()): Machine => ({
  ...machine,
  travel: { ...machine.travel, ...over },
})
const weak = (netPower: number, machine = wren()): Machine => ({ ...machine, engine: { ...machine.engine, netPower } })
const relief = (setting: number, machine = wren()): Machine => ({
  ...machine,
  circuits: machine.circuits.map((c) => ({ ...c, relief: { ...c.relief, setting } })),
})
/** A circuit for each track, the right one with a pump of another size, beside one for implements. */
const twoCircuits = (rightSize = 1): Machine => ({
  ...weak(20_000),
  circuits: [
    { ...main, name: 'implements', drives: 'no track' },
    { ...main, name: 'left', drives: 'left track' },
    {
      ...main,
      name: 'right',
      drives: 'right track',
      pump: { ...main.pump, displacement: main.pump.displacement * rightSize },
    },
  ],
})
const ready = (machine: Machine, site: Partial<Site> = {}, oil = 50) => {
  const plant = preparePlant(machine, { ...wrenSite, ...site })
  return { plant, at: conditionsAt(plant, oil) }
}
const solve = (point: Parameters<typeof solvePoint>[1], machine = wren(), site: Partial<Site> = {}, oil = 50) => {
  const { plant, at } = ready(machine, site, oil)
  return solvePoint(plant, point, V, at)
}

describe('speed', () => {
  // Way per turn pi x 0.262 m, 3 % slip; the factor of a calibration on top.
  test('is the motors’ speed by way per turn and slip, of two tracks the mean', () => {
    const one = solve('level')
    expect(one.tracks).toHaveLength(1)
    const [track] = one.tracks
    expect(one.speed).toBeCloseTo((track?.motorSpeed ?? 0) * Math.PI * 0.262 * 0.97, 12)
    const slow = solve('level', travel({ speedFactor: 0.9 }))
    expect(slow.speed / one.speed).toBeCloseTo(0.9, 12)
    const two = solve('level', twoCircuits(1.2))
    expect(two.tracks.map((t) => t.circuit)).toEqual([1, 2])
    const [left, right] = two.tracks.map((t) => t.motorSpeed * Math.PI * 0.262 * 0.97)
    expect(two.speed).toBeCloseTo(((left ?? 0) + (right ?? 0)) / 2, 12)
    expect((right ?? 0) / (left ?? 1)).toBeGreaterThan(1.15)
  })
  // Intake of a motor: (1 + e) V n + leak: at no leak and no offset the flow over the displacement.
  test('is the flow of one motor over its displacement where nothing leaks', () => {
    const { motor } = wren().travel
    const tight = travel({ motor: { ...motor, flowOffset: 0, leak: 0 } })
    const { tracks, engine } = solve('level', tight)
    expect(tracks[0]?.motors).toBe(2)
    expect(tracks[0]?.motorFlow).toBeCloseTo((engine.circuits[0]?.wayFlow ?? 0) / 2, 15)
    expect(tracks[0]?.motorSpeed).toBeCloseTo((tracks[0]?.motorFlow ?? 0) / V, 9)
  })
  /** Block and valve half each, work lines and swivel once, the return line with all that the pump gives. */
  test('behind the motors stands the whole way back', () => {
    const { plant, at } = ready(wren())
    const { tracks, engine } = solvePoint(plant, 'level', V, at)
    const flow = engine.circuits[0]?.wayFlow ?? 0
    const { motor, lines, swivel } = wren().travel
    const back =
      dropOfSwivel(swivel, flow / 2, at) +
      lines.reduce((sum, line) => sum + dropOfLine(line, flow / 2, at), 0) +
      dropOfRestriction(motor.block, flow / 2, at) / 2 +
      dropOfRestriction(main.valve?.restriction, flow, at) / 2 +
      dropOfLine(main.lines.return, flow, at)
    expect(tracks[0]?.returnPressure).toBeCloseTo(back, 6)
  })
  test('useful is the torque of the motors at their speed', () => {
    const { useful, tracks } = solve('level')
    const [track] = tracks
    const torque = (V * (track?.differential ?? 0) * 0.85) / (2 * Math.PI)
    expect(useful).toBeCloseTo(2 * torque * 2 * Math.PI * (track?.motorSpeed ?? 0), 6)
  })
  test('at an engine speed that was read it is solved at that speed', () => {
    const { plant, at } = ready(wren())
    const state = solvePoint(plant, 'level', V, at, 45)
    expect(state.engine.speed).toBe(45)
    expect(state.speed / solvePoint(plant, 'level', V, at, 40).speed).toBeCloseTo(45 / 40, 1)
    expect([state.stalled, state.engine.stalled, state.engine.lugging, state.limitedBy]).toEqual([
      false,
      false,
      false,
      null,
    ])
    expect(solveLevel(plant, at, 45).engine.speed).toBe(45)
  })
})

describe('one track', () => {
  // All the oil of the one circuit goes to the one motor: more than 1.6 times as fast as with both, less than twice.
  test('of one circuit all its oil goes to one motor', () => {
    const soft = { ground: { ...wrenSite.ground, turning: 0.2 } }
    const turn = solve('turn', wren(), soft)
    const one = solve('oneTrack', wren(), soft)
    expect(one.tracks[0]?.motors).toBe(1)
    expect(one.tracks[0]?.motorFlow).toBeCloseTo(one.engine.circuits[0]?.wayFlow ?? 0, 15)
    expect(one.speed / turn.speed).toBeGreaterThan(1.6)
    expect(one.speed / turn.speed).toBeLessThan(2)
  })
  test('of two circuits the slower one, the other idles', () => {
    const soft = { ground: { ...wrenSite.ground, turning: 0.2 } }
    for (const [size, slower] of [
      [1.2, 1],
      [0.8, 2],
    ] as const) {
      const { tracks, engine } = solve('oneTrack', twoCircuits(size), soft)
      expect(tracks.map((t) => [t.circuit, t.motors])).toEqual([[slower, 1]])
      expect(engine.circuits[3 - slower]?.pressure).toBeLessThan((engine.circuits[slower]?.pressure ?? 0) / 2)
    }
  })
})

describe('pull', () => {
  // Start: 235e-6 x 155e5 x 0.68/2 pi = 394.2 N.m, x 2 pi x 0.92/0.8231 m = 2768.5 N a motor. The ground holds 0.8 x 9610.5 N.
  test('is that of all motors at the relief, of one track of one', () => {
    expect(solve('level').pull).toBeCloseTo(5537, -1)
    expect(solve('oneTrack').pull).toBeCloseTo(2768.5, -1)
    expect(solve('turn', twoCircuits()).pull).toBeCloseTo(5537, -1)
  })
  // 0.3 x 9610.5 = 2883.2 N; up 20 % 0.98058 of it: 2827.2 N. Turning is not bounded by it.
  test('is no more than the ground holds on level and grade, in a turn it is', () => {
    const slick = { ground: { ...wrenSite.ground, adhesion: 0.3 } }
    expect(solve('level', wren(), slick).pull).toBeCloseTo(2883.2, 0)
    expect(solve('grade', wren(), slick).pull).toBeCloseTo(2827.2, 0)
    expect(solve('turn', wren(), slick).pull).toBeCloseTo(5537, -1)
    expect(solve('oneTrack', wren(), slick).pull).toBeCloseTo(2768.5, -1)
    expect(solve('oneTrack', wren(), { ground: { ...wrenSite.ground, adhesion: 0.2 } }).pull).toBeCloseTo(2768.5, -1)
  })
})

describe('what limits it', () => {
  test('nothing on the level', () => {
    expect(solve('level')).toMatchObject({ limitedBy: null, stalled: false })
  })
  test('the ground, which spins', () => {
    const slick = { ground: { ...wrenSite.ground, adhesion: 0.05 } }
    const spinning = solve('level', wren(), slick)
    expect(spinning).toMatchObject({ limitedBy: 'adhesion', stalled: true, speed: 0 })
    expect(spinning.tracks[0]?.motorSpeed).toBeGreaterThan(0)
  })
  // 15 bar are less than the 19.4 bar of the motors: nothing moves, the whole setting less the return is on the motor.
  test('the relief, where the track stands', () => {
    const state = solve('level', relief(15e5))
    expect(state).toMatchObject({ limitedBy: 'relief', stalled: true, speed: 0 })
    const [track] = state.tracks
    expect([track?.stands, track?.motorSpeed, track?.motorFlow]).toEqual([true, 0, 0])
    expect(track?.differential).toBeCloseTo(15e5 - (track?.returnPressure ?? 0), 6)
  })
  test('the relief, where it lets some of the oil pass', () => {
    const level = solve('level')
    const pressure = level.engine.circuits[0]?.pressure ?? 0
    const state = solve('level', relief(pressure - 3e5))
    expect(state).toMatchObject({ limitedBy: 'relief', stalled: false })
    expect(state.speed).toBeGreaterThan(0)
    expect(state.speed).toBeLessThan(level.speed)
  })
  /** Of two circuits the right one alone is short of pressure. */
  const rightRelief = (setting: number): Machine => {
    const machine = twoCircuits()
    const [implement, left, right] = machine.circuits as [Circuit, Circuit, Circuit]
    return { ...machine, circuits: [implement, left, { ...right, relief: { ...right.relief, setting } }] }
  }
  test('the relief of one of two circuits: it slows, or stands and holds the machine', () => {
    const pressure = solve('level', twoCircuits()).engine.circuits[2]?.pressure ?? 0
    const slows = solve('level', rightRelief(pressure - 3e5))
    expect(slows).toMatchObject({ limitedBy: 'relief', stalled: false })
    expect(slows.tracks[1]?.speed).toBeLessThan(slows.tracks[0]?.speed ?? 0)
    const stands = solve('level', rightRelief(10e5))
    expect(stands.tracks.map((track) => track.stands)).toEqual([false, true])
    expect(stands).toMatchObject({ limitedBy: 'relief', stalled: true, speed: 0 })
  })
  test('the suction of one of two circuits', () => {
    const machine = weak(900_000, relief(2000e5, twoCircuits()))
    const [implement, left, right] = machine.circuits as [Circuit, Circuit, Circuit]
    const own = (circuit: Circuit): Circuit => ({ ...circuit, lines: { ...circuit.lines, suction: null } })
    const state = solve('level', { ...machine, strainer: null, circuits: [own(implement), own(left), right] }, {}, -18)
    expect(state.tracks.map((track) => state.engine.circuits[track.circuit]?.starved)).toEqual([false, true])
    expect(state.limitedBy).toBe('suction')
  })
  test('a standing track comes before ground that would spin', () => {
    const slick = { ground: { ...wrenSite.ground, adhesion: 0.05 } }
    expect(solve('level', relief(5e5), slick)).toMatchObject({ limitedBy: 'relief', stalled: true })
  })
  test('the engine, where it stalls before everything else', () => {
    const slick = { ground: { ...wrenSite.ground, adhesion: 0.05 } }
    expect(solve('level', weak(500), slick)).toMatchObject({ limitedBy: 'engine', stalled: true, speed: 0, useful: 0 })
  })
  test('the engine, where it lugs', () => {
    const { engine } = solve('level')
    // The torque asked, 5 % more than the derated engine has at rated speed: 12 % torque rise carries it.
    const { plant } = ready(wren())
    const netPower = (8600 * engine.torque) / (plant.engine.ratedTorque * 1.05)
    const state = solve('level', weak(netPower))
    expect(state).toMatchObject({ limitedBy: 'engine', stalled: false })
    expect(state.engine.lugging).toBe(true)
    expect(state.speed).toBeGreaterThan(0)
  })
  test('the suction, where cold oil does not come', () => {
    const state = solve('level', weak(20_000, relief(300e5)), {}, -15)
    expect(state.engine.circuits[0]?.starved).toBe(true)
    expect(state.limitedBy).toBe('suction')
  })
})

describe('two speeds', () => {
  const twoSpeed = (machine = wren()) =>
    travel({ motor: { ...machine.travel.motor, secondDisplacement: V / 2 } }, machine)
  const level = (machine: Machine) => {
    const { plant, at } = ready(machine)
    return solveLevel(plant, at)
  }
  test('the small displacement on the level, about twice as fast', () => {
    const fast = level(twoSpeed())
    expect([fast.point, fast.displacement]).toEqual(['level', V / 2])
    expect(fast.speed / level(wren()).speed).toBeGreaterThan(1.6)
  })
  // 38.7 bar in the small displacement, 19.4 in the large one, and the way: a relief of 35 bar moves only the slow one.
  test('the large one where the small one cannot hold it', () => {
    const slow = level(relief(35e5, twoSpeed()))
    expect([slow.point, slow.displacement]).toEqual(['level', V])
    expect(level(wren()).point).toBe('level')
    expect(slow.stalled).toBe(false)
    expect(solvePoint(ready(twoSpeed()).plant, 'level', V / 2, ready(twoSpeed()).at).displacement).toBe(V / 2)
  })
})

describe('all points', () => {
  const all = (machine: Machine, steady: number | null, site: Partial<Site> = {}) => {
    const plant: Plant = preparePlant(machine, { ...wrenSite, ...site })
    return solveTravel(plant, conditionsAt(plant, 50), steady)
  }
  const speedAt = (oil: number, machine = wren()) => {
    const { plant, at } = ready(machine, {}, oil)
    return solveLevel(plant, at).speed * 3.6
  }
  test('hot at the settled oil, cold at the coldest start, the rest at 50 °C', () => {
    const { points, level, cold, coldLevel } = all(wren(), 82)
    expect(points.level.speedKmh).toBeCloseTo(speedAt(50), 12)
    expect(points.levelHot?.speedKmh).toBeCloseTo(speedAt(82), 12)
    expect(points.levelCold.speedKmh).toBeCloseTo(speedAt(-6), 12)
    expect([level.speed * 3.6, coldLevel.speed * 3.6]).toEqual([points.level.speedKmh, points.levelCold.speedKmh])
    expect(cold.oil).toBe(-6)
    expect(points.grade.neededForceN).toBeCloseTo(2732.9, 1)
    expect(points.turn?.neededForceN).toBeCloseTo(2 * (points.oneTrack?.neededForceN ?? 0), 9)
    expect(points.levelSlow).toBeNull()
  })
  test('nothing settles: no hot point; wheels: no turn; two speeds: the slow one beside it', () => {
    const { points } = all(travel({ running: 'wheels' }), null)
    expect([points.levelHot, points.turn, points.oneTrack]).toEqual([null, null, null])
    const two = all(travel({ motor: { ...wren().travel.motor, secondDisplacement: V / 2 } }), null).points
    expect(two.levelSlow?.displacementCm3).toBeCloseTo(235, 9)
    expect(two.level.displacementCm3).toBeCloseTo(117.5, 9)
    expect(two.grade.displacementCm3).toBeCloseTo(235, 9)
  })
})
