/** What putting the faults right takes and brings, priced like an option. */
import { gainOver } from './answer/gain.ts'
import { restorationNeeds } from './consequences/restoration.ts'
import { buildUpOf } from './costing/build-up.ts'
import { quote } from './costing/quote.ts'
import type { BuildUp, Evaluation, Fault, Restoration } from './evaluation.ts'
import type { Evaluated } from './findings/evaluate-machine.ts'
import type { Site } from './machine.ts'
import type { Shop } from './shop.ts'
import { litresFromCubicMetres } from './units/shop-units.ts'
import type { WorkOrder } from './work-order.ts'
import { workOrderOf } from './work-orders/work-order-of.ts'

export interface Restored {
  readonly restoration: Restoration
  readonly workOrder: WorkOrder
  readonly buildUp: BuildUp
}

/**
 * @param after the machine with its faults put right: the same one where that changes nothing that is worked out
 * @param restored what it does then; null where nothing changes
 * @returns null where there is no fault
 */
export const restore = (
  faults: readonly Fault[],
  baseline: Evaluated,
  asItStands: Evaluation,
  after: Evaluated,
  restored: Evaluation | null,
  site: Site,
  shop: Shop,
): Restored | null => {
  if (faults.length === 0) return null
  const { uses, jobs, consequences } = restorationNeeds(faults, baseline.machine, shop)
  const cost = quote({
    uses,
    jobs,
    shop,
    reservoirLitres: litresFromCubicMetres(baseline.machine.reservoir.volume),
    oil: baseline.machine.oil,
  })
  return {
    restoration: { consequences, cost, gain: gainOver(asItStands, restored ?? asItStands, site, cost) },
    workOrder: workOrderOf({
      option: null,
      uses,
      jobs,
      consequences,
      before: baseline.machine,
      after: after.machine,
      cost,
      shop,
    }),
    buildUp: buildUpOf(null, cost, shop),
  }
}
