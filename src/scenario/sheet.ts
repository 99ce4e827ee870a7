/** What the report prints of the files themselves: letterhead, site, wishes, and what was measured, read or assumed. */
import type { Sheet, SheetRow } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Scenario } from '../question.ts'
import type { Shop } from '../shop.ts'
import { inShownUnit, readable } from '../units/dimensions.ts'
import type { Quantity } from '../units/quantity.ts'
import {
  barFromPascals,
  kmhFromMetresPerSecond,
  lpmFromCubicMetresPerSecond,
  minutesFromSeconds,
  percentFromShare,
} from '../units/shop-units.ts'
import type { MachineSpec } from './machine-schema.ts'
import type { ScenarioSpec } from './scenario-schema.ts'

/** Of a share in points, of a temperature in kelvins, else in per cent of the value. */
const toleranceText = ({ dimension, tolerance, si }: Quantity): string | null => {
  if (tolerance === null || tolerance === 0) return null
  if (dimension === 'share') return `± ${Number((tolerance * 100).toPrecision(2))} points`
  if (dimension === 'temperature') return `± ${Number(tolerance.toPrecision(2))} K`
  return si === 0 ? null : `± ${Number(((100 * tolerance) / Math.abs(si)).toPrecision(2))} %`
}

const row = (label: string, quantity: Quantity | null | undefined, from?: SheetRow['from']): SheetRow[] => {
  if (quantity === null || quantity === undefined) return []
  const source = quantity.from === 'stated' && from !== undefined ? from : quantity.from
  return [{ label, ...readable(quantity.dimension, quantity.si), from: source, tolerance: toleranceText(quantity) }]
}

const word = (label: string, value: string): SheetRow => ({ label, value, unit: '', from: 'stated', tolerance: null })

/** The main circuit is the only one where it has that name: it needs no telling. */
const ofCircuit = (label: string, circuit: string): string =>
  circuit === 'main' ? label : `${label}, ${circuit} circuit`

/** Readings of a scenario are measured unless the file says otherwise. */
const measuredRows = ({ measured }: ScenarioSpec): SheetRow[] => {
  if (measured === null || measured === undefined) return []
  const of = (label: string, quantity: Quantity | null | undefined) => row(label, quantity, 'measured')
  const pressures = (label: string, reading: (typeof measured)['relief-pressure']) =>
    Array.isArray(reading)
      ? reading.flatMap(({ circuit, pressure }) => of(ofCircuit(label, circuit), pressure))
      : of(label, reading as Quantity | null | undefined)
  return [
    ...of('Timed run: distance', measured.travel?.distance),
    ...of('Timed run: time', measured.travel?.time),
    ...of('Timed run: oil', measured.travel?.oil),
    ...of('Engine speed', measured['engine-speed']),
    ...pressures('Relief pressure', measured['relief-pressure']),
    ...(measured.flows ?? []).flatMap((flow) =>
      of(ofCircuit(`Pump flow at ${inShownUnit('pressure', flow.pressure.si)} bar`, flow.circuit ?? 'main'), flow.flow),
    ),
    ...pressures('Pressure at the pump inlet', measured['inlet-pressure']),
    ...of('Oil temperature in the tank', measured['oil-temperature']?.reading),
    ...of('Oil temperature, read after', measured['oil-temperature']?.after),
  ]
}

const machineRows = (spec: MachineSpec): SheetRow[] => [
  ...row('Mass', spec.machine.mass),
  ...row('Engine, net power', spec.engine['net-power']),
  ...row('Engine, rated speed', spec.engine['rated-speed']),
  ...Object.entries(spec.circuits).flatMap(([name, circuit]) => [
    ...row(ofCircuit('Pump size', name), circuit.pump.displacement),
    ...row(ofCircuit('Relief setting', name), circuit.relief.setting),
  ]),
  ...row('Travel motor', spec.travel.motor.displacement),
  ...row('Travel motor, second displacement', spec.travel.motor['second-displacement']),
  ...row('Drilling of the swivel', spec.travel.swivel?.bore),
  ...row('Sprocket, pitch diameter', spec.travel.sprocket?.['pitch-diameter']),
  ...row('Wheel, rolling radius', spec.travel.wheel?.['rolling-radius']),
  ...(spec.fluid.grade == null ? [] : [word('Oil', spec.fluid.grade)]),
  ...row('Oil in the reservoir', spec.reservoir.volume),
  ...row('Reservoir surface', spec.reservoir['cooling-surface']),
]

/** Date a number of days later, by the calendar alone. */
const daysLater = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + Math.round(days) * 86_400_000).toISOString().slice(0, 10)

/** Everything of the result's sheet. */
export const sheetOf = (
  scenario: Scenario,
  spec: ScenarioSpec,
  machineSpec: MachineSpec,
  machine: Machine,
  shop: Shop,
): Sheet => {
  const { site, wants, quote } = scenario
  return {
    shop: {
      name: shop.name,
      address: shop.address,
      phone: shop.phone,
      email: shop.email,
      mark: shop.mark,
      accent: shop.accent,
      units: shop.units,
      currency: shop.currency,
      terms: shop.terms,
      quoteValidDays: shop.quoteValidDays,
    },
    customer: scenario.customer,
    quote: {
      number: quote.number,
      date: quote.date,
      validUntil: quote.date === null ? null : daysLater(quote.date, shop.quoteValidDays),
    },
    machine: {
      name: machine.name,
      type: machine.type,
      massKg: machine.mass,
      designSpeedKmh: machine.designTravelSpeed === null ? null : kmhFromMetresPerSecond(machine.designTravelSpeed),
    },
    site: {
      ambientC: site.ambient,
      coldestStartC: site.coldestStart,
      altitudeM: site.altitude,
      ground: site.ground.name,
      steepestGradePercent: percentFromShare(site.steepestGrade),
      tripM: site.trip,
      tripsPerDay: site.tripsPerDay,
      daysPerYear: site.daysPerYear,
      hourIsWorth: site.hourIsWorth,
    },
    wants: {
      speedKmh: wants.travelSpeed === null ? null : kmhFromMetresPerSecond(wants.travelSpeed),
      oilBelowC: wants.oilBelow,
      attachmentFlowLpm: wants.attachment === null ? null : lpmFromCubicMetresPerSecond(wants.attachment.flow),
      attachmentPressureBar: wants.attachment === null ? null : barFromPascals(wants.attachment.pressure),
    },
    alternatives: scenario.alternatives.map(({ name, saves, cost }) => ({
      name,
      minutesPerDay: minutesFromSeconds(saves),
      cost,
    })),
    rows: [...measuredRows(spec), ...machineRows(machineSpec)],
  }
}
