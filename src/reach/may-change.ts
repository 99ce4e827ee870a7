/**
 * Whether a check could ask for another one of what is there, at some flows: velocity, rated flow, rated pressure, the rating
 * of an end. What was over its limit already is asked for only where it is noticeably further over it. (Suction lines and
 * lines to an attachment are not on the way to the motors.)
 */

import type { TravelState } from '../circuit/travel-point.ts'
import { drivingPressure, type LinePlace, workingPressure } from '../consequences/line-places.ts'
import type { Machine } from '../machine.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import { cubicMetresPerSecondFromLpm } from '../units/shop-units.ts'
import type { CubicMetresPerSecond, Metres, MetresPerSecond } from '../units/si.ts'
import type { Question } from './assess.ts'
import type { Carrier } from './carriers.ts'
import { unlessThere } from './line-bounds.ts'
import { isWeak } from './pieces.ts'

const HAIR = 1e-6

/** What flowed before. */
export interface Was {
  /** By the id of the line. */
  readonly velocities: ReadonlyMap<string, MetresPerSecond>
  readonly motorFlow: CubicMetresPerSecond
  /** By the name of the circuit. */
  readonly pumpFlows: ReadonlyMap<string, CubicMetresPerSecond>
  /** Its motors had a second displacement. */
  readonly isTwoSpeed: boolean
  /** Through the filter while the cylinders return most. */
  readonly returnFlow: CubicMetresPerSecond
}

export const wasOf = ({ start: { before, beforeJudged } }: Question): Was => ({
  velocities: new Map(beforeJudged.lines.map(({ id, velocityMps }) => [id, velocityMps])),
  motorFlow: cubicMetresPerSecondFromLpm(beforeJudged.travel.level.motorFlowLpm),
  pumpFlows: new Map(
    before.machine.circuits.map(({ name }) => [
      name,
      cubicMetresPerSecondFromLpm(beforeJudged.circuits[name]?.pumpFlowLpm ?? 0),
    ]),
  ),
  isTwoSpeed: before.machine.travel.motor.secondDisplacement !== null,
  returnFlow: cubicMetresPerSecondFromLpm(before.more.returnFlowLpm) * before.machine.cylinderAreaRatio,
})

const velocityIn = (line: LinePlace, bore: Metres, machine: Machine, state: TravelState): number => {
  const area = (Math.PI / 4) * bore ** 2
  if (line.role === 'work') return Math.max(...state.tracks.map(({ motorFlow }) => motorFlow)) / area
  const index = machine.circuits.findIndex(({ name }) => name === line.circuit)
  return (state.engine.circuits[index]?.pumpFlow ?? 0) / area
}

/**
 * @param machine with everything as it is looked at
 * @param state its level point: no way of those that are looked at lets more flow
 * @param was what flowed on the machine as it is
 */
export const mayChange = (
  { place, pieces, bores }: Carrier,
  machine: Machine,
  state: TravelState,
  was: Was,
): boolean => {
  const flows = state.engine.circuits.map(({ pumpFlow }) => pumpFlow)
  if (place.kind === 'hose')
    return place.lines.some((line, k) => {
      if (line.role === 'suction' || line.role === 'auxiliary') return false
      const rating = line.line.maxPressure
      const weak =
        line.workingPressure !== null &&
        ((rating !== null && rating < line.workingPressure * (1 - HAIR)) ||
          (line.line.ends ?? []).some((end) => isWeak(end, line.workingPressure ?? 0, true)))
      const velocity = velocityIn(line, bores[k]?.[0] ?? line.line.bore, machine, state)
      const limit = unlessThere(velocityLimits[line.role].change, was.velocities.get(line.line.id) ?? 0)
      return weak || velocity > limit * (1 - 2 * HAIR)
    })
  const own = pieces[0]?.machine
  if (own === undefined) return false
  if (place.kind === 'valve')
    return place.circuits.some((name) => {
      const index = own.circuits.findIndex((circuit) => circuit.name === name)
      const circuit = own.circuits[index]
      const rated = circuit?.valve?.ratedFlow ?? null
      const most = circuit?.valve?.maxPressure ?? null
      return (
        (rated !== null && (flows[index] ?? 0) > unlessThere(rated, was.pumpFlows.get(name) ?? 0) * (1 - 2 * HAIR)) ||
        (most !== null && circuit !== undefined && workingPressure(circuit) > most * (1 - HAIR)) ||
        (circuit !== undefined &&
          [circuit.valve?.ports.inlet, circuit.valve?.ports.work].some((port) =>
            isWeak(port ?? null, workingPressure(circuit)),
          ))
      )
    })
  if (place.kind === 'filter') {
    const rated = own.filter?.ratedFlow ?? null
    const flow = state.engine.totalFlow * own.cylinderAreaRatio
    return rated !== null && flow > unlessThere(rated, was.returnFlow) * (1 - 2 * HAIR)
  }
  if (place.kind !== 'swivel') return false
  const { swivel } = own.travel
  const flow = Math.max(...state.tracks.map(({ motorFlow }) => motorFlow))
  const area = (Math.PI / 4) * (swivel?.bore ?? 0) ** 2
  const fast = area > 0 && flow / area > unlessThere(velocityLimits.work.change, was.motorFlow / area) * (1 - 2 * HAIR)
  const getsSecond = machine.travel.motor.secondDisplacement !== null && !was.isTwoSpeed
  if (getsSecond && (swivel?.sparePassages ?? 1) < 1) return true
  const most = swivel?.maxPressure ?? null
  const pressure = drivingPressure(own) ?? 0
  return fast || isWeak(swivel?.ports.work ?? null, pressure) || (most !== null && pressure > most * (1 - HAIR))
}
