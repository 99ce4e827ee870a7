/** Sources of limits as the customer reads them: what is published or stated stays, what is not is the shop's own limit. */
import type { Evaluation, ResultDocument } from '../../evaluation.ts'
import { en } from '../wording.ts'

const UNPUBLISHED = /from memory|no source|common practice/i

/**
 * A source without what nobody has published. The shop's and the technician's copies keep the whole of it.
 * @param source "the stated share; where nothing is stated 85 % (from memory)"
 * @returns "the stated share; otherwise our own working limit"
 */
export const publishedSource = (source: string): string => {
  const [first = '', ...others] = source.split('; ')
  if (UNPUBLISHED.test(first)) return en.know.ownLimit
  const kept = [first, ...others.filter((part) => !UNPUBLISHED.test(part))].join('; ')
  return kept === source ? source : en.know.orOwnLimit(kept)
}

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
