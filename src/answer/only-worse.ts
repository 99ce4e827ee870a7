/** Whether a change makes things worse and nothing better, by everything that is worked out of a machine. */
import type { CircuitFigures, Evaluation, Finding, Point, Severity } from '../evaluation.ts'
import { noticeable } from '../tables/limits.ts'

/** What is compared, in the order in which it is told; each with its words where it gets worse. */
const WORSE = {
  speed: 'it drives slower',
  pull: 'it pulls less',
  oil: 'the oil gets hotter',
  engine: 'the engine works harder',
  flow: 'a pump gives less oil',
  relief: 'a relief valve opens sooner',
  inlet: 'a pump gets its oil less freely',
  drop: 'more pressure is lost on the way',
  limit: 'it passes a limit that it keeps today',
} as const

type What = keyof typeof WORSE

interface Compared {
  readonly what: What
  readonly was: number
  readonly is: number
  readonly better: 'more' | 'less'
}

/** A change of less than 2 % is none. */
const noticeably = (more: number, less: number): boolean =>
  more - less > noticeable.value * Math.max(Math.abs(more), Math.abs(less))

const isBetter = ({ was, is, better }: Compared): boolean =>
  better === 'more' ? noticeably(is, was) : noticeably(was, is)

const isWorse = ({ was, is, better }: Compared): boolean =>
  better === 'more' ? noticeably(was, is) : noticeably(is, was)

/** Hotter than any oil that settles [degC]. */
const NEVER_SETTLES = 1e6

const RANK: { readonly [severity in Severity]: number } = { ok: 0, watch: 1, change: 2, stop: 3 }

const ofPoint = (was: Point, is: Point): readonly Compared[] => [
  { what: 'speed', was: was.speedKmh, is: is.speedKmh, better: 'more' },
  { what: 'pull', was: was.tractiveForceN, is: is.tractiveForceN, better: 'more' },
  { what: 'engine', was: was.engineLoad, is: is.engineLoad, better: 'less' },
]

const ofCircuit = (was: CircuitFigures, is: CircuitFigures): readonly Compared[] => [
  { what: 'flow', was: was.pumpFlowLpm, is: is.pumpFlowLpm, better: 'more' },
  { what: 'flow', was: was.theoreticalFlowLpm, is: is.theoreticalFlowLpm, better: 'more' },
  { what: 'relief', was: was.reliefSettingBar, is: is.reliefSettingBar, better: 'more' },
  { what: 'inlet', was: was.inletPressureBarAbs, is: is.inletPressureBarAbs, better: 'more' },
  { what: 'drop', was: was.neutralPressureBar, is: is.neutralPressureBar, better: 'less' },
]

/** How far past its limit; nothing where it is within, or where there is no figure. */
const past = ({ value, limit, severity }: Finding): number =>
  severity === 'ok' || typeof value !== 'number' || typeof limit !== 'number' ? 0 : Math.abs(value - limit)

const ofFindings = (was: readonly Finding[], is: readonly Finding[]): readonly Compared[] => {
  const ids = new Set([...was, ...is].filter(({ severity }) => severity !== 'ok').map(({ id }) => id))
  return [...ids].flatMap((id): readonly Compared[] => {
    const [before, after] = [was.find((one) => one.id === id), is.find((one) => one.id === id)]
    const rank = (finding: Finding | undefined) => (finding === undefined ? 0 : RANK[finding.severity])
    const severity: Compared = { what: 'limit', was: rank(before), is: rank(after), better: 'less' }
    const far = { was: before === undefined ? 0 : past(before), is: after === undefined ? 0 : past(after) }
    // What was past a limit already and goes further passes no new one: only that it comes nearer is counted.
    return noticeably(far.was, far.is) ? [severity, { what: 'limit', ...far, better: 'less' }] : [severity]
  })
}

type Named<T> = readonly (readonly [string, T])[]

/** Pairs by name; null where one has what the other has not: a new circuit or filter is not compared with nothing. */
const paired = <T>(was: Named<T>, is: Named<T>): readonly (readonly [T, T])[] | null => {
  const now = new Map(is)
  const pairs = was.flatMap(([name, before]) => {
    const after = now.get(name)
    return after === undefined ? [] : [[before, after] as const]
  })
  return pairs.length === was.length && now.size === was.length ? pairs : null
}

const pointsOf = ({ travel }: Evaluation): Named<Point> =>
  Object.entries(travel).flatMap(([name, point]: readonly [string, Point | null]) =>
    point === null ? [] : [[name, point] as const],
  )

const dropsOf = ({ lines, drops }: Evaluation): Named<number> =>
  [...lines, ...drops].map(({ id, dropBar }) => [id, dropBar] as const)

/**
 * What gets worse, in words, where something does and nothing gets better, each by more than the 2 % from which on a change is
 * one: travel, circuits, pressure drops, heat, and what is past its limits. Empty else, and where parts were added or taken
 * away, which no figure tells the use of.
 */
export const onlyWorse = (was: Evaluation, is: Evaluation): readonly string[] => {
  const points = paired(pointsOf(was), pointsOf(is))
  const circuits = paired(Object.entries(was.circuits), Object.entries(is.circuits))
  const drops = paired(dropsOf(was), dropsOf(is))
  if (points === null || circuits === null || drops === null) return []
  const compared: readonly Compared[] = [
    ...points.flatMap(([before, after]) => ofPoint(before, after)),
    ...circuits.flatMap(([before, after]) => ofCircuit(before, after)),
    ...drops.map(([before, after]): Compared => ({ what: 'drop', was: before, is: after, better: 'less' })),
    {
      what: 'oil',
      was: was.heat.steadyOilC ?? NEVER_SETTLES,
      is: is.heat.steadyOilC ?? NEVER_SETTLES,
      better: 'less',
    },
    { what: 'oil', was: was.heat.averageHeatKw, is: is.heat.averageHeatKw, better: 'less' },
    ...ofFindings(was.findings, is.findings),
  ]
  if (compared.some(isBetter)) return []
  const worse = new Set(compared.filter(isWorse).map(({ what }) => what))
  return Object.entries(WORSE).flatMap(([what, text]) => (worse.has(what as What) ? [text] : []))
}
