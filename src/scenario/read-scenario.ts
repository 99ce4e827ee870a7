/** The scenario file in SI, with the defaults of site and duty noted. */
import type { Duty, Machine, Site } from '../machine.ts'
import type { Assumption, Json, Scenario, Wants } from '../question.ts'
import { groundFor } from '../tables/ground.ts'
import { assumedIn } from './figures.ts'
import { isMapping } from './patch.ts'
import { didYouMean, type Flaw, oneOf } from './problems.ts'
import { afterOf, READING_OIL, readingsOf } from './read-readings.ts'
import type { ScenarioSpec } from './scenario-schema.ts'

/** Where the scenario says nothing; each is noted. */
const SITE = { altitude: 0, ground: 'firm soil', grade: 0.15 } as const
const DUTY = { travel: 0.2, work: 0.5, relief: 0.05, attachment: 0, idle: 0.25 } as const
const WORK_USEFUL = 0.6

const flaw = (
  code: Flaw['code'],
  path: Flaw['path'],
  message: string,
  expected: string | null,
  remedy: string | null = null,
): Flaw => ({ code, path, message, expected, remedy })

type DutySpec = NonNullable<ScenarioSpec['duty']>

const workOf = (work: DutySpec['work']): { share: number | null; pressure: number | null; useful: number } => {
  if (work === null || work === undefined) return { share: null, pressure: null, useful: WORK_USEFUL }
  if ('si' in work) return { share: work.si, pressure: null, useful: WORK_USEFUL }
  return { share: work.share.si, pressure: work.pressure?.si ?? null, useful: work.useful?.si ?? WORK_USEFUL }
}

/** Shares of the duty; a missing idle share is filled up. */
const dutyOf = (spec: ScenarioSpec): { readonly duty: Duty; readonly flaws: readonly Flaw[] } => {
  if (spec.duty === null || spec.duty === undefined)
    return { duty: { ...DUTY, work: { share: DUTY.work, pressure: null, useful: WORK_USEFUL } }, flaws: [] }
  const { duty } = spec
  const work = workOf(duty.work)
  const stated = (duty.travel?.si ?? 0) + (work.share ?? 0) + (duty.relief?.si ?? 0) + (duty.attachment?.si ?? 0)
  const idle = duty.idle?.si ?? Math.max(0, 1 - stated)
  // Binary noise is no reason to touch what the shop wrote.
  const sum = Math.abs(stated + idle - 1) < 1e-9 ? 1 : stated + idle
  const flaws =
    Math.abs(sum - 1) > 0.005
      ? [
          flaw(
            'shares-not-whole',
            ['duty'],
            `the shares of the duty make ${Number((sum * 100).toFixed(1))} %`,
            '100 %',
            duty.idle == null ? null : 'leave out idle, and it is filled up',
          ),
        ]
      : []
  return {
    duty: {
      travel: (duty.travel?.si ?? 0) / sum,
      work: { share: (work.share ?? 0) / sum, pressure: work.pressure, useful: work.useful },
      relief: (duty.relief?.si ?? 0) / sum,
      attachment: (duty.attachment?.si ?? 0) / sum,
      idle: idle / sum,
    },
    flaws,
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
      ? [filled('duty.idle', Number((dutyOf(spec).duty.idle * 100).toPrecision(6)), '%')]
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

const nameFlaws = (spec: ScenarioSpec, machine: Machine): Flaw[] => {
  const known = machine.circuits.map((circuit) => circuit.name)
  const unknown = (name: string | null | undefined, path: Flaw['path']): Flaw[] =>
    name == null || known.includes(name)
      ? []
      : [flaw('circuit-unknown', path, `the machine has no circuit "${name}"`, known.map((k) => `"${k}"`).join(', '))]
  const { measured } = spec
  const pressures = (block: 'measured' | 'after', key: 'relief-pressure' | 'inlet-pressure') => {
    const list = spec[block]?.[key]
    return Array.isArray(list) ? list.flatMap(({ circuit }, i) => unknown(circuit, [block, key, i, 'circuit'])) : []
  }
  return [
    ...(measured?.flows ?? []).flatMap((flow, i) => unknown(flow.circuit, ['measured', 'flows', i, 'circuit'])),
    ...(['measured', 'after'] as const).flatMap((block) => [
      ...pressures(block, 'relief-pressure'),
      ...pressures(block, 'inlet-pressure'),
    ]),
  ]
}

/** What was carried out is one of the options. */
const afterFlaws = (spec: ScenarioSpec): Flaw[] => {
  const option = spec.after?.option ?? null
  const names = (spec.options ?? []).map(({ name }) => name)
  if (option === null || names.includes(option)) return []
  const expected = names.length === 0 ? 'an option of this scenario' : oneOf(names)
  return [
    flaw('word-unknown', ['after', 'option'], `no option is called "${option}"`, expected, didYouMean(option, names)),
  ]
}

/** The recommendation goes by an option's name; an option says what is changed, or what is to be reached. */
const optionFlaws = (spec: ScenarioSpec): Flaw[] =>
  (spec.options ?? []).flatMap(({ name, changes, reach }, i, all) => [
    ...(all.findIndex((other) => other.name === name) === i
      ? []
      : [flaw('name-twice', ['options', i, 'name'], `two options are called "${name}"`, 'a name of its own for each')]),
    ...(changes == null && reach == null
      ? [flaw('key-missing', ['options', i, 'changes'], `"changes" is missing`, 'changes, or reach: {travel-speed: …}')]
      : []),
    ...(changes != null && reach != null
      ? [
          {
            ...flaw(
              'one-of-two',
              ['options', i, 'reach'],
              'the option says what is changed and what is to be reached',
              'one of "changes" and "reach"',
            ),
            atKey: true,
          },
        ]
      : []),
    ...(reach != null && wantsNothing(wantsOf(reach))
      ? [
          flaw(
            'key-missing',
            ['options', i, 'reach', 'travel-speed'],
            'nothing is to be reached',
            'travel-speed, attachment or oil-below',
          ),
        ]
      : []),
  ])

/** What is wanted, in SI; of a scenario, or of one option. */
const wantsOf = (wants: ScenarioSpec['wants']): Wants => ({
  travelSpeed: wants?.['travel-speed']?.si ?? null,
  attachment:
    wants?.attachment == null ? null : { flow: wants.attachment.flow.si, pressure: wants.attachment.pressure.si },
  oilBelow: wants?.['oil-below']?.si ?? null,
})

const wantsNothing = ({ travelSpeed, attachment, oilBelow }: Wants): boolean =>
  travelSpeed === null && attachment === null && oilBelow === null

const attachmentFlaws = (spec: ScenarioSpec, machine: Machine): Flaw[] => {
  const wanted = (spec.duty?.attachment?.si ?? 0) > 0
  if (!wanted) return []
  if (spec.attachment == null)
    return [
      flaw(
        'attachment-missing',
        ['duty', 'attachment'],
        'the duty has an attachment, and the scenario none',
        'attachment: {name: …, flow: …, pressure: …}',
      ),
    ]
  return machine.circuits.some((circuit) => circuit.works.includes('attachment'))
    ? []
    : [
        flaw(
          'attachment-missing',
          ['duty', 'attachment'],
          'no circuit of the machine works an attachment',
          'a circuit with "works: [attachment]"',
        ),
      ]
}

/**
 * The scenario in SI.
 * @param machine as its file says: grounds and circuits depend on it
 */
export const scenarioOf = (
  file: string,
  spec: ScenarioSpec,
  machine: Machine,
): { readonly scenario: Scenario; readonly flaws: readonly Flaw[] } => {
  const { duty, flaws } = dutyOf(spec)
  const { status, wants } = spec
  return {
    scenario: {
      title: spec.title,
      asked: spec.asked,
      customer: { name: spec.customer.name, place: spec.customer.place ?? null },
      quote: { number: spec.quote?.number ?? null, date: spec.quote?.date ?? null },
      file,
      site: siteOf(spec, machine),
      duty,
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
    },
    flaws: [
      ...flaws,
      ...nameFlaws(spec, machine),
      ...attachmentFlaws(spec, machine),
      ...optionFlaws(spec),
      ...afterFlaws(spec),
    ],
  }
}
