/** The work order of an option or of the restoration, put together from what it uses and the machine that comes of it. */
import type { JobUse, PartUse } from '../consequences/uses.ts'
import { bookedJobs } from '../costing/contained-jobs.ts'
import { fillOil } from '../costing/fill-oil.ts'
import { oilLost } from '../costing/oil-lost.ts'
import type { Consequence, Cost } from '../evaluation.ts'
import type { Machine } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { barFromPascals, litresFromCubicMetres, rpmFromRevsPerSecond } from '../units/shop-units.ts'
import type { OrderedJob, ReliefSetting, WorkOrder } from '../work-order.ts'
import { pullsOf } from './pulls.ts'

export interface WorkOrderInput {
  /** Name of the option; null: the restoration. */
  readonly option: string | null
  readonly uses: readonly PartUse[]
  readonly jobs: readonly JobUse[]
  readonly consequences: readonly Consequence[]
  /** The machine that the work starts from, with its reliefs as they were read. */
  readonly before: Machine
  readonly after: Machine
  readonly cost: Cost
  readonly shop: Shop
}

const reliefs = (before: Machine, after: Machine): readonly ReliefSetting[] =>
  after.circuits.map(({ name, relief }) => {
    const was = before.circuits.find((circuit) => circuit.name === name)?.relief.setting ?? null
    return {
      circuit: name,
      settingBar: barFromPascals(relief.setting),
      wasBar: was === null ? null : barFromPascals(was),
    }
  })

/** Booked jobs, each with the components that it is for. */
const ordered = (jobs: readonly JobUse[]): readonly OrderedJob[] =>
  bookedJobs(jobs).map(({ job, quantity }) => ({
    job,
    quantity,
    components: [...new Set(jobs.filter((one) => one.job === job).map(({ component }) => component))],
  }))

/** @returns parts with their joints, jobs, relief settings [bar] and oil [L] */
export const workOrderOf = (input: WorkOrderInput): WorkOrder => {
  const { option, uses, jobs, consequences, before, after, cost, shop } = input
  const reservoirL = litresFromCubicMetres(after.reservoir.volume)
  const fillL = Math.ceil(oilLost(jobs, reservoirL) - 1e-6)
  const oil = fillL > 0 ? [fillOil(fillL, after.oil, shop)] : []
  return {
    option,
    pulls: pullsOf({ uses: [...uses, ...oil], consequences, machine: after, shop, lines: cost.lines }),
    jobs: ordered(jobs),
    reliefs: reliefs(before, after),
    oil: { grade: after.oil.grade, fillL, reservoirL },
    ratedEngineRpm: rpmFromRevsPerSecond(after.engine.ratedSpeed),
  }
}
