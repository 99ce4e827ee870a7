/** The coolest that the oil can settle: the air. */
import type { Ground } from './drive.ts'

export const oilLeast = ({ question }: Ground): number => question.loaded.scenario.site.ambient
