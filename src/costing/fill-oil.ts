/** Which oil on the list goes in: the one that is most like the oil of the machine. */
import { cheaperFirst } from '../consequences/choose.ts'
import { oils } from '../consequences/stock.ts'
import type { PartUse } from '../consequences/uses.ts'
import type { Oil } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { gradeNumber, viscositiesOf } from '../tables/oil-grades.ts'
import { cstFromSquareMetresPerSecond } from '../units/shop-units.ts'

/** Half-width of an ISO viscosity grade (ISO 3448). */
const GRADE_BAND = 0.1
/** Two oils whose viscosities at 100 °C differ by more are not the same kind of oil. Common practice, no source. */
const SAME_AT_100 = 0.1

const apart = (one: number, other: number): number => Math.abs(one / other - 1)

/**
 * Oil to fill in: of the same grade, nearest at 100 °C, then the cheapest; unpriced where the list has none.
 * @param litres whole litres
 * @param oil what the machine holds after the change
 */
export const fillOil = (litres: number, oil: Oil, shop: Shop): PartUse => {
  const order = cheaperFirst(shop)
  const like = oils(shop).flatMap(({ part, figures }) => {
    const grade = figures.grade === null ? null : viscositiesOf(gradeNumber(figures.grade) ?? Number.NaN)
    const at40 = figures.viscosityAt40 ?? grade?.at40 ?? null
    const at100 = figures.viscosityAt100 ?? grade?.at100 ?? null
    if (at40 === null || apart(at40, oil.viscosityAt40) > GRADE_BAND + 1e-9) return []
    const far = at100 === null ? SAME_AT_100 : apart(at100, oil.viscosityAt100)
    return far > SAME_AT_100 + 1e-9 ? [] : [{ part, far: Number(far.toPrecision(6)) }]
  })
  const [chosen] = like.toSorted((one, other) => one.far - other.far || order(one.part, other.part))
  const grade = oil.grade ?? `${Number(cstFromSquareMetresPerSecond(oil.viscosityAt40).toPrecision(3))} cSt`
  return {
    component: 'fluid',
    kind: 'oil',
    part: chosen?.part.id ?? null,
    what: chosen?.part.name ?? `Hydraulic oil ${grade}, litre`,
    quantity: litres,
  }
}
