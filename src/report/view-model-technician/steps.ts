/** The order of work as numbered steps: dead, taken off and fitted, filled, started, set, looked over. */
import type { WorkOrder } from '../../work-order.ts'
import { count, quantity, retold, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'
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

const reliefSteps = (order: WorkOrder, units: Units): Steps => {
  const words = technician.relief
  const { heading, note } = words
  const bar = (value: number) => quantity(value, 'bar', units)
  const circuits = order.reliefs.map(({ circuit, settingBar, wasBar }) => {
    const differs = wasBar !== null && Math.abs(wasBar - settingBar) > 0.005 * settingBar
    const name = componentName(`circuits.${circuit}.relief`)
    return words.circuit(name, bar(settingBar), differs ? bar(wasBar) : '')
  })
  const at = words.steps(quantity(COOL, '°C', units), quantity(order.ratedEngineRpm, 'rpm', units))
  return { heading, note, steps: [...at, ...circuits, words.close] }
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

export const deadSteps = (units: Units): Steps => {
  const { heading, note, steps } = technician.dead
  return { heading, note, steps: steps(quantity(COOL, '°C', units)) }
}

/** @returns first what makes the machine dead, then the rest in order */
export const stepsOf = (order: WorkOrder, units: Units): readonly StepView[] => {
  const { prime, start, leaks } = technician
  const litres = order.oil.fillL === 0 ? '' : quantity(order.oil.fillL, 'L', units)
  return numbered(
    [
      deadSteps(units),
      ...jobSteps(order),
      { heading: prime.heading, note: prime.note, steps: prime.steps(order.oil.grade ?? en.notRead, litres) },
      start,
      reliefSteps(order, units),
      leaks,
    ],
    units,
  )
}
