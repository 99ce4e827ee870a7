/**
 * Whether the bound of the oil's temperature holds to the last bit: on the governor line a drop is heat (oil-bound.ts), of an
 * engine that lugs nobody can say.
 *
 * Digging and the open relief are held at pressures that no line changes: where every circuit works then, a way takes what
 * the bound takes, lugging or not. In the other modes an engine that carries the narrowest ways without lugging carries any.
 * Colder oil is thicker and asks for more. So where the narrowest ways make no engine lug from the air's temperature on, all
 * is proved; where they do in cold oil, it is enough that the modes in which they do not give more heat than leaves there,
 * for then the oil settles at none of those temperatures, whatever the others give. Looked at in steps of STEP.
 */
import type { Work } from '../circuit/duty.ts'
import { modePower, modesOf } from '../circuit/duty.ts'
import { heatAt, heatOut } from '../circuit/oil-heat.ts'
import { conditionsAt, type Plant } from '../circuit/plant.ts'
import type { ModeName } from '../evaluation.ts'
import type { Celsius } from '../units/si.ts'

/** [K] */
const STEP = 4

/** No drop of a line changes what these take. */
const isHeld = ({ machine, driving }: Plant, mode: ModeName): boolean => {
  if (mode !== 'work' && mode !== 'relief') return false
  const named = machine.circuits.filter(({ works }) => works.includes('implements')).length
  return (named > 0 ? named : driving.length) === machine.circuits.length
}

const isGoverned = (plant: Plant, work: Work, mode: ModeName, oil: Celsius): boolean =>
  modePower(plant, work, mode, conditionsAt(plant, oil)).regime.startsWith('governed')

/**
 * @param narrowest machines of which one takes at least as much as any way does
 * @param bound the machine whose oil settles coolest
 * @param settled where it does
 */
export const isProved = (narrowest: readonly Plant[], bound: Plant, work: Work, settled: Celsius): boolean => {
  const modes = modesOf(work.duty).filter(([mode]) => !isHeld(bound, mode))
  for (let oil = bound.site.ambient; oil < settled + STEP; oil += STEP) {
    const lugging = new Set(
      modes.flatMap(([mode]) => (narrowest.some((plant) => !isGoverned(plant, work, mode, oil)) ? [mode] : [])),
    )
    if (lugging.size === 0) return true
    const at = conditionsAt(bound, oil)
    const sure = modesOf(work.duty).reduce((sum, [mode, share]) => {
      const { input, useful } = modePower(bound, work, mode, at)
      return lugging.has(mode) ? sum : sum + share * (input - useful)
    }, 0)
    if (sure <= heatOut(bound.machine, bound.site.ambient, oil, 1)) return false
  }
  return false
}

/** At this temperature the narrowest way gives no more heat than leaves, on the governor line: so does any other way. */
export const staysBelow = (narrowest: Plant, work: Work, oil: Celsius): boolean => {
  const { machine, site } = narrowest
  const { heat, coolerShare, modes } = heatAt(narrowest, work, oil)
  const governed = modesOf(work.duty).every(
    ([mode], i) => isHeld(narrowest, mode) || modes[i]?.regime.startsWith('governed') === true,
  )
  return governed && heat < heatOut(machine, site.ambient, oil, coolerShare)
}
