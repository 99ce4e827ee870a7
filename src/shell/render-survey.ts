/** The survey sheet as one page of HTML that stands alone. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import Handlebars from 'handlebars'
import type { SurveyView } from '../report/survey-view.ts'
import { TEMPLATES, withFonts } from './render-html.ts'

/** Renders a survey with the templates as they stand now. */
export const renderSurvey = (view: SurveyView): string => {
  const handlebars = Handlebars.create()
  const folder = join(TEMPLATES, 'survey')
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.hbs')))
    handlebars.registerPartial(file.replace(/\.hbs$/u, ''), readFileSync(join(folder, file), 'utf8'))
  const template = handlebars.compile(readFileSync(join(TEMPLATES, 'survey.hbs'), 'utf8'), {
    strict: true,
    preventIndent: true,
  })
  const styles = [join(TEMPLATES, 'customer.css'), join(folder, 'survey.css')]
    .map((path) => readFileSync(path, 'utf8'))
    .join('\n')
  return withFonts()((fontFaces) => template({ view, styles, fontFaces }))
}
