/**
 * One machine evaluated: travel points, circuits, lines, drops, heat, and what the checks say of them. The same steps for
 * the machine as it stands, restored, as asked only, and with every consequence.
 */
import type { Work } from '../circuit/duty.ts'
import { modesOf } from '../circuit/duty.ts'
import { circuitFigures, dropsOf, linesOf, neutralState } from '../circuit/figures.ts'
import { type HeatAt, HeatTable, heatAt, settledOil, warmUp } from '../circuit/oil-heat.ts'
import { conditionsAt, type Plant, preparePlant } from '../circuit/plant.ts'
import { REFERENCE_OIL, solveTravel } from '../circuit/travel-figures.ts'
import type { Evaluation, Heat, ModeHeat } from '../evaluation.ts'
import type { Machine, Site } from '../machine.ts'
import { NO_BALANCE_ABOVE, oilRisk } from '../tables/oil-risk.ts'
import { cstFromSquareMetresPerSecond, kwFromWatts } from '../units/shop-units.ts'
import type { Celsius } from '../units/si.ts'
import type { CheckFigures, Figures } from './check.ts'
import { checkFigures } from './check-figures.ts'
import { runChecks } from './run-checks.ts'

/** A machine with everything worked out that a check may ask for. */
export interface Evaluated {
  readonly machine: Machine
  readonly figures: Figures
  readonly more: CheckFigures
}

const modeHeats = (work: Work, at: HeatAt): ModeHeat[] =>
  modesOf(work.duty).map(([mode, share], i) => {
    const power = at.modes[i]
    const input = power?.input ?? 0
    const useful = power?.useful ?? 0
    return {
      mode,
      share,
      inputKw: kwFromWatts(input),
      usefulKw: kwFromWatts(useful),
      heatKw: kwFromWatts(input - useful),
    }
  })

const heatFigures = (plant: Plant, work: Work, table: HeatTable, steady: Celsius | null): Heat => {
  const settled = heatAt(plant, work, steady ?? NO_BALANCE_ABOVE)
  const byMode = modeHeats(work, settled)
  const average = (pick: (mode: ModeHeat) => number) => byMode.reduce((sum, mode) => sum + mode.share * pick(mode), 0)
  const viscosity = steady === null ? null : cstFromSquareMetresPerSecond(conditionsAt(plant, steady).nu)
  const { curve, minutesTo } = warmUp(plant.machine, plant.site.ambient, table)
  return {
    averageInputKw: average((m) => m.inputKw),
    averageUsefulKw: average((m) => m.usefulKw),
    averageHeatKw: average((m) => m.heatKw),
    steadyOilC: steady,
    steadyViscosityCst: viscosity,
    minutesTo: { '70': minutesTo(70), '82': minutesTo(82) },
    risk: oilRisk(steady, viscosity),
    curve,
    byMode,
  }
}

/** Works out a machine at a site under a duty. */
export const workOut = (machine: Machine, site: Site, work: Work): Evaluated => {
  const plant = preparePlant(machine, site)
  const warm = conditionsAt(plant, REFERENCE_OIL)
  const table = new HeatTable(plant, work, site.ambient)
  const steady = settledOil(plant, work, table)
  const travel = solveTravel(plant, warm, steady)
  const neutral = neutralState(plant, warm)
  const figures: Figures = {
    oilC: REFERENCE_OIL,
    travel: travel.points,
    circuits: circuitFigures(plant, travel.level.engine, neutral, warm),
    lines: linesOf(plant, travel.level, warm),
    drops: dropsOf(plant, travel.level, warm),
    heat: heatFigures(plant, work, table, steady),
  }
  return { machine, figures, more: checkFigures(plant, work, travel, neutral, warm) }
}

/**
 * Adds the findings.
 * @param before the machine that an option starts from; null for that machine itself
 */
export const judge = (evaluated: Evaluated, before: Evaluated | null, site: Site, work: Work): Evaluation => ({
  ...evaluated.figures,
  findings: runChecks({ ...evaluated, before, site, duty: work.duty, attachment: work.attachment }),
})
