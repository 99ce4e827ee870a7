/** The overview of a batch as one page of HTML that stands alone. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Handlebars from 'handlebars'
import type { SummaryView } from '../report/summary-view.ts'
import { TEMPLATES, withFonts } from './render-html.ts'
import { wholeRanges } from './whole-ranges.ts'

/** Renders an overview with the template as it stands now. */
export const renderSummary = (view: SummaryView): string => {
  const template = Handlebars.create().compile(readFileSync(join(TEMPLATES, 'summary.hbs'), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
  const styles = ['customer.css', join('summary', 'summary.css')]
    .map((path) => readFileSync(join(TEMPLATES, path), 'utf8'))
    .join('\n')
  return withFonts()((fontFaces) => wholeRanges(template({ view, styles, fontFaces })))
}
