/** Every check, in the order in which findings are listed: from the engine along the oil to the tracks, then heat, travel and attachment. */
import type { Check } from './check.ts'
import { check as attachmentFlow } from './checks/attachment-flow.ts'
import { check as attachmentPressure } from './checks/attachment-pressure.ts'
import { check as brakingClass } from './checks/braking-class.ts'
import { check as coolerBypassCold } from './checks/cooler-bypass-cold.ts'
import { check as coolerPressure } from './checks/cooler-pressure.ts'
import { check as counterbalance } from './checks/counterbalance.ts'
import { check as couplerFlow } from './checks/coupler-flow.ts'
import { check as couplingTorque } from './checks/coupling-torque.ts'
import { check as drift } from './checks/drift.ts'
import { check as enginePower } from './checks/engine-power.ts'
import { check as everythingFaster } from './checks/everything-faster.ts'
import { check as fanCurrent } from './checks/fan-current.ts'
import { check as filterBypassCold } from './checks/filter-bypass-cold.ts'
import { check as filterFlow } from './checks/filter-flow.ts'
import { check as filterMissing } from './checks/filter-missing.ts'
import { check as gradeStart } from './checks/grade-start.ts'
import { check as holdingBrake } from './checks/holding-brake.ts'
import { check as inletPressure } from './checks/inlet-pressure.ts'
import { check as inletPressureCold } from './checks/inlet-pressure-cold.ts'
import { check as kineticEnergy } from './checks/kinetic-energy.ts'
import { check as linePressure } from './checks/line-pressure.ts'
import { check as lineVelocity } from './checks/line-velocity.ts'
import { check as makerSpeed } from './checks/maker-speed.ts'
import { check as motorFlow } from './checks/motor-flow.ts'
import { check as motorPressure } from './checks/motor-pressure.ts'
import { check as motorReturnPressure } from './checks/motor-return-pressure.ts'
import { check as motorSpeed } from './checks/motor-speed.ts'
import { check as oilTemperature } from './checks/oil-temperature.ts'
import { check as oilViscosityCold } from './checks/oil-viscosity-cold.ts'
import { check as oilViscosityHot } from './checks/oil-viscosity-hot.ts'
import { check as portPressure } from './checks/port-pressure.ts'
import { check as pullLost } from './checks/pull-lost.ts'
import { check as pumpMount } from './checks/pump-mount.ts'
import { check as pumpPorts } from './checks/pump-ports.ts'
import { check as pumpPressure } from './checks/pump-pressure.ts'
import { check as pumpRoom } from './checks/pump-room.ts'
import { check as pumpRotation } from './checks/pump-rotation.ts'
import { check as pumpShaft } from './checks/pump-shaft.ts'
import { check as pumpSpeed } from './checks/pump-speed.ts'
import { check as reliefCapacity } from './checks/relief-capacity.ts'
import { check as reservoirDwell } from './checks/reservoir-dwell.ts'
import { check as shaftTorque } from './checks/shaft-torque.ts'
import { check as standbyLoss } from './checks/standby-loss.ts'
import { check as strainerFlow } from './checks/strainer-flow.ts'
import { check as swivelPassages } from './checks/swivel-passages.ts'
import { check as swivelPressure } from './checks/swivel-pressure.ts'
import { check as swivelVelocity } from './checks/swivel-velocity.ts'
import { check as turnStart } from './checks/turn-start.ts'
import { check as valveFlow } from './checks/valve-flow.ts'
import { check as valvePressure } from './checks/valve-pressure.ts'

export const allChecks: readonly Check[] = [
  enginePower,
  pumpSpeed,
  pumpPressure,
  pumpMount,
  pumpShaft,
  pumpRotation,
  pumpPorts,
  pumpRoom,
  couplingTorque,
  shaftTorque,
  strainerFlow,
  inletPressure,
  inletPressureCold,
  lineVelocity,
  linePressure,
  portPressure,
  reliefCapacity,
  valveFlow,
  valvePressure,
  standbyLoss,
  swivelVelocity,
  swivelPressure,
  swivelPassages,
  motorFlow,
  motorSpeed,
  motorPressure,
  motorReturnPressure,
  filterMissing,
  filterFlow,
  filterBypassCold,
  coolerPressure,
  coolerBypassCold,
  fanCurrent,
  reservoirDwell,
  oilTemperature,
  oilViscosityHot,
  oilViscosityCold,
  gradeStart,
  turnStart,
  pullLost,
  makerSpeed,
  brakingClass,
  kineticEnergy,
  holdingBrake,
  counterbalance,
  drift,
  everythingFaster,
  attachmentFlow,
  attachmentPressure,
  couplerFlow,
]
