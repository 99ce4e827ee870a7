/**
 * Hydraulic oils by ISO viscosity grade. The number of the grade is the viscosity at 40 °C; the viscosity at 100 °C is
 * that of an ordinary mineral oil and stands in only where the data sheet's own figure is not written down.
 */
import { squareMetresPerSecondFromCst } from '../units/shop-units.ts'
import type { SquareMetresPerSecond } from '../units/si.ts'
import type { SourceKey } from './sources.ts'

export interface OilGrade {
  readonly grade: string
  readonly at40Cst: number
  /** From memory: viscosity index of about 100. */
  readonly at100Cst: number
  readonly source: SourceKey
}

export const oilGrades: readonly OilGrade[] = [
  { grade: 'ISO VG 22', at40Cst: 22, at100Cst: 4.3, source: 'iso-vg' },
  { grade: 'ISO VG 32', at40Cst: 32, at100Cst: 5.4, source: 'iso-vg' },
  { grade: 'ISO VG 46', at40Cst: 46, at100Cst: 6.8, source: 'iso-vg' },
  { grade: 'ISO VG 68', at40Cst: 68, at100Cst: 8.7, source: 'iso-vg' },
  { grade: 'ISO VG 100', at40Cst: 100, at100Cst: 11.4, source: 'iso-vg' },
]

/** Row of a grade as a shop writes it ("ISO VG 46", "VG 46", "HLP 46"): the trailing number decides. null: none such. */
export const oilGrade = (text: string): OilGrade | null => {
  const number = /(\d+)\s*$/u.exec(text)?.[1]
  return oilGrades.find((row) => String(row.at40Cst) === number) ?? null
}

/** The two viscosities [m2/s] of a grade. */
export const viscositiesOf = (
  row: OilGrade,
): { readonly at40: SquareMetresPerSecond; readonly at100: SquareMetresPerSecond } => ({
  at40: squareMetresPerSecondFromCst(row.at40Cst),
  at100: squareMetresPerSecondFromCst(row.at100Cst),
})
