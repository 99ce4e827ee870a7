/** Every entry of the survey, in the order of the files: the one table that sheet, files and hints to measure come from. */
import { CIRCUIT } from './circuit-entries.ts'
import type { SurveyEntry, SurveyGroup } from './entry.ts'
import { FITTED, PLATES } from './machine-entries.ts'
import { SITE } from './site-entries.ts'
import { TRAVEL } from './travel-entries.ts'

export const SURVEY: readonly SurveyGroup[] = [...PLATES, ...CIRCUIT, ...TRAVEL, FITTED, ...SITE]

const fits = (pattern: string, path: string): boolean => {
  const [steps, own] = [pattern.split('.'), path.split('.')]
  return steps.length === own.length && steps.every((step, i) => step === '*' || step === own[i])
}

/** Entry of a path in a file; null where none asks for it. */
export const entryFor = (path: string, file: SurveyGroup['file']): SurveyEntry | null =>
  SURVEY.filter((group) => group.file === file)
    .flatMap(({ entries }) => entries)
    .find((entry) => fits(entry.path, path)) ?? null
