/**
 * The least that must flow for a travel speed to be reached, whatever else is chosen.
 *
 * speed = turns / ratio x way of a turn x (1 - slip) x factor, and a motor that turns n times takes in
 * (1 + offset) V n + leak >= (1 + offset) V n. On the level the pressure across a motor follows from the weight alone, and so does
 * its leak, whatever carries the flow. Of a two-speed motor the displacement counts that takes less, of a kept motor or
 * sprocket the one that is there. Where both tracks have a circuit of their own, and the two are alike, both get as much.
 */
import type { Machine, Motor } from '../machine.ts'
import { metresPerSecondFromKmh } from '../units/shop-units.ts'
import type { CubicMetresPerRev, CubicMetresPerSecond, Metres, RevsPerSecond, Share } from '../units/si.ts'

export interface Needed {
  /** Of one motor. */
  readonly turns: RevsPerSecond
  /** Into one motor. */
  readonly motorFlow: CubicMetresPerSecond
  /** Of all pumps together, those in neutral included; 0 where only the motors' share is known. */
  readonly totalFlow: CubicMetresPerSecond
}

export const NO_FLOW: Needed = { turns: 0, motorFlow: 0, totalFlow: 0 }

/** Rounding on the way from the speed to the flow. */
const HAIR = 1e-9

/**
 * @param speedKmh that is to be reached
 * @param leakOf least that leaks past one motor in a displacement; none where that is not known
 */
export const neededFor = (
  speedKmh: number,
  { travel }: Machine,
  slip: Share,
  motor: Motor,
  wayPerTurn: Metres,
  leakOf: (displacement: CubicMetresPerRev) => CubicMetresPerSecond = () => 0,
): Needed => {
  const perTurn = (wayPerTurn / travel.finalDriveRatio) * (1 - slip) * travel.speedFactor
  if (!(perTurn > 0) || !(speedKmh > 0)) return NO_FLOW
  const turns = (metresPerSecondFromKmh(speedKmh) / perTurn) * (1 - HAIR)
  const flows = [motor.displacement, motor.secondDisplacement ?? motor.displacement].map(
    (displacement) => (1 + motor.flowOffset) * displacement * turns + leakOf(displacement) * (1 - HAIR),
  )
  return { turns, motorFlow: Math.min(...flows), totalFlow: 0 }
}

const figuresOfSide = ({ circuits }: Machine, name: string): string => {
  const circuit = circuits.find((one) => one.name === name)
  if (circuit === undefined) return ''
  const { pump, relief, valve, lines } = circuit
  const size = (line: typeof lines.pressure) => (line === null ? null : [line.bore, line.length, line.elbows])
  const { mount: _, ports: __, section: ___, ...flows } = pump
  return JSON.stringify([
    flows,
    relief.setting,
    valve?.restriction ?? null,
    size(lines.pressure),
    size(lines.return),
    circuit.works,
  ])
}

/** All circuits that drive are alike in everything that decides their flow. */
export const isSymmetric = (machine: Machine): boolean => {
  const driving = machine.circuits.filter(({ drives }) => drives !== 'no track')
  return new Set(driving.map(({ name }) => figuresOfSide(machine, name))).size <= 1
}
