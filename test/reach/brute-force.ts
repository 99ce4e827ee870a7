/** Every combination of the list, one after the other: what a search must find. */
import { type Assessed, assess, type Question } from '../../src/reach/assess.ts'
import { KEEP } from '../../src/reach/candidate.ts'

export const everyCandidate = (question: Question): readonly (readonly number[])[] =>
  question.places.reduce<readonly (readonly number[])[]>(
    (all, { options }) =>
      all.flatMap((candidate) => Array.from({ length: options.length + 1 }, (_, i) => [...candidate, i + KEEP])),
    [[]],
  )

export const assessAll = (question: Question): readonly Assessed[] =>
  everyCandidate(question).map((candidate) => assess(question, candidate))
