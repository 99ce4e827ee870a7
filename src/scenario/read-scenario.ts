/** The scenario file in SI, with the defaults of site and duty noted. */
import type { Duty, Machine, Site } from '../machine.ts'
import type { Assumption, Json, Scenario, Wants } from '../question.ts'
import { groundFor } from '../tables/ground.ts'
import { assumedIn } from './figures.ts'
import { isMapping } from './patch.ts'
import { afterOf, READING_OIL, readingsOf } from './read-readings.ts'
import type { ScenarioSpec } from './scenario-schema.ts'

/** Where the scenario says nothing; each is noted. */
const SITE = { altitude: 0, ground: 'firm soil', grade: 0.15 } as const
const DUTY = { travel: 0.2, work: 0.5, relief: 0.05, attachment: 0, idle: 0.25 } as const
const WORK_USEFUL = 0.6

type DutySpec = NonNullable<ScenarioSpec['duty']>

const workOf = (work: DutySpec['work']): { share: number | null; pressure: number | null; useful: number } => {
  if (work === null || work === undefined) return { share: null, pressure: null, useful: WORK_USEFUL }
  if ('si' in work) return { share: work.si, pressure: null, useful: WORK_USEFUL }
  return { share: work.share.si, pressure: work.pressure?.si ?? null, useful: work.useful?.si ?? WORK_USEFUL }
}

interface Shares {
  readonly work: ReturnType<typeof workOf>
  readonly idle: number
  readonly sum: number
}

const sharesOf = (duty: DutySpec): Shares => {
  const work = workOf(duty.work)
  const stated = (duty.travel?.si ?? 0) + (work.share ?? 0) + (duty.relief?.si ?? 0) + (duty.attachment?.si ?? 0)
  const idle = duty.idle?.si ?? Math.max(0, 1 - stated)
  // Binary noise is no reason to touch what the shop wrote.
  return { work, idle, sum: Math.abs(stated + idle - 1) < 1e-9 ? 1 : stated + idle }
}

/** What all shares of a duty make together. */
export const wholeOf = (duty: DutySpec): number => sharesOf(duty).sum

/** Shares of the duty; a missing idle share is filled up. */
const dutyOf = ({ duty }: ScenarioSpec): Duty => {
  if (duty === null || duty === undefined)
    return { ...DUTY, work: { share: DUTY.work, pressure: null, useful: WORK_USEFUL } }
  const { work, idle, sum } = sharesOf(duty)
  return {
    travel: (duty.travel?.si ?? 0) / sum,
    work: { share: (work.share ?? 0) / sum, pressure: work.pressure, useful: work.useful },
    relief: (duty.relief?.si ?? 0) / sum,
    attachment: (duty.attachment?.si ?? 0) / sum,
    idle: idle / sum,
  }
}

const siteOf = (spec: ScenarioSpec, machine: Machine): Site => {
  const { site } = spec
  return {
    ambient: site.ambient.si,
    coldestStart: site['coldest-start']?.si ?? site.ambient.si,
    altitude: site.altitude?.si ?? SITE.altitude,
    ground: groundFor(site.ground ?? SITE.ground, machine.travel.running),
    steepestGrade: site['steepest-grade']?.si ?? SITE.grade,
    trip: site.trip?.si ?? null,
    tripsPerDay: site['trips-per-day'] ?? null,
    daysPerYear: site['days-per-year'] ?? null,
    hourIsWorth: site['hour-is-worth'] ?? null,
  }
}

/** Assumptions of the scenario: what was filled in, and what is marked as assumed. */
export const scenarioAssumptions = (spec: ScenarioSpec): readonly Assumption[] => {
  const filled = (path: string, value: number | string, unit: string): Assumption => ({
    path,
    value,
    unit,
    from: 'default',
    tolerance: null,
  })
  const { site, measured } = spec
  return [
    ...(site['coldest-start'] == null
      ? [filled('site.coldest-start', Number(site.ambient.si.toPrecision(12)), '°C')]
      : []),
    ...(site.altitude == null ? [filled('site.altitude', SITE.altitude, 'm')] : []),
    ...(site.ground == null ? [filled('site.ground', SITE.ground, '')] : []),
    ...(site['steepest-grade'] == null ? [filled('site.steepest-grade', SITE.grade * 100, '%')] : []),
    {
      path: 'site.ground.rolling-resistance',
      value: site.ground ?? SITE.ground,
      unit: '',
      from: 'default',
      tolerance: '± 25 %',
    },
    ...(spec.duty == null ? [filled('duty', 'travel 20 %, work 50 %, relief 5 %, idle 25 %', '')] : []),
    ...(spec.duty != null && spec.duty.idle == null
      ? [filled('duty.idle', Number((dutyOf(spec).idle * 100).toPrecision(6)), '%')]
      : []),
    ...(measured?.travel != null && measured.travel.oil == null
      ? [filled('measured.travel.oil', READING_OIL, '°C')]
      : []),
    ...(measured?.flows ?? []).flatMap((flow, i) =>
      flow.oil == null ? [filled(`measured.flows.${i}.oil`, READING_OIL, '°C')] : [],
    ),
    ...assumedIn(spec),
  ]
}

/** What is wanted, in SI; of a scenario, or of one option. */
const wantsOf = (wants: ScenarioSpec['wants']): Wants => ({
  travelSpeed: wants?.['travel-speed']?.si ?? null,
  attachment:
    wants?.attachment == null ? null : { flow: wants.attachment.flow.si, pressure: wants.attachment.pressure.si },
  oilBelow: wants?.['oil-below']?.si ?? null,
})

/**
 * The scenario in SI.
 * @param machine as its file says: grounds and circuits depend on it
 */
export const scenarioOf = (file: string, spec: ScenarioSpec, machine: Machine): Scenario => {
  const { status, wants } = spec
  return {
    title: spec.title,
    asked: spec.asked,
    customer: { name: spec.customer.name, place: spec.customer.place ?? null },
    quote: { number: spec.quote?.number ?? null, date: spec.quote?.date ?? null },
    file,
    site: siteOf(spec, machine),
    duty: dutyOf(spec),
    readings: readingsOf(spec),
    after: afterOf(spec),
    status: {
      warranty: status?.warranty ?? false,
      leased: status?.leased ?? false,
      hiredOut: status?.['hired-out'] ?? false,
      makerConsent: status?.['maker-consent'] ?? false,
      openDefects: status?.['open-defects'] ?? [],
    },
    wants: wantsOf(wants),
    alternatives: (spec.alternatives ?? []).map(({ name, saves, cost }) => ({ name, saves: saves.si, cost })),
    attachment:
      spec.attachment == null
        ? null
        : { name: spec.attachment.name, flow: spec.attachment.flow.si, pressure: spec.attachment.pressure.si },
    options: (spec.options ?? []).map(({ name, why, changes, reach }) => ({
      name,
      why: why ?? null,
      changes: isMapping(changes as Json) ? (changes as { readonly [key: string]: Json }) : {},
      reach: reach == null ? null : wantsOf(reach),
    })),
  }
}
