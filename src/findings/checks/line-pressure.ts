/**
 * Relief setting with its override against the weakest of hose and ends, for the lines that it reaches: pressure lines,
 * work lines of the circuits that drive, auxiliary lines. Suction and return lines are not exposed to it. A line of which
 * nothing is rated is not judged. Ends that came with the machine are of unknown age and take the older rating.
 */
import type { Line, Machine } from '../../machine.ts'
import { fittingRating } from '../../tables/fitting-ratings.ts'
import { barFromPascals } from '../../units/shop-units.ts'
import type { Check, CheckInput } from '../check.ts'
import { circuitsOf, drivingPressureBar } from '../circuits.ts'
import { atMost } from '../judging.ts'

interface Rating {
  readonly bar: number
  readonly source: string
}

const linesOf = (machine: Machine): readonly Line[] => [
  ...machine.travel.lines,
  ...machine.circuits.flatMap(({ lines, auxiliary }) =>
    [lines.pressure, auxiliary?.out ?? null, auxiliary?.back ?? null].filter((line) => line !== null),
  ),
]

/** Bought, from the parts list or to order: it brings new ends. */
const isNew = (line: Line, before: Machine | undefined): boolean => {
  if (line.part !== null) return true
  const there = before && linesOf(before).find(({ id }) => id === line.id)
  return there !== undefined && (there.bore !== line.bore || there.kind !== line.kind)
}

const weakest = (line: Line, fresh: boolean): Rating | null => {
  const ratings: Rating[] = (line.ends ?? []).flatMap((end) => {
    const row = fittingRating(end)
    return row ? [{ bar: fresh ? row.bar : row.olderBar, source: `end ${end.text}: ${row.source}` }] : []
  })
  if (line.maxPressure !== null)
    ratings.push({ bar: barFromPascals(line.maxPressure), source: 'hose: as stated, else by its kind and size' })
  return ratings.toSorted((a, b) => a.bar - b.bar)[0] ?? null
}

const exposed = (input: CheckInput): readonly { readonly line: Line; readonly bar: number }[] => {
  const driving = drivingPressureBar(input)
  return [
    ...circuitsOf(input).flatMap(({ circuit: { lines, auxiliary }, more }) =>
      [lines.pressure, auxiliary?.out ?? null, auxiliary?.back ?? null]
        .filter((line) => line !== null)
        .map((line) => ({ line, bar: more.workingPressureBar })),
    ),
    ...(driving === null ? [] : input.machine.travel.lines.map((line) => ({ line, bar: driving }))),
  ]
}

export const check: Check = {
  id: 'line-pressure',
  wording: {
    /** Heading of a line's row while hose and ends are rated for the pressure. */
    within: 'This line is rated for the pressure',
    /** Heading where hose or an end is not. */
    over: 'This line is not rated for the pressure',
    /** Below the heading. */
    why: 'A hose or an end above its rating can burst; oil under pressure pierces skin and hot oil burns.',
  },
  judge: (input) =>
    exposed(input).flatMap(({ line, bar }) => {
      const rating = weakest(line, isNew(line, input.before?.machine))
      if (rating === null) return []
      return [
        atMost({ component: line.id, value: bar, limit: rating.bar, unit: 'bar', source: rating.source }, 'change'),
      ]
    }),
}
