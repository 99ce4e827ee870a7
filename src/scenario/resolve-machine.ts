/** The whole machine in SI, with every default filled in and noted. */
import { viscosityAt100FromIndex } from '../formulas/fluid.ts'
import { wayFromPitchDiameter, wayFromRollingRadius, wayFromTeeth } from '../formulas/traction.ts'
import type { Draw } from '../loaded.ts'
import type { Cooler, Engine, Filter, Machine, Oil, Reservoir, Strainer, Swivel, Travel } from '../machine.ts'
import type { BuiltMachine } from '../question.ts'
import { gradeNumber, viscositiesOf } from '../tables/oil-grades.ts'
import { pascalsFromBar, squareMetresPerSecondFromCst } from '../units/shop-units.ts'
import type { Metres } from '../units/si.ts'
import { assumedIn, Figures, SPREADS } from './figures.ts'
import type { MachineSpec } from './machine-schema.ts'
import { resolveCircuits, resolveLine } from './resolve-circuit.ts'
import { resolveMotor } from './resolve-motor.ts'

/** Defaults of the method; each is noted as an assumption where it is used. */
const DEFAULTS = {
  droop: 0.08,
  torqueRise: 0.1,
  continuous: 0.85,
  cylinders: 3,
  areaRatio: 1,
  surfaceTransfer: 12,
  /** Steel that warms with the oil, kilograms a cubic metre of oil. */
  steel: 2500,
  trackEfficiency: 0.92,
  wheelEfficiency: 0.95,
  filterBypass: pascalsFromBar(1.7),
  coolerBypass: pascalsFromBar(4.5),
  referenceViscosity: squareMetresPerSecondFromCst(32),
} as const

/** Heat transfer of a reservoir by where it sits: published for poor air, normal air and fan wash (method: "Heat"). */
const SETTINGS = { 'boxed in': 6, exposed: 12, 'in fan wash': 24 } as const

const resolveEngine = (figures: Figures, spec: MachineSpec): Engine => {
  const { engine } = spec
  const current = (fitted: MachineSpec['alternator']) => fitted?.current?.si ?? 0
  const spare = engine['spare-current']?.si ?? null
  return {
    netPower: figures.written('engine.net-power', engine['net-power']),
    ratedSpeed: figures.written('engine.rated-speed', engine['rated-speed']),
    governorDroop: figures.or('engine.governor-droop', engine['governor-droop'], DEFAULTS.droop, 'share'),
    torqueRise: figures.or('engine.torque-rise', engine['torque-rise'], DEFAULTS.torqueRise, 'share'),
    continuousFraction: figures.or(
      'engine.continuous-fraction',
      engine['continuous-fraction'],
      DEFAULTS.continuous,
      'share',
    ),
    spareCurrent: spare === null ? null : spare + current(spec.alternator) + current(spec['lamp-set']),
    cylinders: figures.filled('engine.cylinders', engine.cylinders, DEFAULTS.cylinders),
  }
}

const resolveOil = (figures: Figures, spec: MachineSpec): Oil => {
  const { fluid } = spec
  const grade = fluid.grade ?? null
  const byGrade = grade === null ? null : viscositiesOf(gradeNumber(grade) ?? Number.NaN)
  const at40 = figures.maybe('fluid.viscosity-at-40C', fluid['viscosity-at-40C']) ?? byGrade?.at40 ?? Number.NaN
  const index = fluid['viscosity-index'] ?? null
  const byIndex = index === null ? null : viscosityAt100FromIndex(at40, index)
  const at100 =
    figures.maybe('fluid.viscosity-at-100C', fluid['viscosity-at-100C']) ??
    byIndex ??
    figures.default('fluid.viscosity-at-100C', byGrade?.at100 ?? Number.NaN, 'viscosity')
  return { grade, viscosityAt40: at40, viscosityAt100: at100 }
}

const resolveReservoir = (figures: Figures, spec: MachineSpec): Reservoir => {
  const { reservoir } = spec
  const volume = figures.written('reservoir.volume', reservoir.volume)
  const setting = reservoir.setting ?? null
  const path = 'reservoir.heat-transfer'
  const heatTransfer =
    reservoir['heat-transfer'] == null
      ? figures.default(path, SETTINGS[setting ?? 'exposed'], 'heat transfer', SPREADS.heatTransfer)
      : figures.written(path, reservoir['heat-transfer'], SPREADS.heatTransfer)
  return {
    volume,
    coolingSurface: figures.written('reservoir.cooling-surface', reservoir['cooling-surface'], SPREADS.surface),
    heatTransfer,
    steelMass: figures.or('reservoir.steel-mass', reservoir['steel-mass'], DEFAULTS.steel * volume, 'mass'),
  }
}

/** Way for one turn of the sprocket or wheel; the schema's cross checks have made sure that one of them is there. */
const wayPerTurn = (figures: Figures, spec: MachineSpec): Metres => {
  const { sprocket, wheel } = spec.travel
  if (wheel != null)
    return wayFromRollingRadius(figures.written('travel.wheel.rolling-radius', wheel['rolling-radius'], SPREADS.way))
  const pitch = figures.maybe('travel.sprocket.pitch', sprocket?.pitch, SPREADS.way)
  const turns = sprocket?.['links-per-turn'] ?? sprocket?.teeth ?? null
  if (pitch !== null && turns !== null) return wayFromTeeth(turns, pitch)
  return wayFromPitchDiameter(
    figures.maybe('travel.sprocket.pitch-diameter', sprocket?.['pitch-diameter'], SPREADS.way) ?? Number.NaN,
  )
}

const resolveSwivel = (figures: Figures, spec: MachineSpec): Swivel | null => {
  const { swivel } = spec.travel
  if (swivel == null) return null
  const at = swivel['drop-at']
  return {
    part: swivel.part ?? null,
    bore: figures.maybe('travel.swivel.bore', swivel.bore),
    passages: swivel.passages ?? null,
    sparePassages: swivel['spare-passages'] ?? null,
    maxPressure: swivel['max-pressure']?.si ?? null,
    restriction: at == null ? null : { flow: at.flow.si, drop: at.drop.si },
    ports: { work: swivel.ports?.work ?? null },
  }
}

const resolveTravel = (figures: Figures, spec: MachineSpec): Travel => {
  const { travel } = spec
  const wheels = travel.wheel != null
  const efficiency = wheels
    ? figures.or(
        'travel.wheel.efficiency',
        travel.wheel?.efficiency,
        DEFAULTS.wheelEfficiency,
        'share',
        SPREADS.efficiency,
      )
    : figures.or(
        'travel.track.efficiency',
        travel.track?.efficiency,
        DEFAULTS.trackEfficiency,
        'share',
        SPREADS.efficiency,
      )
  return {
    running: wheels ? 'wheels' : 'tracks',
    motors: wheels ? figures.filled('travel.motors', travel.motors as number | null | undefined, 2) : 2,
    motor: resolveMotor(figures, 'travel.motor', travel.motor),
    finalDriveRatio: figures.filled('travel.final-drive-ratio', travel['final-drive-ratio'], 1),
    wayPerTurn: wayPerTurn(figures, spec),
    efficiency,
    gauge: wheels ? null : figures.maybe('travel.track.gauge', travel.track?.gauge, SPREADS.length),
    groundContactLength: wheels
      ? null
      : figures.maybe('travel.track.ground-contact-length', travel.track?.['ground-contact-length'], SPREADS.length),
    swivel: resolveSwivel(figures, spec),
    lines: Object.entries(travel.lines ?? {}).flatMap(([name, line]) => {
      const resolved = resolveLine(figures, `travel.lines.${name}`, line)
      return resolved === null ? [] : [resolved]
    }),
    speedFactor: 1,
  }
}

const resolveFilter = (figures: Figures, spec: MachineSpec): Filter | null => {
  const { filter } = spec
  if (filter == null) return null
  const flow = filter.at?.flow?.si ?? filter['rated-flow']?.si ?? null
  const drop = filter.drop?.si ?? null
  return {
    part: filter.part ?? null,
    ratedFlow: filter['rated-flow']?.si ?? null,
    drop: flow === null ? null : drop,
    reference:
      flow === null || drop === null
        ? null
        : {
            flow,
            viscosity: figures.or(
              'filter.at.viscosity',
              filter.at?.viscosity,
              DEFAULTS.referenceViscosity,
              'viscosity',
            ),
          },
    fineness: filter.fineness?.si ?? null,
    beta: filter.beta ?? null,
    bypass: figures.or('filter.bypass', filter.bypass, DEFAULTS.filterBypass, 'pressure'),
  }
}

const resolveCooler = (figures: Figures, spec: MachineSpec): Cooler | null => {
  const { cooler } = spec
  if (cooler == null) return null
  return {
    part: cooler.part ?? null,
    capacity: figures.written('cooler.capacity', cooler.capacity),
    atFlow: cooler['at-flow'].si,
    drop: cooler.drop?.si ?? null,
    maxPressure: cooler['max-pressure']?.si ?? null,
    bypass: figures.or('cooler.bypass', cooler.bypass, DEFAULTS.coolerBypass, 'pressure'),
    airRise: figures.or('cooler.air-rise', cooler['air-rise'], 0, 'temperature difference'),
    fanCurrent: cooler['fan-current']?.si ?? null,
  }
}

const resolveStrainer = (figures: Figures, spec: MachineSpec): Strainer | null => {
  const { strainer } = spec
  if (strainer == null) return null
  return {
    part: strainer.part ?? null,
    ratedFlow: strainer['rated-flow'].si,
    drop: strainer['drop-at-rated-flow'].si,
    viscosity: figures.or('strainer.viscosity', strainer.viscosity, DEFAULTS.referenceViscosity, 'viscosity'),
  }
}

/**
 * Resolves a checked machine file.
 * @param draw draws each figure within its tolerance; null gives the nominal machine and its assumptions
 */
export const resolveMachine = (spec: MachineSpec, draw: Draw | null): BuiltMachine => {
  const figures = new Figures(draw)
  const engine = resolveEngine(figures, spec)
  const machine: Machine = {
    name: spec.machine.name,
    type: spec.machine.type,
    mass: figures.written('machine.mass', spec.machine.mass),
    marketValue: spec.machine['market-value'] ?? null,
    designTravelSpeed: spec.machine['design-travel-speed']?.si ?? null,
    engine,
    oil: resolveOil(figures, spec),
    reservoir: resolveReservoir(figures, spec),
    otherCoolingSurface: figures.or('other-cooling-surface', spec['other-cooling-surface'], 0, 'area', SPREADS.surface),
    otherHeatTransfer: figures.default(
      'other-heat-transfer',
      DEFAULTS.surfaceTransfer,
      'heat transfer',
      SPREADS.heatTransfer,
    ),
    coolingFactor: 1,
    cylinderAreaRatio: figures.filled('cylinder-area-ratio', spec['cylinder-area-ratio'], DEFAULTS.areaRatio),
    brakes: { holding: spec.brakes?.holding ?? null, counterbalance: spec.brakes?.counterbalance ?? null },
    circuits: resolveCircuits(figures, spec, engine.ratedSpeed),
    travel: resolveTravel(figures, spec),
    filter: resolveFilter(figures, spec),
    cooler: resolveCooler(figures, spec),
    strainer: resolveStrainer(figures, spec),
  }
  const noted = new Set(figures.assumptions.map(({ path }) => path))
  const further = draw === null ? assumedIn(spec).filter(({ path }) => !noted.has(path)) : []
  return { machine, assumptions: [...figures.assumptions, ...further] }
}
