/** Works out the figures that only checks need, from the same balances as the travel points. */
import { balanceAt, type EngineState, shaftTorque, type Task } from '../circuit/balance.ts'
import { atTool, attachmentState, type Work } from '../circuit/duty.ts'
import { atRelief, inletAt, workingPressure } from '../circuit/figures.ts'
import { demandOf, startingPull } from '../circuit/forces.ts'
import { type Conditions, type Plant, STARVED_INLET } from '../circuit/plant.ts'
import type { SolvedTravel } from '../circuit/travel-figures.ts'
import { coreDrop, elementDrop } from '../circuit/way.ts'
import { meanVelocity } from '../formulas/line.ts'
import { adhesionLimit } from '../formulas/traction.ts'
import type { Circuit } from '../machine.ts'
import {
  barFromPascals,
  cstFromSquareMetresPerSecond,
  kmhFromMetresPerSecond,
  kwFromWatts,
  lpmFromCubicMetresPerSecond,
  mmFromMetres,
  rpmFromRevsPerSecond,
} from '../units/shop-units.ts'
import { GRAVITY, type Newtons, type Watts } from '../units/si.ts'
import type { CheckFigures } from './check.ts'

const TURN = 2 * Math.PI

/** Shaft power at rated speed with some circuits at their relief setting and the rest in neutral. */
const powerAtRelief = (plant: Plant, working: readonly number[], at: Conditions): Watts => {
  const speed = plant.engine.ratedSpeed
  const tasks: Task[] = plant.machine.circuits.map((circuit, i) =>
    working.includes(i) ? { kind: 'held', pressure: circuit.relief.setting } : { kind: 'neutral' },
  )
  return balanceAt(plant, tasks, speed, at).torque * TURN * speed
}

/** The worse of all driving circuits together, and each other circuit alone. */
const reliefPower = (plant: Plant, at: Conditions): { readonly power: Watts; readonly of: string } => {
  const together = { power: powerAtRelief(plant, plant.driving, at), of: 'both tracks' }
  const alone = plant.machine.circuits.flatMap((circuit, i) =>
    plant.driving.includes(i) ? [] : [{ power: powerAtRelief(plant, [i], at), of: circuit.name }],
  )
  return alone.reduce((worst, next) => (next.power > worst.power ? next : worst), together)
}

const circuitFigures = (
  plant: Plant,
  travel: SolvedTravel,
  neutral: EngineState,
  at: Conditions,
): CheckFigures['circuits'] =>
  Object.fromEntries(
    plant.machine.circuits.map((circuit, i) => {
      const track = travel.level.tracks.find((t) => t.circuit === i)
      const state = neutral.circuits[i]
      const torque = shaftTorque(circuit.pump, neutral.speed, state?.pressure ?? 0, 1, at)
      return [
        circuit.name,
        {
          coldInletBarAbs: barFromPascals(
            Math.max(STARVED_INLET, inletAt(plant, travel.coldLevel.engine, i, travel.cold)),
          ),
          flowAtReliefLpm: lpmFromCubicMetresPerSecond(atRelief(plant, i, plant.engine.ratedSpeed, at).flow),
          workingPressureBar: barFromPascals(workingPressure(circuit)),
          neutralFlowLpm: lpmFromCubicMetresPerSecond(state?.pumpFlow ?? 0),
          neutralPowerKw: kwFromWatts((state?.torque ?? torque) * TURN * neutral.speed),
          levelSpeedKmh:
            track === undefined || travel.level.engine.stalled ? null : kmhFromMetresPerSecond(track.speed),
        },
      ]
    }),
  )

const attachmentFigures = (plant: Plant, work: Work, at: Conditions): CheckFigures['attachment'] => {
  const { attachment } = work
  if (attachment === null) return null
  const { working, state } = attachmentState(plant, attachment, at)
  if (working.length === 0) return null
  let flow = 0
  let toolFlow = 0
  let pressure = 0
  const lines: { id: string; velocityMps: number; boreMm: number }[] = []
  for (const i of working) {
    const circuit = state.circuits[i]
    const { auxiliary } = plant.machine.circuits[i] as Circuit
    if (circuit === undefined) continue
    flow += circuit.pumpFlow
    toolFlow += state.scaled ? 0 : atTool(plant, i, circuit, state.sharedReturn, attachment.pressure, false, at).flow
    pressure = Math.max(pressure, circuit.pressure)
    for (const line of [auxiliary?.out, auxiliary?.back])
      if (line)
        lines.push({
          id: line.id,
          velocityMps: meanVelocity(circuit.wayFlow, line.bore),
          boreMm: mmFromMetres(line.bore),
        })
  }
  return {
    flowLpm: lpmFromCubicMetresPerSecond(flow),
    pumpPressureBar: barFromPascals(pressure),
    toolFlowLpm: lpmFromCubicMetresPerSecond(toolFlow),
    auxiliaryLines: lines,
  }
}

/** Pull of all motors from standstill, the large displacement, each circuit at its own setting. */
const standingPull = (plant: Plant): Newtons =>
  plant.driving.reduce((sum, i) => {
    const setting = plant.machine.circuits[i]?.relief.setting ?? 0
    const { displacement } = plant.machine.travel.motor
    return sum + startingPull(plant.machine, setting, plant.motorsFed[i] ?? 0, displacement)
  }, 0)

/** Works out everything that checks read besides the result's own figures. */
export const checkFigures = (
  plant: Plant,
  work: Work,
  travel: SolvedTravel,
  neutral: EngineState,
  at: Conditions,
): CheckFigures => {
  const { machine, site } = plant
  const relief = reliefPower(plant, at)
  const pull = standingPull(plant)
  const grip = adhesionLimit(site.ground.adhesion, machine.mass * GRAVITY, site.steepestGrade)
  const turns = travel.points.turn !== null
  const { totalFlow } = travel.level.engine
  return {
    atmosphereBar: barFromPascals(plant.atmosphere),
    reliefPowerKw: kwFromWatts(relief.power),
    reliefPowerOf: relief.of,
    deratedPowerKw: kwFromWatts(plant.engine.ratedTorque * TURN * plant.engine.ratedSpeed),
    highIdleRpm: rpmFromRevsPerSecond(plant.engine.highIdle),
    circuits: circuitFigures(plant, travel, neutral, at),
    returnFlowLpm: lpmFromCubicMetresPerSecond(totalFlow),
    filterColdDropBar:
      machine.filter?.drop == null ? null : barFromPascals(elementDrop(machine, totalFlow, travel.cold)),
    coolerColdDropBar: machine.cooler?.drop == null ? null : barFromPascals(coreDrop(machine, totalFlow, travel.cold)),
    coolerPressureBar: machine.cooler === null ? null : barFromPascals(travel.level.engine.sharedReturn),
    coldViscosityCst: cstFromSquareMetresPerSecond(travel.cold.nu),
    attachment: attachmentFigures(plant, work, at),
    start: {
      gradePullN: Math.min(pull, grip),
      gradeNeededN: demandOf(plant, 'grade').needed,
      turnPullN: turns ? pull : null,
      turnNeededN: turns ? demandOf(plant, 'turn').needed : null,
    },
  }
}
