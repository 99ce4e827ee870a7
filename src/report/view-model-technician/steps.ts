/** The order of work as numbered steps: dead, taken off and fitted, filled, started, set, looked over. */
import type { Fault, ResultDocument } from '../../evaluation.ts'
import type { WorkOrder } from '../../work-order.ts'
import { count, quantity, retold, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'
import { kindWords } from '../wording-machine-kind.ts'
import { type Steps, technician } from '../wording-technician.ts'

export interface StepView {
  readonly heading: string
  readonly note: string
  readonly steps: readonly { readonly number: string; readonly text: string }[]
}

/** Handled cool, set at this temperature [°C]. Common practice, no source. */
const COOL = 50

/** Jobs in the order of the hand; what is not named comes before hoses. */
const TURN: readonly string[] = [
  'clean reservoir',
  'change oil',
  'fit second pump',
  'replace pump',
  'replace coupling',
  'replace relief',
  'set relief',
  'replace valve',
  'replace swivel',
  'replace motor',
  'replace sprocket',
  'fit filter',
  'fit cooler',
  'fit shift line',
  'replace hose',
]

const turnOf = (job: string) => {
  const turn = TURN.indexOf(job)
  return turn === -1 ? TURN.length - 1.5 : turn
}

const jobSteps = (order: WorkOrder): readonly Steps[] => {
  const words = technician.work
  const jobs = order.jobs.filter(({ job }) => job !== 'test and record')
  return jobs
    .toSorted((one, other) => turnOf(one.job) - turnOf(other.job))
    .map(({ job, quantity: number, components }) => {
      const where = en.list([...new Set(components.map(componentName))])
      const heading = number > 1 ? words.times(job, count(number)) : job
      return { heading: words.job(heading, where), note: '', steps: words.jobs[job] ?? [words.unknownJob] }
    })
}

/** @param opened a circuit was opened or set; else the reliefs are read and left alone */
const reliefSteps = (order: WorkOrder, opened: boolean, units: Units): Steps => {
  const words = technician.relief
  const { heading, note } = words
  const bar = (value: number) => quantity(value, 'bar', units)
  const circuits = order.reliefs.map(({ circuit, settingBar, wasBar }) => {
    const differs = wasBar !== null && Math.abs(wasBar - settingBar) > 0.005 * settingBar
    const name = componentName(`circuits.${circuit}.relief`)
    return words.circuit(name, bar(settingBar), differs ? bar(wasBar) : '')
  })
  const at = words.steps(quantity(COOL, '°C', units), quantity(order.ratedEngineRpm, 'rpm', units))
  return opened
    ? { heading, note, steps: [...at, ...circuits, words.close] }
    : { heading, note, steps: [...at.slice(0, 1), ...circuits, words.readOnly] }
}

/** Numbers run through all groups, so that a step can be called by its number; lengths in words take the reader's units. */
export const numbered = (groups: readonly Steps[], units: Units): readonly StepView[] => {
  let number = 0
  return groups.map(({ heading, note, steps }) => ({
    heading,
    note,
    steps: steps.map((text) => {
      number += 1
      return { number: String(number), text: retold(text, units) }
    }),
  }))
}

export const deadSteps = ({ sheet }: ResultDocument, units: Units): Steps => {
  const { heading, note, steps } = technician.dead
  return { heading, note, steps: steps(quantity(COOL, '°C', units), kindWords(sheet.machine.type)) }
}

/** Fault of the engine that the order puts right; null where it has none, or where the order is an option. */
export const engineFault = ({ recommendation }: ResultDocument, { option }: WorkOrder): Fault | null =>
  option === null ? (recommendation.faults.find(({ component }) => component.split('.')[0] === 'engine') ?? null) : null

/** The engine's own work: first what is looked at while it stands, then what is read while it runs. */
const engineSteps = (fault: Fault, order: WorkOrder, units: Units): { off: Steps; running: Steps } => {
  const { off, running } = technician.engine
  return {
    off: { ...off, note: off.note(en.sentence(fault.text)) },
    running: { ...running, steps: running.steps(quantity(order.ratedEngineRpm, 'rpm', units)) },
  }
}

/** Whether oil comes out or a valve is set: else nothing has to be filled, primed or tried for leaks. */
const isOpened = ({ pulls, jobs }: WorkOrder): boolean =>
  jobs.some(({ job }) => job !== 'test and record') || pulls.some(({ component }) => component !== 'engine')

const openedSteps = (result: ResultDocument, order: WorkOrder, units: Units): readonly Steps[] => {
  const { prime, start } = technician
  const kind = kindWords(result.sheet.machine.type)
  const litres = order.oil.fillL === 0 ? '' : quantity(order.oil.fillL, 'L', units)
  const running = technician.running[result.diagram.travel.running]
  return [
    { heading: prime.heading, note: prime.note, steps: prime.steps(order.oil.grade ?? en.notRead, litres) },
    { heading: start.heading, note: start.note(kind), steps: start.steps(kind, running) },
  ]
}

/** @returns first what makes the machine dead, then the rest in order */
export const stepsOf = (result: ResultDocument, order: WorkOrder, units: Units): readonly StepView[] => {
  const fault = engineFault(result, order)
  const engine = fault === null ? null : engineSteps(fault, order, units)
  const opened = isOpened(order)
  return numbered(
    [
      deadSteps(result, units),
      ...(engine === null ? [] : [engine.off]),
      ...jobSteps(order),
      ...(opened ? openedSteps(result, order, units) : []),
      ...(engine === null ? [] : [engine.running]),
      reliefSteps(order, opened, units),
      ...(opened ? [technician.leaks] : []),
    ],
    units,
  )
}
