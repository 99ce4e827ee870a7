/** The machine file: the only definition of its keys. Quantities stay as read; defaults are filled in build-machine.ts. */
import { z } from 'zod'
import {
  connection,
  count,
  dash,
  efficiency,
  flangeText,
  maybe,
  money,
  notNegative,
  orElse,
  positive,
  ratio,
  refuse,
  shaftText,
  share,
  text,
  word,
  yesNo,
} from './values.ts'

export const MACHINE_TYPES = ['tracked excavator', 'tracked loader', 'wheeled loader', 'tracked dumper'] as const
export const DRIVES = ['both tracks', 'left track', 'right track', 'no track'] as const
export const WORKS = ['implements', 'attachment'] as const
export const SETTINGS = ['boxed in', 'exposed', 'in fan wash'] as const

/** Named in place of figures; figures beside it win over the part's. */
const part = { part: maybe(text.describe('id of a part on the parts list')) }

const pumpAt = z.strictObject({
  pressure: orElse(positive('pressure'), '160 bar'),
  speed: orElse(positive('speed'), 'rated speed of the engine'),
  viscosity: orElse(positive('viscosity'), '32 cSt'),
})
const motorAt = z.strictObject({
  pressure: orElse(positive('pressure'), '100 bar'),
  speed: orElse(positive('speed'), '60 rpm'),
  viscosity: orElse(positive('viscosity'), '32 cSt'),
})

const pumpEfficiency = z.strictObject({
  volumetric: orElse(efficiency, 'that of a usual small gear pump'),
  hydromechanical: orElse(efficiency, '89 %'),
  at: maybe(pumpAt),
})
const motorEfficiency = z.strictObject({
  volumetric: orElse(efficiency, 'that of a usual orbital motor'),
  hydromechanical: orElse(efficiency, '84 %'),
  starting: orElse(efficiency, '68 %'),
  at: maybe(motorAt),
})

export const mount = z.strictObject({
  flange: maybe(flangeText),
  shaft: maybe(shaftText),
  rotation: maybe(word(['clockwise', 'counterclockwise', 'both'] as const)),
  length: maybe(positive('length')),
})

const pumpPorts = z.strictObject({ inlet: maybe(connection), outlet: maybe(connection) })

export const pump = z.strictObject({
  ...part,
  section: maybe(count),
  displacement: positive('displacement'),
  'max-pressure': maybe(positive('pressure')),
  'max-speed': maybe(positive('speed')),
  'min-inlet-pressure': orElse(positive('pressure').describe('absolute pressure, such as "0.7 bar"'), '0.7 bar'),
  efficiency: maybe(pumpEfficiency),
  mount: maybe(mount),
  ports: maybe(pumpPorts),
  'max-shaft-torque': maybe(positive('torque')),
})

export const hose = z.strictObject({
  ...part,
  hose: maybe(dash),
  kind: maybe(text),
  bore: maybe(positive('length')),
  length: positive('length'),
  elbows: orElse(count, '0'),
  ends: maybe(z.tuple([connection, connection]).describe('both ends, such as [G 1/2, G 3/4]')),
  'max-pressure': maybe(positive('pressure')),
  'min-bend-radius': maybe(positive('length')),
})

/** A suction line may be one with another circuit's. */
const suction = hose.extend({ 'same-as': maybe(text), length: maybe(positive('length')) })

const restriction = z.strictObject({ flow: positive('flow'), drop: notNegative('pressure') })

export const valve = z.strictObject({
  ...part,
  'rated-flow': maybe(positive('flow')),
  'drop-at-rated-flow': maybe(notNegative('pressure')),
  'max-pressure': maybe(positive('pressure')),
  ports: maybe(z.strictObject({ inlet: maybe(connection), outlet: maybe(connection), work: maybe(connection) })),
})

export const relief = z.strictObject({
  ...part,
  setting: positive('pressure'),
  'rated-flow': maybe(positive('flow')),
  override: orElse(share, '10 %'),
})

export const coupling = z.strictObject({ ...part, type: maybe(text), 'rated-torque': positive('torque') })

const auxiliary = z.strictObject({
  lines: maybe(z.strictObject({ out: maybe(hose), back: maybe(hose) })),
  coupler: maybe(restriction),
})

export const circuit = z.strictObject({
  loop: maybe(
    z.string().transform((value, ctx) =>
      value === 'open'
        ? value
        : refuse(ctx as never, {
            code: value === 'closed' ? 'closed-loop' : 'word-unknown',
            message: value === 'closed' ? 'closed-loop drives are not covered yet' : `"${value}" is no kind of loop`,
            expected: '"open"',
            remedy: value === 'closed' ? 'this machine cannot be evaluated' : null,
          }),
    ),
  ),
  pump,
  coupling: maybe(coupling),
  room: maybe(z.strictObject({ length: positive('length') })),
  relief,
  valve: maybe(valve),
  lines: maybe(z.strictObject({ suction: maybe(suction), pressure: maybe(hose), return: maybe(hose) })),
  drives: word(DRIVES),
  works: maybe(z.array(word(WORKS)).max(2)),
  auxiliary: maybe(auxiliary),
})

export const motor = z.strictObject({
  ...part,
  displacement: positive('displacement'),
  'second-displacement': maybe(positive('displacement')),
  'max-pressure': maybe(positive('pressure')),
  'max-flow': maybe(positive('flow')),
  'max-speed': maybe(positive('speed')),
  'max-return-pressure': maybe(positive('pressure')),
  efficiency: maybe(motorEfficiency),
  mount: maybe(mount),
  ports: maybe(z.strictObject({ work: maybe(connection) })),
  block: maybe(restriction),
})

export const swivel = z.strictObject({
  ...part,
  bore: maybe(positive('length')),
  passages: maybe(count),
  'spare-passages': maybe(count),
  'max-pressure': maybe(positive('pressure')),
  'drop-at': maybe(restriction),
  ports: maybe(z.strictObject({ work: maybe(connection) })),
})

export const sprocket = z.strictObject({
  ...part,
  'pitch-diameter': maybe(positive('length')),
  teeth: maybe(count),
  pitch: maybe(positive('length')),
  'links-per-turn': maybe(ratio),
})

const travel = z.strictObject({
  motors: orElse(z.literal([2, 4]), '2'),
  motor,
  'final-drive-ratio': orElse(ratio, '1'),
  sprocket: maybe(sprocket),
  track: maybe(
    z.strictObject({
      gauge: maybe(positive('length')),
      'ground-contact-length': maybe(positive('length')),
      efficiency: orElse(efficiency, '92 %'),
    }),
  ),
  wheel: maybe(z.strictObject({ 'rolling-radius': positive('length'), efficiency: orElse(efficiency, '95 %') })),
  swivel: maybe(swivel),
  lines: maybe(z.record(z.string(), hose)),
})

export const filter = z.strictObject({
  ...part,
  place: maybe(word(['return'] as const)),
  'rated-flow': maybe(positive('flow')),
  drop: maybe(notNegative('pressure')),
  at: maybe(z.strictObject({ flow: maybe(positive('flow')), viscosity: maybe(positive('viscosity')) })),
  fineness: maybe(positive('length')),
  beta: maybe(z.number().positive()),
  bypass: orElse(positive('pressure'), '1.7 bar'),
})

export const cooler = z.strictObject({
  ...part,
  place: maybe(word(['return'] as const)),
  capacity: positive('heat capacity rate'),
  'at-flow': positive('flow'),
  drop: maybe(notNegative('pressure')),
  'max-pressure': maybe(positive('pressure')),
  bypass: orElse(positive('pressure'), '4.5 bar'),
  'air-rise': orElse(notNegative('temperature difference'), '0 K'),
  'fan-current': maybe(notNegative('current')),
})

export const strainer = z.strictObject({
  ...part,
  'rated-flow': positive('flow'),
  'drop-at-rated-flow': notNegative('pressure'),
  viscosity: orElse(positive('viscosity'), '32 cSt'),
})

export const fluid = z.strictObject({
  ...part,
  grade: maybe(text),
  'viscosity-at-40C': maybe(positive('viscosity')),
  'viscosity-at-100C': orElse(positive('viscosity'), 'that of the grade'),
  'viscosity-index': maybe(z.number().min(0).max(400)),
})

export const reservoir = z.strictObject({
  ...part,
  volume: positive('volume'),
  'cooling-surface': positive('area'),
  setting: orElse(word(SETTINGS), 'exposed'),
  'heat-transfer': orElse(positive('heat transfer'), '6, 12 or 24 W/m2K by the setting'),
  'steel-mass': orElse(positive('mass'), '2.5 kg a litre of oil'),
})

/** Small parts that carry no oil flow: what they are is said by the part. */
const fitted = z.strictObject({ ...part, current: maybe(notNegative('current')), fineness: maybe(positive('length')) })

export const machineFile = z.strictObject({
  format: z.literal(1),
  machine: z.strictObject({
    name: text,
    type: word(MACHINE_TYPES),
    mass: positive('mass'),
    'market-value': maybe(money),
    'design-travel-speed': maybe(positive('travel speed')),
  }),
  engine: z.strictObject({
    'net-power': positive('power'),
    'rated-speed': positive('speed'),
    'governor-droop': orElse(share, '8 %'),
    'torque-rise': orElse(share, '10 %'),
    'continuous-fraction': orElse(efficiency, '85 %'),
    'spare-current': maybe(notNegative('current')),
    cylinders: orElse(count, '3'),
  }),
  fluid,
  reservoir,
  'other-cooling-surface': orElse(notNegative('area'), '0 m2'),
  'cylinder-area-ratio': orElse(ratio, '1'),
  brakes: maybe(z.strictObject({ holding: maybe(yesNo), counterbalance: maybe(yesNo) })),
  circuits: z.record(z.string(), circuit),
  travel,
  filter: maybe(filter),
  cooler: maybe(cooler),
  strainer: maybe(strainer),
  breather: maybe(fitted),
  alternator: maybe(fitted),
  'lamp-set': maybe(fitted),
  thermostat: maybe(fitted),
  harness: maybe(fitted),
  'cooler-bypass': maybe(fitted),
})

export type MachineSpec = z.infer<typeof machineFile>
export type CircuitSpec = z.infer<typeof circuit>
export type HoseSpec = z.infer<typeof hose>
export type PumpSpec = z.infer<typeof pump>
export type MotorSpec = z.infer<typeof motor>
