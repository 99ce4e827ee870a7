/** Money as it is printed: with and without cents, as a range, and inside a sentence. */
import { mphFromKmh } from '../units/shop-units.ts'
import { decimal, NBSP, type Units, unitName } from './format.ts'
import { en } from './wording.ts'

const SYMBOLS: { readonly [currency: string]: string } = { USD: '$', EUR: '€', GBP: '£' }

const withCurrency = (number: string, currency: string) =>
  SYMBOLS[currency] === undefined ? currency + NBSP + number : SYMBOLS[currency] + number

/** Money to the cent: "$1,234.50", "CHF 1,234.50"; null is "no price yet". */
export const money = (amount: number | null, currency: string): string =>
  amount === null ? en.noPrice : withCurrency(decimal(amount, 2, 1000), currency)

const wholeMoney = (amount: number, currency: string) => withCurrency(decimal(amount, 0, 1000), currency)

/** Money without cents, for the pages where a cent would pretend. */
export const roundMoney = (amount: number | null, currency: string): string =>
  amount === null ? en.noPrice : wholeMoney(amount, currency)

/** "$1,900–$2,350", or "from $1,900" where something has no price yet. */
export const moneySpan = (low: number, high: number, currency: string, open: boolean): string =>
  open
    ? en.moneyFrom(wholeMoney(low, currency))
    : wholeMoney(low, currency) === wholeMoney(high, currency)
      ? wholeMoney(low, currency)
      : `${wholeMoney(low, currency)}–${wholeMoney(high, currency)}`

/** The same behind a preposition or a verb: "costs at least $1,900" where something has no price yet. */
export const moneySaid = (low: number, high: number, currency: string, open: boolean): string =>
  open ? en.moneyAtLeast(wholeMoney(low, currency)) : moneySpan(low, high, currency, false)

/** Money for each unit of speed that it buys: "$1,520 for 1 km/h" in the first of the customer's units. */
export const moneyPerSpeed = (perKmh: number, currency: string, units: Units): string =>
  en.forOne(wholeMoney(units === 'us' ? perKmh / mphFromKmh(1) : perKmh, currency), unitName('km/h', units))
