/** Viscosity of the oil where its temperature settles; worked out nowhere where it does not settle, and then watched. */
import { thinOil } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atLeast } from '../judging.ts'

export const check: Check = {
  id: 'oil-viscosity-hot',
  wording: {
    /** Heading of the oil's row while it stays thick enough. */
    within: 'The oil stays thick enough when hot',
    /** Heading where it gets thin. */
    over: 'The oil gets too thin when hot',
    /** Below the heading. */
    why: 'Thin oil neither carries the gears nor seals them: the pump wears and the machine slows as it warms.',
  },
  judge: ({ figures: { heat } }) => {
    const held = { component: 'fluid', limit: thinOil.value, unit: thinOil.unit, source: thinOil.source }
    return heat.steadyViscosityCst === null
      ? [{ ...held, value: null, severity: 'watch', worseWhenHigher: false }]
      : [atLeast({ ...held, value: heat.steadyViscosityCst }, 'watch')]
  },
}
