/** The result document with the figures in its sentences told in the customer's units. */
import type { Answer, OptionResult, ResultDocument } from '../../evaluation.ts'
import { retold as converted, typeset, type Units } from '../format.ts'

const retold = (text: string, units: Units) => typeset(converted(text, units))

const answer = ({ answer: kind, reasons, conditions }: Answer, units: Units): Answer => ({
  answer: kind,
  reasons: reasons.map(({ code, text }) => ({ code, text: retold(text, units) })),
  conditions: conditions.map((text) => retold(text, units)),
})

const option = (one: OptionResult, units: Units): OptionResult => ({
  ...one,
  consequences: one.consequences.map((each) => ({ ...each, chain: each.chain.map((text) => retold(text, units)) })),
  answer: answer(one.answer, units),
})

/** Sentences come from earlier phases with metric figures; the figures themselves are converted where they are printed. */
export const retoldResult = (result: ResultDocument, units: Units): ResultDocument => ({
  ...result,
  calibration: { ...result.calibration, notes: result.calibration.notes.map((text) => retold(text, units)) },
  options: result.options.map((one) => option(one, units)),
  recommendation: {
    ...result.recommendation,
    reasons: result.recommendation.reasons.map(({ code, text }) => ({ code, text: retold(text, units) })),
    faults: result.recommendation.faults.map(({ component, text }) => ({ component, text: retold(text, units) })),
  },
})
