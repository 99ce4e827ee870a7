/** What carries the answer and was not read, what has no price, what a stopwatch cannot show. */
import type { Cost, OptionResult, ResultDocument } from '../../evaluation.ts'
import { count, quantity, type Units } from '../format.ts'
import { componentName, pathName } from '../names.ts'
import { en } from '../wording.ts'
import { shop } from '../wording-shop.ts'

export interface WarningsView {
  readonly words: typeof shop.warnings
  readonly list: readonly string[]
}

const words = shop.warnings

const unpriced = (name: string, cost: Cost): readonly string[] =>
  cost.unpriced.length === 0 ? [] : [words.unpriced(name, en.list(cost.unpriced))]

const ofOption = (option: OptionResult): readonly string[] => {
  const name = en.quoted(option.name)
  const named = (list: OptionResult['consequences']) =>
    en.list([...new Set(list.map(({ component }) => componentName(component)))])
  const orders = option.consequences.filter(({ available, specialOrder }) => !available && specialOrder)
  const missing = option.consequences.filter(({ available, specialOrder }) => !available && !specialOrder)
  return [
    ...(option.sameAs === null ? [] : [words.sameAs(name, en.quoted(option.sameAs))]),
    ...unpriced(name, option.cost),
    ...(orders.length === 0 ? [] : [words.toOrder(name, named(orders))]),
    ...(missing.length === 0 ? [] : [words.missing(name, named(missing))]),
    ...(option.answer.answer !== 'conditions'
      ? []
      : [words.conditions(name, option.answer.conditions.map(en.sentence).join(' '))]),
  ]
}

/** Readings worth naming here: the first ones, where they move a figure that is printed. */
const MOST_READINGS = 3

const hanging = ({ readings }: ResultDocument, units: Units): readonly string[] =>
  readings.slice(0, MOST_READINGS).flatMap(({ label, effectOnSpeedPercent, effectOnOilK }) => {
    const effects = [
      ...(effectOnSpeedPercent === null || effectOnSpeedPercent < 0.5
        ? []
        : [words.speedBy(quantity(effectOnSpeedPercent, '%', units))]),
      ...(effectOnOilK < 0.5 ? [] : [words.oilBy(quantity(effectOnOilK, 'K', units))]),
    ]
    return effects.length === 0 ? [] : [words.hangs(label, en.list(effects))]
  })

export const warningsView = (result: ResultDocument, units: Units): WarningsView => {
  const { restsOn, assumptions, calibration, options, restoration } = result
  const shaky = options.filter(({ range }) => range?.gainWithinError === true).map(({ name }) => en.quoted(name))
  const list = [
    ...(restsOn.length === 0 ? [] : [words.provisional(en.list(restsOn.map(pathName)))]),
    ...hanging(result, units),
    ...(calibration.measuredSpeedKmh === null ? [words.noRun] : []),
    ...(shaky.length === 0 ? [] : [words.withinError(en.list(shaky))]),
    ...(restoration === null ? [] : unpriced(shop.money.restore, restoration.cost)),
    ...options.flatMap(ofOption),
    ...(assumptions.length === 0 ? [] : [words.assumed(count(assumptions.length))]),
  ]
  return { words, list: list.length === 0 ? [words.none] : list }
}
