/** What putting the faults right takes and brings, priced like an option. */
import { gainOver } from './answer/gain.ts'
import { restorationNeeds } from './consequences/restoration.ts'
import { quote } from './costing/quote.ts'
import type { Evaluation, Fault, Restoration } from './evaluation.ts'
import type { Evaluated } from './findings/evaluate-machine.ts'
import type { Site } from './machine.ts'
import type { Shop } from './shop.ts'
import { litresFromCubicMetres } from './units/shop-units.ts'

/**
 * @param restored the machine with its faults put right; null where that changes nothing that is worked out
 * @returns null where there is no fault
 */
export const restore = (
  faults: readonly Fault[],
  baseline: Evaluated,
  asItStands: Evaluation,
  restored: Evaluation | null,
  site: Site,
  shop: Shop,
): Restoration | null => {
  if (faults.length === 0) return null
  const { uses, jobs, consequences } = restorationNeeds(faults, baseline.machine, shop)
  const cost = quote({
    uses,
    jobs,
    shop,
    reservoirLitres: litresFromCubicMetres(baseline.machine.reservoir.volume),
    oil: baseline.machine.oil,
  })
  return { consequences, cost, gain: gainOver(asItStands, restored ?? asItStands, site, cost) }
}
