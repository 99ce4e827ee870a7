/** Fifth page: what was measured, read and assumed, the limits with their sources, and the test after the work. */
import type { Evaluation, Finding, ResultDocument, SheetRow } from '../../evaluation.ts'
import { count, quantity, typeset, type Units } from '../format.ts'
import { pathName } from '../names.ts'
import { money } from '../prices.ts'
import { en } from '../wording.ts'
import { firmer as firmerWords } from '../wording-proof.ts'
import { fullCautions } from './cautions.ts'
import { namedLimit } from './finding-text.ts'
import { isFaster, readingsDisagree, type Subject } from './subject.ts'

export interface KnownRow {
  readonly what: string
  readonly value: string
  readonly tolerance: string
}

/** More limits of one source than these stand in two columns. */
const MANY = 5

export interface LimitRow {
  readonly source: string
  readonly many: boolean
  readonly limits: readonly { readonly check: string; readonly limit: string }[]
}

export interface KnowView {
  readonly words: typeof en.know
  readonly tables: readonly {
    readonly heading: string
    readonly rows: readonly KnownRow[]
    readonly note: string
    readonly hasRows: boolean
  }[]
  readonly calibration: readonly string[]
  /** What is worth reading next, at most five. */
  readonly firmer: {
    readonly words: typeof firmerWords
    readonly rows: readonly { readonly what: string; readonly how: string; readonly effect: string }[]
  }
  readonly hasFirmer: boolean
  readonly limitsNote: string
  readonly limits: readonly LimitRow[]
  readonly hasLimits: boolean
  readonly testSteps: readonly string[]
  readonly kept: readonly string[]
  readonly promised: boolean
  readonly cautions: readonly string[]
}

const known = (
  row: { value: number | string; unit: string; tolerance: string | null },
  what: string,
  units: Units,
): KnownRow => ({
  what,
  // A plain number is a count or a ratio: three cylinders, not 3.00.
  value:
    typeof row.value !== 'number'
      ? row.value
      : row.unit === ''
        ? count(row.value)
        : quantity(row.value, row.unit, units),
  tolerance: row.tolerance ?? '',
})

const site = (result: ResultDocument, units: Units): readonly KnownRow[] => {
  const words = en.know
  const { site: at, shop, machine } = result.sheet
  const row = (what: string, value: string | null): readonly KnownRow[] =>
    value === null ? [] : [{ what, value, tolerance: '' }]
  const plain = (value: number | null) => (value === null ? null : count(value))
  return [
    ...row(words.designSpeed, machine.designSpeedKmh === null ? null : quantity(machine.designSpeedKmh, 'km/h', units)),
    ...row(words.ambient, quantity(at.ambientC, '°C', units)),
    ...row(words.coldest, quantity(at.coldestStartC, '°C', units)),
    ...row(words.altitude, quantity(at.altitudeM, 'm', units)),
    ...row(words.ground, at.ground),
    ...row(words.grade, quantity(at.steepestGradePercent, '%', units)),
    ...row(words.trip, at.tripM === null ? null : quantity(at.tripM, 'm', units)),
    ...row(words.trips, plain(at.tripsPerDay)),
    ...row(words.days, plain(at.daysPerYear)),
    ...row(words.worth, at.hourIsWorth === null ? null : money(at.hourIsWorth, shop.currency)),
  ]
}

const tables = (result: ResultDocument, units: Units): KnowView['tables'] => {
  const words = en.know
  const { rows } = result.sheet
  const from = (...kinds: readonly SheetRow['from'][]) =>
    rows.filter((row) => kinds.includes(row.from)).map((row) => known(row, row.label, units))
  // The file's own rows repeat an assumption under a plainer name; where value and unit are the same, once is enough.
  const told = (row: SheetRow) =>
    result.assumptions.some((assumption) => assumption.value === row.value && assumption.unit === row.unit)
  const assumed = [
    ...result.assumptions.map((assumption) => known(assumption, pathName(assumption.path), units)),
    ...rows
      .filter((row) => (row.from === 'assumed' || row.from === 'default') && !told(row))
      .map((row) => known(row, row.label, units)),
  ]
  const table = (heading: string, list: readonly KnownRow[], note: string) => ({
    heading,
    rows: list,
    note,
    hasRows: list.length > 0,
  })
  const all = [
    table(words.measured, from('measured'), from('measured').length === 0 ? words.noMeasured : ''),
    table(words.read, from('plate', 'manual'), ''),
    table(words.stated, from('stated'), ''),
    table(words.site, site(result, units), ''),
    table(words.assumed, assumed, words.assumedNote),
  ]
  return all.filter(({ hasRows }, index) => hasRows || index === 0)
}

interface Named {
  readonly name: string
  readonly evaluation: Evaluation
}

/** The machine as it is, as it will be, and the way that was asked for, each with a word of its own. */
const comparedWays = (result: ResultDocument, { after, asked }: Subject): readonly Named[] => [
  { name: en.know.now, evaluation: result.baseline },
  ...(after === null ? [] : [{ name: en.know.afterwards, evaluation: after }]),
  ...(asked === null || asked.evaluation === after ? [] : [{ name: en.know.asAsked, evaluation: asked.evaluation }]),
]

/** What those words stand for in this report. */
const limitsNote = ({ options }: ResultDocument, { after, afterLabel, asked }: Subject): string => {
  const words = en.know
  const then = options.find(({ evaluation }) => evaluation === after)
  return words.limitsNote([
    words.nowIs,
    ...(after === null ? [] : [words.thenIs(then === undefined ? afterLabel : en.answer.with(then.name))]),
    ...(asked === null || asked.evaluation === after ? [] : [words.askedIs(en.quoted(asked.name))]),
  ])
}

/** A limit is set, not measured: 60.0 s promises more than 60 s says. */
const asSet = (text: string): string => text.replaceAll(/\.0+(?!\d)|(\.\d*[1-9])0+(?!\d)/gu, '$1')

const limitText = (finding: Finding, units: Units): string =>
  typeof finding.limit === 'number'
    ? namedLimit(finding, asSet(quantity(finding.limit, finding.unit, units)))
    : String(finding.limit)

/** A limit that is not the same for every way says for which it is, unless every way has all of them. */
const told = (limit: string, names: readonly string[], all: ReadonlyMap<string, ReadonlySet<string>>): string => {
  const owners = [...all.values()].map((each) => [...each].join())
  return new Set(owners).size > 1 ? en.know.limitOf(limit, names) : limit
}

/** Their limits say themselves when they hold, and hold for every way. */
const SAY_WHOSE = new Set(['engine-power'])

/** One row a source: every check that it gives a limit for, each with that limit, in the order in which they are made. */
const limits = (result: ResultDocument, subject: Subject, units: Units): readonly LimitRow[] => {
  const found = comparedWays(result, subject).flatMap(({ name, evaluation }) =>
    evaluation.findings
      .filter((finding) => finding.limit !== null)
      .map((finding) => ({ name, finding, limit: limitText(finding, units) })),
  )
  const groups = new Map<string, Map<string, Map<string, Set<string>>>>()
  for (const { name, finding, limit } of found) {
    const checks = groups.get(finding.source) ?? new Map<string, Map<string, Set<string>>>()
    groups.set(finding.source, checks)
    const shown = checks.get(finding.check) ?? new Map<string, Set<string>>()
    checks.set(finding.check, shown)
    shown.set(limit, (shown.get(limit) ?? new Set<string>()).add(name))
  }
  return [...groups].map(([source, checks]) => ({
    source: en.capital(typeset(source)),
    many: checks.size > MANY,
    limits: [...checks].map(([check, values]) => ({
      check: en.checks[check] ?? en.capital(check.replaceAll('-', ' ')),
      limit: en.list(
        [...values].map(([limit, names]) => (SAY_WHOSE.has(check) ? limit : told(limit, [...names], values))),
      ),
    })),
  }))
}

/** Effects that a customer would notice: half a per cent of speed, half a kelvin of oil. */
const NOTICED = 0.5
const MOST_READINGS = 5

const firmer = (result: ResultDocument, units: Units): KnowView['firmer'] => ({
  words: firmerWords,
  rows: result.readings
    .map(({ label, how, effectOnSpeedPercent: speed, effectOnOilK: oil }) => ({
      what: typeset(label),
      how: typeset(how),
      effect: firmerWords.effect([
        ...(speed !== null && speed >= NOTICED ? [firmerWords.speed(quantity(speed, '%', units))] : []),
        ...(oil >= NOTICED ? [firmerWords.oil(quantity(oil, 'K', units))] : []),
      ]),
    }))
    .filter(({ effect }) => effect !== '')
    .slice(0, MOST_READINGS),
})

const kept = (result: ResultDocument, subject: Subject, units: Units): readonly string[] => {
  const words = en.know
  const promised = subject.recommended ?? (subject.kind === 'decline' ? subject.offered : null)
  if (promised === null && subject.kind !== 'restore') return [words.keptNone]
  const range = promised?.range ?? null
  const low = range?.speedKmh.p10 ?? null
  const high = range?.steadyOilC.p90 ?? null
  const speed =
    low !== null && isFaster(result.baseline, subject.after) ? [words.keptSpeed(quantity(low, 'km/h', units))] : []
  const oil =
    high === null ? [] : [words.keptOil(quantity(high, '°C', units), quantity(result.sheet.site.ambientC, '°C', units))]
  const figures = [...speed, ...oil]
  return figures.length === 0 ? [words.keptOpen, words.keptNot] : [...figures, words.keptNot]
}

/** A course where the speed changes, a thermometer where a temperature is promised. */
const testSteps = (result: ResultDocument, subject: Subject, units: Units): readonly string[] => {
  const words = en.know
  const timed = isFaster(result.baseline, subject.after) ? (units === 'us' ? words.testStepsUs : words.testSteps) : []
  const promised = subject.recommended ?? (subject.kind === 'decline' ? subject.offered : null)
  const oil =
    (promised?.range?.steadyOilC.p90 ?? null) === null
      ? []
      : words.testStepsOil(quantity(result.sheet.site.ambientC, '°C', units))
  return timed.length + oil.length === 0 ? words.testStepsOther : [...timed, ...oil]
}

export const knowView = (result: ResultDocument, subject: Subject, units: Units): KnowView => {
  const words = en.know
  const { measuredSpeedKmh, predictedSpeedKmh, notes } = result.calibration
  const run =
    measuredSpeedKmh === null || predictedSpeedKmh === null
      ? words.uncalibrated
      : (readingsDisagree(result) ? words.disagreeing : words.calibrated)(
          quantity(measuredSpeedKmh, 'km/h', units),
          quantity(predictedSpeedKmh, 'km/h', units),
        )
  const held = limits(result, subject, units)
  const keeping = kept(result, subject, units)
  const next = firmer(result, units)
  return {
    words,
    tables: tables(result, units),
    calibration: [run, ...notes.map(typeset)],
    firmer: next,
    hasFirmer: next.rows.length > 0,
    limitsNote: limitsNote(result, subject),
    limits: held,
    hasLimits: held.length > 0,
    testSteps: testSteps(result, subject, units),
    kept: keeping,
    promised: keeping[0] !== words.keptNone,
    cautions: fullCautions(result, subject, units),
  }
}
