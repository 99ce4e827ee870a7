/**
 * Temperature where the oil settles over a day of this duty. Above the comfortable range it is watched; above what seals
 * stand, or where it settles nowhere, a cooler is asked for.
 */
import { hotOil, warmOil } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'oil-temperature',
  wording: {
    /** Heading of the cooler's row while the oil stays in its range. */
    within: 'The oil stays in its range over the day',
    /** Heading where it gets hot, or never stops getting hotter. */
    over: 'The oil gets too hot over the day',
    /** Below the heading. */
    why: 'Hot oil is thin oil: seals and hoses age fast, everything slows down, and tank and lines burn the skin.',
  },
  judge: ({ figures: { heat } }) => {
    const held = { component: 'cooler', unit: hotOil.unit }
    const hot = { ...held, limit: hotOil.value, source: hotOil.source }
    if (heat.steadyOilC === null)
      return [{ ...hot, value: null, severity: 'change', worseWhenHigher: true, measure: heat.averageHeatKw }]
    const judged = atMost({ ...hot, value: heat.steadyOilC }, 'change')
    if (judged.severity === 'change') return [judged]
    return [atMost({ ...held, value: heat.steadyOilC, limit: warmOil.value, source: warmOil.source }, 'watch')]
  },
}
