/** From a scenario to what every option of it starts from: the machine calibrated, and restored where it has faults. */
import { type Calibration, calibrate } from './calibration/calibrate.ts'
import { carry, restoringMatters } from './calibration/carried.ts'
import type { Work } from './circuit/duty.ts'
import type { Evaluation } from './evaluation.ts'
import { type Evaluated, judge, workOut } from './findings/evaluate-machine.ts'
import type { Loaded, PreparedMachine } from './loaded.ts'
import type { Start } from './option.ts'
import type { BuiltMachine } from './question.ts'

/** The machine as it stands, calibrated, and what options start from. */
export interface Begun {
  readonly plates: PreparedMachine
  readonly built: BuiltMachine
  readonly calibration: Calibration
  readonly baseline: Evaluated
  readonly baselineJudged: Evaluation
  readonly restored: Evaluated | null
  readonly start: Start
}

/** Calibrates the machine by its readings and works it out, as it stands and restored. */
export const begin = (loaded: Loaded): Begun => {
  const { site, readings, duty, attachment } = loaded.scenario
  const work: Work = { duty, attachment }
  const plates = loaded.prepare([])
  const built = plates.resolve()
  const calibration = calibrate(built.machine, site, work, readings)
  const { carried, faults } = calibration
  const baseline = workOut(carry(built.machine, carried, false), site, work)
  const baselineJudged = judge(baseline, null, site, work)
  const isRestored = restoringMatters(carried)
  const restored = isRestored ? workOut(carry(built.machine, carried, true), site, work) : null
  const before = restored ?? baseline
  const beforeJudged = restored === null ? baselineJudged : judge(restored, null, site, work)
  const start: Start = { before, beforeJudged, carried, isRestored, faults, work }
  return { plates, built, calibration, baseline, baselineJudged, restored, start }
}
