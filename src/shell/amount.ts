/** An amount of money as an argument of the command: a number with two decimals at most, in the shop's currency. */
import { commaReadings } from '../units/quantity.ts'

export type AmountResult = { readonly amount: number } | { readonly refused: string }

const PLAIN = /^\d{1,12}(?:\.\d{1,2})?$/u

/** With two decimals, as money is written; whole where it was. */
const asMoney = (number: string): string => (number.includes('.') ? Number(number).toFixed(2) : String(Number(number)))

/** What a number may mean to the one reader and to the other; empty where it means one thing. */
const readings = (text: string): readonly string[] => {
  if (/^[\d.]*\d(?:,\d+)+(?:\.\d+)?$/u.test(text)) return commaReadings(text)
  // Three digits after a point are thousands to many, and no cents to anybody.
  if (/^\d{1,3}(?:\.\d{3})+$/u.test(text))
    return text.split('.').length === 2 ? [text.replace('.', ''), text] : [text.replaceAll('.', '')]
  return []
}

/**
 * Reads "2000", "1999.50" or "1 999.50". A comma is refused as it is in the files, because 1,800 is 1800 to one reader and 1.8
 * to the next; signs and other currencies are not guessed at.
 * @returns the amount, above zero, or what is wrong with it and how to write it
 */
export const readAmount = (text: string): AmountResult => {
  const either = readings(text)
  if (either.length > 1)
    return { refused: `"${text}" can be read in two ways: write ${either.map(asMoney).join(' or ')}` }
  if (either.length === 1)
    return { refused: `"${text}" is written with more than a decimal point: write ${either.map(asMoney).join('')}` }
  const plain = text.replace(/(?<=\d) (?=\d{3}(?:\D|$))/gu, '')
  const value = PLAIN.test(plain) ? Number(plain) : Number.NaN
  if (value > 0) return { amount: value }
  return {
    refused: `"${text}" is no amount: write a number above 0 in the shop’s currency, without its sign, such as --budget 2000`,
  }
}
