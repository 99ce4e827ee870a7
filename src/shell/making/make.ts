/**
 * One question from its files to its copies: read, evaluated, rendered. What goes in and what comes out can be sent from one
 * thread to another.
 */
import { evaluate } from '../../evaluate.ts'
import type { ResultDocument } from '../../evaluation.ts'
import { type SummaryRow, summaryRow } from '../../report/summary-row.ts'
import { answerLine } from '../answer-line.ts'
import { openCopies, type Rendered } from '../copies.ts'
import type { CopyOptions } from '../copy-options.ts'
import { readOne } from '../load.ts'
import { showProblems } from '../show-problems.ts'

export interface Asked {
  readonly scenario: string
  /** Which unit of a fleet, counted from 0; null for a scenario that is none. */
  readonly unit: number | null
  readonly cwd: string
  readonly options: CopyOptions
  /** Without ranges a result is there at once; what is missing is then in no copy. */
  readonly ranges: boolean
  /** The copies, or the result document alone for whoever renders it himself. */
  readonly wants: 'copies' | 'result'
}

export interface Answered extends Rendered {
  /** The answer on one line. */
  readonly line: string
  readonly row: SummaryRow
  /** ISO date of the quote; null where it carries none. */
  readonly date: string | null
  readonly units: 'metric' | 'us' | 'both'
  /** null where the copies were wanted. */
  readonly result: ResultDocument | null
}

/** A question that was answered, or what is wrong with its files, as the terminal shows it. */
export type Made = Answered | { readonly problems: string }

/** Makes one question after the other with templates that are read once for each set of options. */
export const openMaking = (): ((asked: Asked) => Made) => {
  const opened = new Map<string, ReturnType<typeof openCopies>>()
  const copiesFor = (options: CopyOptions) => {
    const key = JSON.stringify(options)
    const known = opened.get(key) ?? openCopies(options)
    opened.set(key, known)
    return known
  }
  return ({ scenario, unit, cwd, options, ranges, wants }) => {
    const read = readOne(scenario, cwd, unit)
    if ('problems' in read) return { problems: showProblems(read.problems) }
    const { loaded } = read
    const result = evaluate(loaded, { ranges })
    return {
      line: answerLine(result),
      row: summaryRow(result),
      date: loaded.scenario.quote.date,
      units: options.units ?? loaded.shop.units,
      ...(wants === 'copies'
        ? { ...copiesFor(options)(loaded, result, scenario, cwd), result: null }
        : { copies: [], warnings: [], result }),
    }
  }
}
