/** ISO VG grades with the viscosity at 100 °C that stands in where no data sheet is at hand. */
import { squareMetresPerSecondFromCst } from '../units/shop-units.ts'
import type { SquareMetresPerSecond } from '../units/si.ts'

export interface OilGrade {
  readonly grade: number
  /** Middle of the grade at 40 °C [cSt]. */
  readonly at40: number
  /** Typical at 100 °C [cSt]. */
  readonly at100: number
  readonly source: string
}

const source = 'ISO 3448 (mid-point at 40 °C); at 100 °C a mineral oil of usual viscosity index, common practice'

export const oilGrades: readonly OilGrade[] = (
  [
    [22, 4.3],
    [32, 5.4],
    [46, 6.8],
    [68, 8.7],
    [100, 11.4],
  ] as const
).map(([grade, at100]) => ({ grade, at40: grade, at100, source }))

/** Grade number of a text such as "ISO VG 46" or "VG46"; null where there is none. */
export const gradeNumber = (text: string): number | null => {
  const match = /\bVG\s*(\d+)\b/iu.exec(text)
  return match === null ? null : Number(match[1])
}

/** The two viscosities of a grade; null where the table does not have it. */
export const viscositiesOf = (
  grade: number,
): { readonly at40: SquareMetresPerSecond; readonly at100: SquareMetresPerSecond } | null => {
  const row = oilGrades.find((known) => known.grade === grade)
  if (row === undefined) return null
  return { at40: squareMetresPerSecondFromCst(row.at40), at100: squareMetresPerSecondFromCst(row.at100) }
}
