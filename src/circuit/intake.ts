/**
 * What each pump can take in while all of them turn: suction lines of their own behind one strainer. A pump that wants
 * more than its suction passes sits at the least inlet pressure; the others take what they want (method: "Pump and motor").
 */
import type { Circuit } from '../machine.ts'
import type { CubicMetresPerSecond, Pascals } from '../units/si.ts'
import { type Conditions, type Plant, STARVED_INLET, strainerDrop } from './plant.ts'
import { findRoot } from './root.ts'
import { flowUnder, type SolvedWay } from './solved-way.ts'

type Flows = readonly CubicMetresPerSecond[]

/** Pumps on one suction line, or one pump straight on the strainer. */
interface Group {
  readonly members: readonly number[]
  readonly line: SolvedWay | null
  readonly wants: CubicMetresPerSecond
}

/**
 * Shares out what a passage gives: by displacement, since all pumps turn at one speed, and never more than a pump wants.
 * @returns limits [m3/s], in the order of the members; Infinity for one that gets what it wants
 */
const shareOut = (plant: Plant, members: readonly number[], wanted: Flows, gives: CubicMetresPerSecond): number[] => {
  const displacement = (i: number) => (plant.machine.circuits[i] as Circuit).pump.displacement
  const wants = (i: number) => wanted[i] ?? 0
  const modestFirst = [...members].sort((a, b) => wants(a) / displacement(a) - wants(b) / displacement(b))
  const limits = new Map<number, number>()
  let left = gives
  let size = members.reduce((sum, i) => sum + displacement(i), 0)
  for (const i of modestFirst) {
    const part = (left * displacement(i)) / size
    const content = wants(i) <= part
    limits.set(i, content ? Number.POSITIVE_INFINITY : part)
    left -= content ? wants(i) : part
    size -= displacement(i)
  }
  return members.map((i) => limits.get(i) as number)
}

const groupsOf = (plant: Plant, wanted: Flows, at: Conditions): Group[] => {
  const groups = new Map(plant.suctionGroups.map((members) => [members.join(), members]))
  return [...groups.values()].flatMap((members): Group[] => {
    const line = at.suctions[members[0] as number] ?? null
    const wants = (some: readonly number[]) => some.reduce((sum, i) => sum + (wanted[i] ?? 0), 0)
    return line === null
      ? members.map((i) => ({ members: [i], line, wants: wants([i]) }))
      : [{ members, line, wants: wants(members) }]
  })
}

/** Flow of a group at a pressure behind the strainer. */
const drawn = (group: Group, pressure: Pascals): CubicMetresPerSecond =>
  group.line === null ? group.wants : flowUnder(group.line, pressure - STARVED_INLET, group.wants)

/**
 * Most that each pump can take in while all want so much. The pressure p behind the strainer is the one unknown:
 * p = p_atm - strainer(sum of min(wanted, what the line passes at p - 0.2 bar)); the right side falls with p, so the root
 * is bracketed by 0.2 bar and the atmosphere.
 * @param wanted what each pump would deliver with nothing in front of it [m3/s]
 * @returns limits [m3/s]; Infinity for a pump that gets what it wants
 */
export const intakeLimitsFor = (plant: Plant, wanted: Flows, at: Conditions): number[] => {
  const { machine, atmosphere } = plant
  const groups = groupsOf(plant, wanted, at)
  const behind = (pressure: Pascals) =>
    atmosphere -
    strainerDrop(
      machine.strainer,
      groups.reduce((sum, group) => sum + drawn(group, pressure), 0),
      at.nu,
    )
  const limits = machine.circuits.map(() => Number.POSITIVE_INFINITY)
  const set = (members: readonly number[], gives: CubicMetresPerSecond) => {
    for (const [k, limit] of shareOut(plant, members, wanted, gives).entries()) limits[members[k] as number] = limit
  }
  if (behind(STARVED_INLET) <= STARVED_INLET) {
    // The strainer alone starves them: nothing is left to push oil along a line.
    const bare = groups.filter((group) => group.line === null).flatMap((group) => group.members)
    const passes = (atmosphere - STARVED_INLET) / strainerDrop(machine.strainer, 1, at.nu)
    set(bare, passes)
    for (const group of groups) if (group.line !== null) set(group.members, 0)
    return limits
  }
  const pressure = findRoot((p) => behind(p) - p, STARVED_INLET, atmosphere)
  for (const group of groups) {
    const gives = drawn(group, Number.isNaN(pressure) ? atmosphere : pressure)
    if (gives < group.wants) set(group.members, gives)
  }
  return limits
}
