/** The answer as a person would say it: one sentence for each kind of recommendation, and what belongs right under it. */

import type { OptionResult, ReasonCode, ResultDocument } from '../../evaluation.ts'
import { minutes, quantity, type Units } from '../format.ts'
import { givesSaid, goalText } from '../search-texts.ts'
import { en, type FaultPlace } from '../wording.ts'
import { foundSentences } from './found-sentences.ts'
import { findingOf, oilAfterDay, readingsDisagree, type Subject } from './subject.ts'
import { toolFlow } from './tool-flow.ts'

export interface Sentences {
  readonly headline: string
  readonly lead: readonly string[]
}

const faultPlace = (component: string): FaultPlace => {
  if (component.endsWith('.pump')) return 'pump'
  if (component.endsWith('.relief')) return 'relief'
  if (component.includes('suction') || component.includes('strainer')) return 'suction'
  if (component.startsWith('engine')) return 'engine'
  return component.startsWith('travel') ? 'drive' : 'other'
}

const speed = (option: OptionResult, units: Units) => {
  const { level } = option.evaluation.travel
  return level.stalled ? en.stalled : quantity(level.speedKmh, 'km/h', units)
}

const nowSpeed = ({ baseline }: ResultDocument, units: Units) =>
  baseline.travel.level.stalled ? en.stalled : quantity(baseline.travel.level.speedKmh, 'km/h', units)

const oil = (celsius: number | null, units: Units) =>
  celsius === null ? en.answer.neverSettles : quantity(celsius, '°C', units)

/** Its parts stay on one line. */
const machineName = ({ sheet }: ResultDocument) => sheet.machine.name.replaceAll(' ', '\u00a0')

const wantedSpeed = (result: ResultDocument, units: Units) =>
  result.sheet.wants.speedKmh === null ? '' : quantity(result.sheet.wants.speedKmh, 'km/h', units)

/** By more than 2 %, and so that it shows: nobody is promised 1.9 km/h instead of 1.9 km/h. */
const changesSpeed = (result: ResultDocument, option: OptionResult, units: Units) =>
  Math.abs(option.evaluation.travel.level.speedKmh - result.baseline.travel.level.speedKmh) >
    0.02 * result.baseline.travel.level.speedKmh && speed(option, units) !== nowSpeed(result, units)

/** At least two degrees, or settled at all where nothing settled. */
const coolsDown = (result: ResultDocument, option: OptionResult) => {
  const [before, after] = [result.baseline.heat.steadyOilC, option.evaluation.heat.steadyOilC]
  return after !== null && (before === null || after <= before - 2)
}

/** What reaches the attachment and what it asks for, as text; null where the scenario has no wish of that kind. */
const attachment = (result: ResultDocument, option: OptionResult, units: Units) => {
  const flow = toolFlow(result, option.evaluation)
  if (result.sheet.wants.attachmentFlowLpm === null || flow === null) return null
  return {
    gets: quantity(flow, 'L/min', units),
    wants: quantity(result.sheet.wants.attachmentFlowLpm, 'L/min', units),
  }
}

const because = (code: ReasonCode, option: OptionResult, units: Units): string => {
  const words = en.answer.because
  if (code === 'engine-power') {
    const finding = findingOf(option.evaluation, code) ?? findingOf(option.asAskedOnly, code)
    const numbers =
      typeof finding?.value === 'number' && typeof finding.limit === 'number' && finding.value > finding.limit
    return numbers
      ? words[code](quantity(finding.value as number, 'kW', units), quantity(finding.limit as number, 'kW', units))
      : words[code]('', '')
  }
  if (code === 'within-error') return words[code](option.evaluation.travel.level.stalled)
  return code === 'oil-too-hot'
    ? words[code](option.evaluation.heat.steadyOilC === null ? '' : oil(option.evaluation.heat.steadyOilC, units))
    : words[code]()
}

const offer = (result: ResultDocument, option: OptionResult, units: Units): string => {
  if (changesSpeed(result, option, units))
    return en.answer.offerSpeed(option.name, speed(option, units), nowSpeed(result, units))
  return coolsDown(result, option)
    ? en.answer.offerCooler(
        option.name,
        oil(oilAfterDay(option.evaluation), units),
        oil(result.baseline.heat.steadyOilC, units),
      )
    : en.answer.offerOther(option.name)
}

/** What was looked for and not found, where nothing else was asked for. */
const searchedInVain = ({ options }: ResultDocument, units: Units): readonly string[] =>
  options.flatMap((option) =>
    option.found === null || option.changes.length > 0
      ? []
      : foundSentences({ option, found: option.found }, units).slice(0, 1),
  )

const declined = (result: ResultDocument, subject: Subject, units: Units): Sentences => {
  const { asked, offered } = subject
  const way = result.sheet.alternatives.find(({ name }) => name === result.recommendation.offerInstead)
  const alternative =
    way === undefined
      ? []
      : [en.answer.offerAlternative(way.name, way.minutesPerDay > 0 ? minutes(way.minutesPerDay) : '')]
  const help = offered === null ? alternative : [offer(result, offered, units)]
  if (asked === null)
    return {
      headline: en.answer.declineAll(machineName(result), result.sheet.wants.speedKmh !== null),
      lead: [...searchedInVain(result, units), ...help],
    }
  const first = asked.answer.reasons[0]
  const headline =
    first === undefined
      ? en.answer.declineAll(machineName(result), result.sheet.wants.speedKmh !== null)
      : en.answer.decline(asked.name, because(first.code, asked, units))
  const tool = attachment(result, asked, units)
  const wanted = wantedSpeed(result, units)
  const gives =
    tool !== null
      ? en.answer.declineAttachment(tool.gets, tool.wants)
      : asked.evaluation.travel.level.stalled
        ? en.answer.declineStops(wanted)
        : en.answer.declineGives(speed(asked, units), nowSpeed(result, units), wanted)
  return { headline, lead: [gives, ...help] }
}

const restored = (result: ResultDocument, units: Units): Sentences => {
  const after = result.restored
  const faults = [...new Set(result.recommendation.faults.map((fault) => faultPlace(fault.component)))]
  const faster = after !== null && after.travel.level.speedKmh > 1.02 * result.baseline.travel.level.speedKmh
  const then = faster ? quantity(after.travel.level.speedKmh, 'km/h', units) : ''
  return {
    headline: en.answer.restore(machineName(result), faults, nowSpeed(result, units), then),
    lead: [result.sheet.wants.speedKmh === null ? en.answer.restoreFast(machineName(result)) : en.answer.restoreLead],
  }
}

/** Headline and lead for what is recommended. */
export const sentences = (result: ResultDocument, subject: Subject, units: Units): Sentences => {
  const machine = machineName(result)
  const { kind, recommended } = subject
  if (kind === 'measure-first') {
    return {
      headline: readingsDisagree(result) ? en.answer.measureDisagree(machine) : en.answer.measureMissing(machine),
      lead: [],
    }
  }
  if (kind === 'restore') return restored(result, units)
  if (kind === 'decline' || recommended === null) return declined(result, subject, units)
  const conditional = kind === 'upgrade-on-conditions'
  const lead = conditional ? [en.answer.conditionsLead] : []
  const { found } = recommended
  if (found !== null && !found.meets) {
    const gives = givesSaid(found.gives, found.goal, units)
    return { headline: en.answer.nearest(goalText(found.goal, units), recommended.name, gives), lead }
  }
  if (kind === 'protect') {
    const speedWanted = result.sheet.wants.speedKmh !== null
    const [before, after] = [
      oil(result.baseline.heat.steadyOilC, units),
      oil(oilAfterDay(recommended.evaluation), units),
    ]
    return {
      headline: coolsDown(result, recommended)
        ? en.answer.protectCooler(machine, recommended.name, before, after, speedWanted)
        : en.answer.protectOther(machine, recommended.name, speedWanted),
      lead,
    }
  }
  const tool = attachment(result, recommended, units)
  if (tool !== null)
    return { headline: en.answer.attachment(machine, recommended.name, tool.gets, tool.wants, conditional), lead }
  if (!changesSpeed(result, recommended, units))
    return { headline: en.answer.same(machine, recommended.name, conditional), lead }
  const sentence = conditional ? en.answer.upgradeOnConditions : en.answer.upgrade
  return { headline: sentence(machine, recommended.name, nowSpeed(result, units), speed(recommended, units)), lead }
}
