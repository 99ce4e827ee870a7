/** Swivel and travel motors: what takes their place when a check asks. */
import type { Finding } from '../evaluation.ts'
import type { Json } from '../question.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import {
  barFromPascals,
  cm3FromCubicMetresPerRev,
  cubicMetresPerSecondFromLpm,
  mmFromMetres,
  pascalsFromBar,
  revsPerSecondFromRpm,
} from '../units/shop-units.ts'
import { answer, askedValue, type RemedyInput, written } from './answer-finding.ts'
import { atLeastStated, choose, type Requirement } from './choose.ts'
import { type PortWanted, portsTake } from './control-remedies.ts'
import { drivingPressure } from './line-places.ts'
import { sameSize } from './pump-remedies.ts'
import { type MotorFigures, motors, type SwivelFigures, swivels } from './stock.ts'
import type { Remedy } from './uses.ts'

/** The motors have got a second displacement, and no shift line ran through the swivel before. */
const needsShiftPassage = ({ machine, before }: RemedyInput): boolean =>
  machine.travel.motor.secondDisplacement !== null && before.travel.motor.secondDisplacement === null

/** A swivel whose bore keeps the oil inside the guide velocity, with the passages that are needed, at the pressure. */
export const swivelRemedy = (
  input: RemedyInput,
  because: readonly Finding[],
  ports: readonly PortWanted[] = [],
): Remedy => {
  const { swivel } = input.machine.travel
  const present = swivel?.bore ?? null
  const velocity = askedValue(because, 'swivel-velocity')
  const wider = velocity === null ? 1 : Math.max(1, Math.sqrt(velocity / velocityLimits.work.guide))
  const bore = present === null ? null : present * wider
  const pressure = drivingPressure(input.machine) ?? 0
  const spare = needsShiftPassage(input) ? 1 : 0
  const passages = swivel?.passages ?? null
  const bar = barFromPascals(pressure)
  const requirements: readonly Requirement<SwivelFigures>[] = [
    {
      what: `bore of ${bore === null ? 'any size' : written(mmFromMetres(bore), 'mm')}`,
      met: (figures) => bore === null || atLeastStated(figures.bore, bore),
    },
    { what: `pressure of ${written(bar, 'bar')}`, met: (figures) => atLeastStated(figures.maxPressure, pressure) },
    { what: `${passages} passages`, met: (figures) => passages === null || atLeastStated(figures.passages, passages) },
    {
      what: 'a spare passage for the shift line',
      met: (figures) => spare === 0 || atLeastStated(figures.sparePassages, spare),
    },
    ...portsTake(ports),
  ]
  const choice = choose(swivels(input.shop), requirements, (figures) => figures.bore, input.shop)
  // A bigger bore makes the stated drop of the old swivel meaningless: the new one is worked out as a line of its bore.
  const bored: { readonly [key: string]: Json } =
    bore === null || wider === 1 ? {} : { bore: written(mmFromMetres(bore), 'mm'), 'drop-at': null }
  const ordered: Json = {
    part: null,
    ...bored,
    'max-pressure': written(Math.max(bar, barFromPascals(swivel?.maxPressure ?? 0)), 'bar'),
    ...(spare > 0 ? { 'spare-passages': spare } : {}),
  }
  const words = [
    bore === null ? null : `bore ${written(mmFromMetres(bore), 'mm')} or more`,
    `${written(bar, 'bar', 0)}`,
    spare > 0 ? 'a spare passage' : null,
  ]
  return answer(input, {
    component: 'travel.swivel',
    kind: 'swivel',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: 1,
    path: ['travel', 'swivel'],
    ordered,
    orderedWords: words.filter((word) => word !== null).join(', '),
    job: 'replace swivel',
  })
}

const sameOrUnread = (one: string | null, other: string | null): boolean =>
  one === null || other === null || one.toLowerCase() === other.toLowerCase()

/** Motors of the same displacements, all of them at once, that bear flow, speed, pressure and return pressure. */
export const motorRemedy = (
  input: RemedyInput,
  because: readonly Finding[],
  ports: readonly PortWanted[] = [],
): Remedy => {
  const { motor, motors: count } = input.machine.travel
  const { level } = input.figures.travel
  const flow = cubicMetresPerSecondFromLpm(Math.max(level.motorFlowLpm, askedValue(because, 'motor-flow') ?? 0))
  const speed = revsPerSecondFromRpm(Math.max(level.motorSpeedRpm, askedValue(because, 'motor-speed') ?? 0))
  const pressure = drivingPressure(input.machine) ?? 0
  const back = pascalsFromBar(Math.max(level.motorReturnBar, askedValue(because, 'motor-return-pressure') ?? 0))
  const second = motor.secondDisplacement
  const cm3 = written(cm3FromCubicMetresPerRev(motor.displacement), 'cm3/rev')
  const ratings = {
    'max-flow': written(flow * 60_000, 'L/min'),
    'max-speed': written(speed * 60, 'rpm', 0),
    'max-pressure': written(barFromPascals(pressure), 'bar'),
    'max-return-pressure': written(barFromPascals(back), 'bar'),
  }
  const requirements: readonly Requirement<MotorFigures>[] = [
    { what: cm3, met: (figures) => sameSize(figures.displacement, motor.displacement) },
    {
      what: second === null ? 'one displacement' : 'the same second displacement',
      met: ({ secondDisplacement }) =>
        second === null ? secondDisplacement === null : sameSize(secondDisplacement, second),
    },
    {
      what: `mount ${motor.mount.flange}, ${motor.mount.shaft}`,
      met: ({ mount }) =>
        sameOrUnread(mount.flange, motor.mount.flange) && sameOrUnread(mount.shaft, motor.mount.shaft),
    },
    { what: `pressure of ${ratings['max-pressure']}`, met: (figures) => atLeastStated(figures.maxPressure, pressure) },
    { what: `flow of ${ratings['max-flow']}`, met: (figures) => atLeastStated(figures.maxFlow, flow) },
    { what: `speed of ${ratings['max-speed']}`, met: (figures) => atLeastStated(figures.maxSpeed, speed) },
    {
      what: `return pressure of ${ratings['max-return-pressure']}`,
      met: (figures) => atLeastStated(figures.maxReturnPressure, back),
    },
    ...portsTake(ports),
  ]
  const choice = choose(motors(input.shop), requirements, ({ maxFlow }) => maxFlow, input.shop)
  return answer(input, {
    component: 'travel.motor',
    kind: 'motor',
    action: 'replace',
    because,
    chosen: choice.chosen?.part ?? null,
    failed: choice.failed,
    quantity: count,
    path: ['travel', 'motor'],
    ordered: { part: null, ...raised(motor, ratings) },
    orderedWords: `${cm3}, ${ratings['max-flow']}, ${ratings['max-speed']}, ${ratings['max-pressure']}`,
    job: 'replace motor',
  })
}

/** Only what the present motor does not bear is written: the rest of its ratings stays. */
const raised = (
  motor: RemedyInput['machine']['travel']['motor'],
  ratings: { readonly [key: string]: string },
): { readonly [key: string]: string } => {
  const present: { readonly [key: string]: number | null } = {
    'max-flow': motor.maxFlow === null ? null : motor.maxFlow * 60_000,
    'max-speed': motor.maxSpeed === null ? null : motor.maxSpeed * 60,
    'max-pressure': motor.maxPressure === null ? null : barFromPascals(motor.maxPressure),
    'max-return-pressure': motor.maxReturnPressure === null ? null : barFromPascals(motor.maxReturnPressure),
  }
  return Object.fromEntries(
    Object.entries(ratings).filter(([key, value]) => {
      const has = present[key] ?? null
      return has !== null && has < Number.parseFloat(value)
    }),
  )
}
