/** The words of the charts that only the shop's copy has. Functions take ready text, never numbers. */
import { en } from './wording.ts'

const sentences = (entries: readonly string[]): string => `${entries.join('. ')}.`

export const charts = {
  heading: 'Pressure, oil speed and price, drawn',
  intro: 'Oil at 50 °C, on the level. The figures are those of the result; ×2: passed there and back.',
  now: 'As it is',
  with: (name: string) => `With ${en.quoted(name)}`,
  entry: (name: string, value: string) => `${name}: ${value}`,

  pressure: {
    heading: 'Where the pressure goes on the level',
    title: (way: string) => `Where the pressure goes on the level, ${way}`,
    describe: (shares: readonly string[], whole: string) =>
      `Bars, one after the other, from the pump to the tank. ${sentences(shares)} Together ${whole} at the pump.`,
    axis: (unit: string) => `${unit}, from the pump to the tank`,
    load: 'motors: what the load takes',
    bothWays: (name: string) => `${name}\u00a0×2`,
    rest: 'elsewhere',
    pump: 'at the pump',
    stalled: (way: string) => `${way}: the machine does not move on the level; nothing to draw.`,
  },

  lineSpeed: {
    heading: 'Oil speed line by line, against its guide band',
    title: (way: string) => `Oil speed line by line against its guide band, ${way}`,
    describe: (bars: readonly string[]) => `Bars, each on a band up to its guide value. ${sentences(bars)}`,
    bar: (name: string, value: string, guide: string) => `${name}: ${value}, guide value ${guide}`,
    axis: (unit: string) => `${unit}; grey band: up to the guide value`,
    guide: (value: string) => `to ${value}`,
  },

  price: {
    heading: 'What the price is made of',
    title: (way: string) => `What the price is made of: ${way}`,
    describe: (shares: readonly string[], whole: string) =>
      `Bars, one after the other. ${sentences(shares)} Together ${whole}, the likely total.`,
    axis: (currency: string) => `${currency}, likely, tax included`,
    parts: 'parts',
    labour: 'labour',
    supplies: 'supplies',
    freight: 'freight',
    contingency: 'allowance',
    tax: 'tax',
    whole: 'likely total',
    wholeFrom: 'total from',
  },
} as const
