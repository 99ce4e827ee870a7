/** Pump of a circuit: coefficients of the model from stated efficiencies, or the defaults of published gear pumps. */
import { slipFromEfficiency, torqueLossFromEfficiency } from '../formulas/pump.ts'
import type { Mount, Pump } from '../machine.ts'
import { pascalsFromBar, squareMetresPerSecondFromCst } from '../units/shop-units.ts'
import type { RevsPerSecond } from '../units/si.ts'
import { type Figures, SPREADS } from './figures.ts'
import type { PumpSpec } from './machine-schema.ts'

/** Density at which every reference viscosity becomes a dynamic one (method: "Oil"). */
export const REFERENCE_DENSITY = 850

/** Where an efficiency is stated without saying at what. */
const STATED_AT = { pressure: pascalsFromBar(160), viscosity: squareMetresPerSecondFromCst(32) }

/** No efficiency stated: small external gear pumps of published service data (measured reference, section 4). */
const PUMP_DEFAULTS = {
  offset: 0.02,
  /** k/V at the reference viscosity [1/(Pa.s)] */
  slipOverDisplacement: 1.1e-7,
  viscosity: squareMetresPerSecondFromCst(30),
  hydromechanical: 0.89,
  pressure: pascalsFromBar(200),
} as const

const LEAST_INLET = pascalsFromBar(0.7)

export const resolveMount = (mount: PumpSpec['mount']): Mount => ({
  flange: mount?.flange ?? null,
  shaft: mount?.shaft ?? null,
  rotation: mount?.rotation ?? null,
  length: mount?.length?.si ?? null,
})

/**
 * @param path "circuits.main.pump"
 * @param ratedSpeed of the engine: the reference speed where none is stated
 */
export const resolvePump = (figures: Figures, path: string, spec: PumpSpec, ratedSpeed: RevsPerSecond): Pump => {
  const displacement = figures.written(`${path}.displacement`, spec.displacement, SPREADS.displacement)
  const { efficiency } = spec
  const at = `${path}.efficiency`
  const stated = efficiency?.volumetric != null || efficiency?.hydromechanical != null
  const pressure = stated
    ? figures.or(`${at}.at.pressure`, efficiency?.at?.pressure, STATED_AT.pressure, 'pressure')
    : PUMP_DEFAULTS.pressure
  const speed = stated ? figures.or(`${at}.at.speed`, efficiency?.at?.speed, ratedSpeed, 'speed') : ratedSpeed
  const nu = stated
    ? figures.or(`${at}.at.viscosity`, efficiency?.at?.viscosity, STATED_AT.viscosity, 'viscosity')
    : PUMP_DEFAULTS.viscosity
  const viscosity = nu * REFERENCE_DENSITY
  const hydromechanical = figures.or(
    `${at}.hydromechanical`,
    efficiency?.hydromechanical,
    PUMP_DEFAULTS.hydromechanical,
    'share',
    SPREADS.efficiency,
  )
  const volumetric = figures.maybe(`${at}.volumetric`, efficiency?.volumetric, SPREADS.efficiency)
  const own =
    volumetric === null
      ? {
          offset: PUMP_DEFAULTS.offset,
          slip: PUMP_DEFAULTS.slipOverDisplacement * displacement * PUMP_DEFAULTS.viscosity * REFERENCE_DENSITY,
        }
      : { offset: 0, slip: slipFromEfficiency(displacement, speed, volumetric, pressure, viscosity) }
  // A drawn efficiency moves the offset of the default pump, so that ranges see it.
  const usual = 1 - own.offset - (own.slip * pressure) / (viscosity * displacement * speed)
  const drawn = volumetric ?? figures.default(`${at}.volumetric`, usual, 'share', SPREADS.efficiency)
  const leak = volumetric === null ? { ...own, offset: own.offset + (usual - drawn) } : own
  return {
    part: spec.part ?? null,
    section: spec.section ?? null,
    displacement,
    maxPressure: figures.maybe(`${path}.max-pressure`, spec['max-pressure']),
    maxSpeed: figures.maybe(`${path}.max-speed`, spec['max-speed']),
    minInletPressure: figures.or(`${path}.min-inlet-pressure`, spec['min-inlet-pressure'], LEAST_INLET, 'pressure'),
    flowOffset: leak.offset,
    slip: leak.slip,
    slipFactor: 1,
    reference: { pressure, speed, viscosity },
    referenceTorqueLoss: torqueLossFromEfficiency(displacement, pressure, hydromechanical),
    efficiencyStated: volumetric !== null,
    mount: resolveMount(spec.mount),
    ports: { inlet: spec.ports?.inlet ?? null, outlet: spec.ports?.outlet ?? null },
    maxShaftTorque: spec['max-shaft-torque']?.si ?? null,
  }
}
