/** What one source states in two ways: the reader could only pass one of them over, so that it asks which is meant. */
import { gradeNumber } from '../tables/oil-grades.ts'
import { cstFromSquareMetresPerSecond } from '../units/shop-units.ts'
import type { MachineSpec } from './machine-schema.ts'
import type { Flaw } from './problems.ts'
import type { Unclear } from './sound.ts'

const flaw = (path: Flaw['path'], message: string, expected: string, remedy: string | null = null): Flaw => ({
  code: 'one-of-two',
  path,
  message,
  expected,
  remedy,
})

const oilTwice = ({ fluid }: MachineSpec): Flaw[] => {
  const number = fluid.grade == null ? null : gradeNumber(fluid.grade)
  const at40 = fluid['viscosity-at-40C']
  if (number === null || at40 == null) return []
  // ISO 3448: the middle of a grade within 10 %.
  if (Math.abs(cstFromSquareMetresPerSecond(at40.si) / number - 1) <= 0.1 + 1e-9) return []
  return [
    flaw(
      ['fluid', 'viscosity-at-40C'],
      `"${fluid.grade}" and a viscosity of ${at40.text} at 40 °C do not agree`,
      `${Number((number * 0.9).toFixed(1))} to ${Number((number * 1.1).toFixed(1))} cSt at 40 °C, or another grade`,
      'a change may write "grade: null" beside its viscosities',
    ),
  ]
}

const coolingTwice = ({ reservoir }: MachineSpec): Flaw[] =>
  reservoir.setting == null || reservoir['heat-transfer'] == null
    ? []
    : [
        flaw(
          ['reservoir', 'setting'],
          '"setting" and "heat-transfer" both say how the reservoir gives off heat',
          'one of the two',
        ),
      ]

const wayTwice = ({ travel }: MachineSpec): Flaw[] => {
  const { sprocket } = travel
  const other = (['teeth', 'pitch', 'links-per-turn'] as const).find((key) => sprocket?.[key] != null)
  if (sprocket?.['pitch-diameter'] == null || other === undefined) return []
  return [
    {
      ...flaw(
        ['travel', 'sprocket', other],
        `"${other}" and "pitch-diameter" both say how far one turn of the sprocket goes`,
        'pitch-diameter, or teeth (or links-per-turn) and pitch',
      ),
      atKey: true,
    },
  ]
}

/** One thing stated in two ways that do not agree: one of them would be passed over without a word. */
export const twiceStated = (spec: MachineSpec, unclear: Unclear): Flaw[] => [
  ...(unclear('fluid') ? [] : oilTwice(spec)),
  ...(unclear('reservoir') ? [] : coolingTwice(spec)),
  ...(unclear('travel', 'sprocket') ? [] : wayTwice(spec)),
]
