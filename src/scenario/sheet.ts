/** What the report prints of the files themselves: letterhead, site, wishes, and what was measured, read or assumed. */
import type { Sheet, SheetRow } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Scenario } from '../question.ts'
import type { Shop } from '../shop.ts'
import { type Dimension, inShownUnit, shownUnit } from '../units/dimensions.ts'
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

/** Units in which a reading is shown where the dimension's own would be odd: a pump's pressure in bar, a bore in mm. */
const SHOWN: { readonly [D in Dimension]?: { readonly unit: string; readonly factor: number } } = {
  time: { unit: 's', factor: 1 },
}

const toleranceText = ({ tolerance, si }: Quantity): string | null =>
  tolerance === null || si === 0 ? null : `± ${Number(((100 * tolerance) / Math.abs(si)).toPrecision(2))} %`

const row = (label: string, quantity: Quantity | null | undefined, from?: SheetRow['from']): SheetRow[] => {
  if (quantity === null || quantity === undefined) return []
  const shown = SHOWN[quantity.dimension]
  const value = shown === undefined ? inShownUnit(quantity.dimension, quantity.si) : quantity.si * shown.factor
  const unit = shown === undefined ? shownUnit(quantity.dimension) : shown.unit
  const source = quantity.from === 'stated' && from !== undefined ? from : quantity.from
  return [{ label, value, unit, from: source, tolerance: toleranceText(quantity) }]
}

/** Readings of a scenario are measured unless the file says otherwise. */
const measuredRows = ({ measured }: ScenarioSpec): SheetRow[] => {
  if (measured === null || measured === undefined) return []
  const of = (label: string, quantity: Quantity | null | undefined) => row(label, quantity, 'measured')
  const pressures = (label: string, reading: (typeof measured)['relief-pressure']) =>
    Array.isArray(reading)
      ? reading.flatMap(({ circuit, pressure }) => of(`${label}, circuit ${circuit}`, pressure))
      : of(label, reading as Quantity | null | undefined)
  return [
    ...of('Timed run: distance', measured.travel?.distance),
    ...of('Timed run: time', measured.travel?.time),
    ...of('Timed run: oil', measured.travel?.oil),
    ...of('Engine speed', measured['engine-speed']),
    ...pressures('Relief pressure', measured['relief-pressure']),
    ...(measured.flows ?? []).flatMap((flow) =>
      of(
        `Pump flow at ${inShownUnit('pressure', flow.pressure.si)} bar${flow.circuit == null ? '' : `, circuit ${flow.circuit}`}`,
        flow.flow,
      ),
    ),
    ...pressures('Pressure at the pump inlet', measured['inlet-pressure']),
    ...of('Oil temperature in the tank', measured['oil-temperature']?.reading),
    ...of('after', measured['oil-temperature']?.after),
  ]
}

const machineRows = (spec: MachineSpec): SheetRow[] => [
  ...row('Mass', spec.machine.mass),
  ...row('Engine, net power', spec.engine['net-power']),
  ...row('Engine, rated speed', spec.engine['rated-speed']),
  ...Object.entries(spec.circuits).flatMap(([name, circuit]) => [
    ...row(`Pump of circuit ${name}`, circuit.pump.displacement),
    ...row(`Relief of circuit ${name}`, circuit.relief.setting),
  ]),
  ...row('Travel motor', spec.travel.motor.displacement),
  ...row('Travel motor, second displacement', spec.travel.motor['second-displacement']),
  ...row('Drilling of the swivel', spec.travel.swivel?.bore),
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
