/** Sentences of calibration: what the readings say, in plain words with their figures. Shown under "How we know". */
import { barFromPascals, kmhFromMetresPerSecond, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import type { MetresPerSecond, Pascals, RevsPerSecond } from '../units/si.ts'

const percent = (share: number): string => `${Math.abs(share * 100).toFixed(0)} %`
const bar = (pressure: Pascals): string => `${barFromPascals(pressure).toFixed(0)} bar`
const kmh = (speed: MetresPerSecond): string => `${kmhFromMetresPerSecond(speed).toFixed(2)} km/h`
const rpm = (speed: RevsPerSecond): string => `${rpmFromRevsPerSecond(speed).toFixed(0)} rpm`

/** "of the left circuit"; nothing where there is only the main one. */
const whose = (circuit: string): string => (circuit === 'main' ? '' : ` of the ${circuit} circuit`)

/** Cooling that differs by less is what the surfaces should give, within what a thermometer reads. */
const ALIKE = 0.03

export const notes = {
  runAgrees: (measured: MetresPerSecond, predicted: MetresPerSecond) =>
    `The timed run gives ${kmh(measured)}, the plates ${kmh(predicted)}: they agree.`,
  runSlow: (measured: MetresPerSecond, predicted: MetresPerSecond) =>
    `The timed run gives ${kmh(measured)}, the plates ${kmh(predicted)}: ${percent(1 - measured / predicted)} of the speed is lost.`,
  runFast: (measured: MetresPerSecond, predicted: MetresPerSecond) =>
    `The timed run gives ${kmh(measured)}, more than the ${kmh(predicted)} of the plates.`,
  speedFactor: (factor: number) =>
    `With the pump as metered, the machine runs at ${percent(factor)} of the speed that its flow should give.`,
  pumpLoss: (circuit: string, loss: number) =>
    `The pump${whose(circuit)} loses ${percent(loss)} of its flow between 7 and 69 bar; up to 10 % is usual.`,
  otherPump: (circuit: string) =>
    `The metered flow${whose(circuit)} does not fit the plate: another pump may be fitted than the plate says.`,
  flowsDisagree: (circuit: string) =>
    `The metered flows${whose(circuit)} do not agree with each other or with the plate; meter them again.`,
  runDisagrees: 'The timed run does not agree with the plates; time it again, both ways, and meter the pump flow.',
  meterFlow: (factor: number) =>
    `The timed run alone would mean that the pump leaks ${factor.toFixed(1)} times as much as a new one; meter the pump flow before anything is ordered.`,
  speedFactorDisagrees: 'The timed run does not agree with the metered flow; time it again and check what drags.',
  oilDisagrees: 'The tank temperature does not agree with the duty and the cooling surfaces as stated; read it again.',
  oilCoolerThanTank:
    'The oil is cooler than the tank alone could keep it: state the other cooling surface (cylinders, valve, steel lines), or read the temperature again.',
  engineDisagrees: 'The read engine speed cannot be held at the load of the run; read it again, and check the engine.',
  reliefRead: (circuit: string, read: Pascals, stated: Pascals) =>
    `The relief valve${whose(circuit)} was read at ${bar(read)}; ${bar(stated)} is stated.`,
  reliefLow: (circuit: string, read: Pascals, stated: Pascals) =>
    `The relief valve${whose(circuit)} opens at ${bar(read)}, ${percent(1 - read / stated)} under the ${bar(stated)} that it should hold.`,
  engineRead: (read: RevsPerSecond, expected: RevsPerSecond) =>
    `The engine was read at ${rpm(read)}; the plates give ${rpm(expected)} at that load.`,
  engineSlow: (read: RevsPerSecond, expected: RevsPerSecond) =>
    `The engine runs at ${rpm(read)}, ${percent(1 - read / expected)} under the ${rpm(expected)} that it should do at that load. Where nobody has read how much speed it loses under load, read the speed without load first.`,
  engineSlowIdle: (read: RevsPerSecond, expected: RevsPerSecond) =>
    `The engine runs at ${rpm(read)} without load, ${percent(1 - read / expected)} under the ${rpm(expected)} that it should do. Where nobody has stated how much speed it loses under load, look up the maker's speed without load first.`,
  wornPump: (circuit: string, loss: number) =>
    `The pump${whose(circuit)} is worn: it loses ${percent(loss)} of its flow between 7 and 69 bar, where up to 10 % is usual.`,
  wornFromRun: (circuit: string) =>
    `The pump${whose(circuit)} is worn: only a pump that leaks more than five times as much as a new one explains the slow run.`,
  dragging: (factor: number) =>
    `Behind the pump ${percent(1 - factor)} of the speed is lost: motors, brakes, track tension or final drive.`,
  starvedInlet: (circuit: string, absolute: Pascals, limit: Pascals) =>
    `At the inlet of the pump${whose(circuit)} ${barFromPascals(absolute).toFixed(2)} bar absolute was read; it needs ${barFromPascals(limit).toFixed(2)} bar.`,
  coolingFactor: (factor: number) => {
    const gives = 'The tank temperature that was read means that the machine gives off'
    if (Math.abs(factor - 1) < ALIKE) return `${gives} as much heat as its surfaces should.`
    return `${gives} ${percent(factor - 1)} ${factor > 1 ? 'more' : 'less'} heat than its surfaces should; the figures here go by the reading.`
  },
}
