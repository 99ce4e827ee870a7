/** The words of the overview of a batch. */
import type { RecommendationKind } from '../evaluation.ts'

const ANSWERS: { readonly [kind in RecommendationKind]: string } = {
  restore: 'put it right first',
  protect: 'protect the oil',
  upgrade: 'do it',
  'upgrade-on-conditions': 'do it, on conditions',
  decline: 'decline',
  'measure-first': 'measure first',
}

export const summary = {
  title: 'Every machine at a glance',
  answers: ANSWERS,
  answerWith: (answer: string, option: string) => `${answer}: ${option}`,
  provisional: 'provisional: it rests on figures that nobody has measured',
  lead: (all: number, answered: number) =>
    all === answered
      ? `${all} machines or questions, each with a report of its own.`
      : `${all} machines or questions; ${answered} could be answered.`,
  about:
    '“Now” is the machine as it stands, “then” with what is recommended or offered; the speed is that on the level, the oil where it settles in steady work.',
  counted: (count: number, answer: string) => `${count} × ${answer}`,
  columns: {
    machine: 'Machine and question',
    answer: 'Answer',
    speedNow: 'Speed now',
    speedThen: 'Speed then',
    oilNow: 'Oil now',
    oilThen: 'Oil then',
    price: 'Price, tax included',
    obstacles: 'What stands in the way',
  },
  now: 'now',
  afterwards: 'then',
  noPrice: 'nothing to pay',
  nothing: 'nothing',
  wrongInput: 'The files have mistakes; they are named on the terminal.',
  failed: 'The report could not be made.',
  footer: 'Overview',
  csv: {
    scenario: 'scenario file',
    unit: 'unit',
    title: 'question',
    customer: 'customer',
    machine: 'machine',
    answer: 'answer',
    option: 'option',
    provisional: 'provisional',
    speed: (when: string, unit: string) => `speed ${when} [${unit}]`,
    oil: (when: string, unit: string) => `settled oil ${when} [${unit}]`,
    price: (end: string) => `price ${end} [currency of the row]`,
    low: 'from',
    high: 'to',
    currency: 'currency',
    obstacles: 'what stands in the way',
    report: 'report',
    yes: 'yes',
    no: 'no',
    unsettled: 'does not settle',
    without: 'no answer',
  },
}
