/** Sources of limits as the customer reads them: in the trade's words, without how the shop looks after its own tables. */
import type { Evaluation, ResultDocument } from '../../evaluation.ts'
import { en } from '../wording.ts'

/**
 * A source in the customer's words. The shop's and the technician's copies keep its own.
 * @param source "stated for the pump; where nothing is stated 0.7 bar absolute (from memory)"
 * @returns the same with "as known in the trade" in place of "from memory"
 */
export const publishedSource = (source: string): string =>
  source
    .replaceAll(/common practice(?:, no source)?/giu, en.know.practice)
    .replaceAll(/\bfrom memory\b/giu, en.know.generallyKnown)

const evaluation = (of: Evaluation): Evaluation => ({
  ...of,
  findings: of.findings.map((finding) => ({ ...finding, source: publishedSource(finding.source) })),
})

/** The result document for the customer's copy. */
export const publishedResult = (result: ResultDocument): ResultDocument => ({
  ...result,
  baseline: evaluation(result.baseline),
  restored: result.restored === null ? null : evaluation(result.restored),
  options: result.options.map((option) => ({
    ...option,
    evaluation: evaluation(option.evaluation),
    asAskedOnly: evaluation(option.asAskedOnly),
  })),
  acceptance:
    result.acceptance === null
      ? null
      : {
          ...result.acceptance,
          rows: result.acceptance.rows.map((row) => ({ ...row, source: publishedSource(row.source) })),
        },
})
