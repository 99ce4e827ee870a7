/** Travel motor: coefficients of the model from stated efficiencies, or the defaults of published tables. */
import { leakFromEfficiency } from '../formulas/motor.ts'
import type { Motor } from '../machine.ts'
import { PLATE_ALONE_SPREAD } from '../tables/model-honesty.ts'
import { pascalsFromBar, revsPerSecondFromRpm, squareMetresPerSecondFromCst } from '../units/shop-units.ts'
import { type Figures, SPREADS } from './figures.ts'
import type { MotorSpec } from './machine-schema.ts'
import { REFERENCE_DENSITY, resolveMount } from './resolve-pump.ts'

/** Where an efficiency is stated without saying at what. */
const STATED_AT = {
  pressure: pascalsFromBar(100),
  speed: revsPerSecondFromRpm(60),
  viscosity: squareMetresPerSecondFromCst(32),
}

/** No efficiency stated: 25 published tables of orbital motors (measured reference, section 4). */
export const MOTOR_DEFAULTS = {
  offset: 0.014,
  /** k/V at 100 bar [1/(Pa.s)] and its p10 and p90 */
  leakOverDisplacement: 1.1e-8,
  viscosity: squareMetresPerSecondFromCst(43),
  hydromechanical: 0.84,
  starting: 0.68,
} as const

/** @param path "travel.motor" */
export const resolveMotor = (figures: Figures, path: string, spec: MotorSpec): Motor => {
  // Without a stated efficiency the plate is all there is, and published tables say how far that is off.
  const stated = spec.efficiency?.volumetric != null
  const spread = stated ? SPREADS.displacement : { share: PLATE_ALONE_SPREAD }
  const displacement = figures.written(`${path}.displacement`, spec.displacement, spread)
  const second = figures.maybe(`${path}.second-displacement`, spec['second-displacement'], spread)
  const { efficiency } = spec
  const at = `${path}.efficiency`
  const volumetric = figures.maybe(`${at}.volumetric`, efficiency?.volumetric, SPREADS.efficiency)
  const nu = stated
    ? figures.or(`${at}.at.viscosity`, efficiency?.at?.viscosity, STATED_AT.viscosity, 'viscosity')
    : MOTOR_DEFAULTS.viscosity
  const own =
    volumetric === null
      ? { offset: MOTOR_DEFAULTS.offset, leak: MOTOR_DEFAULTS.leakOverDisplacement * displacement }
      : leakFromEfficiency(
          displacement,
          figures.or(`${at}.at.speed`, efficiency?.at?.speed, STATED_AT.speed, 'speed'),
          volumetric,
          figures.or(`${at}.at.pressure`, efficiency?.at?.pressure, STATED_AT.pressure, 'pressure'),
        )
  // A drawn efficiency moves the offset of the default motor, so that ranges see it.
  const theory = displacement * STATED_AT.speed
  const usual = theory / ((1 + own.offset) * theory + own.leak * STATED_AT.pressure)
  const drawn = volumetric ?? figures.default(`${at}.volumetric`, usual, 'share', SPREADS.efficiency)
  const leak = volumetric === null ? { ...own, offset: own.offset + (1 / drawn - 1 / usual) } : own
  return {
    part: spec.part ?? null,
    displacement,
    secondDisplacement: second,
    maxPressure: figures.maybe(`${path}.max-pressure`, spec['max-pressure']),
    maxFlow: figures.maybe(`${path}.max-flow`, spec['max-flow']),
    maxSpeed: figures.maybe(`${path}.max-speed`, spec['max-speed']),
    maxReturnPressure: figures.maybe(`${path}.max-return-pressure`, spec['max-return-pressure']),
    flowOffset: leak.offset,
    leak: leak.leak,
    referenceViscosity: nu * REFERENCE_DENSITY,
    hydromechanical: figures.or(
      `${at}.hydromechanical`,
      efficiency?.hydromechanical,
      MOTOR_DEFAULTS.hydromechanical,
      'share',
      SPREADS.efficiency,
    ),
    starting: figures.or(`${at}.starting`, efficiency?.starting, MOTOR_DEFAULTS.starting, 'share', SPREADS.efficiency),
    mount: resolveMount(spec.mount),
    ports: { work: spec.ports?.work ?? null },
    block: spec.block == null ? null : { flow: spec.block.flow.si, drop: spec.block.drop.si },
  }
}
