/** Options that are one way under several names: told, so that nobody compares a thing with itself. */
import type { OptionResult } from '../evaluation.ts'
import type { Machine } from '../machine.ts'

export interface Way {
  /** The machine in the end, which holds what the lists of changes do not name. */
  readonly machine: Machine
  readonly result: Pick<OptionResult, 'name' | 'changes' | 'consequences' | 'cost'>
}

/** Everything but the names: the chain of a consequence begins with the option's. */
const markOf = ({ machine, result: { changes, consequences, cost } }: Way): string =>
  JSON.stringify([machine, changes, consequences.map(({ chain: _, ...rest }) => rest), cost])

/**
 * For each option the name of the first one before it that makes the same changes, with the same parts in the end for the
 * same price; null where there is none.
 */
export const sameAsEarlier = (ways: readonly Way[]): readonly (string | null)[] => {
  const first = new Map<string, string>()
  return ways.map((way) => {
    const mark = markOf(way)
    const name = first.get(mark)
    if (name === undefined) first.set(mark, way.result.name)
    return name ?? null
  })
}
