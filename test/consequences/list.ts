/** A shop and a parts list for tests: all invented. */
import type { Json } from '../../src/question.ts'
import type { Part, PartKind, Shop } from '../../src/shop.ts'

type Figures = { readonly [key: string]: Json }

export const part = (
  id: string,
  kind: PartKind,
  figures: Figures,
  price: number | null,
  over: Partial<Part> = {},
): Part => ({
  id,
  kind,
  name: id,
  figures,
  cost: null,
  price,
  leadDays: 5,
  stock: 1,
  labour: [],
  holds: [],
  coreDeposit: null,
  ...over,
})

const hours = (low: number, likely: number, high: number) => ({ low, likely, high })

export const shopWith = (parts: readonly Part[], over: Partial<Shop> = {}): Shop => ({
  name: 'Fernhill Equipment',
  address: [],
  phone: null,
  email: null,
  mark: null,
  accent: null,
  units: 'metric',
  currency: 'USD',
  labourRate: 100,
  markUp: 0.35,
  marginStated: null,
  tax: 0.1,
  supplies: { shareOfLabour: 0.05, atMost: 40 },
  freight: 45,
  contingency: 0.1,
  quoteValidDays: 30,
  terms: [],
  disposal: 0,
  limits: { shareOfValue: 0.4, paybackYears: 2, leastGain: 0.1 },
  parts,
  specialOrder: [],
  labour: [
    { job: 'replace pump', hours: hours(2, 3, 5) },
    { job: 'replace motor', hours: hours(1.5, 2, 3) },
    { job: 'replace hose', hours: hours(0.5, 0.75, 1) },
    { job: 'replace relief', hours: hours(0.5, 1, 1.5) },
    { job: 'set relief', hours: hours(0.5, 0.5, 1) },
    { job: 'clean reservoir', hours: hours(3, 4, 6) },
    { job: 'change oil', hours: hours(1, 1, 2) },
    { job: 'fit cooler', hours: hours(4, 5, 8) },
    { job: 'test and record', hours: hours(1.5, 2, 3) },
  ],
  ...over,
})

export const hosePart = (dash: number, kind: string, bar: number, price: number) =>
  part(`hose-${kind.replaceAll(' ', '-')}-${dash}`, 'hose', { hose: -dash, kind, 'max-pressure': `${bar} bar` }, price)

export const endPart = (dash: number, end: string, price: number) =>
  part(`end-${dash}-${end.replaceAll(/[ /°]/gu, '')}`, 'fitting', { hose: -dash, end }, price)

export const adapterPart = (from: string, to: string, bore: string, price: number) =>
  part(`ad-${from}-${to}`.replaceAll(/[ /°]/gu, ''), 'adapter', { from, to, bore }, price)

export const hoseList: readonly Part[] = [
  hosePart(4, '2-wire hose', 400, 8),
  hosePart(5, '2-wire hose', 350, 9),
  hosePart(6, '2-wire hose', 330, 10),
  hosePart(6, '1-wire hose', 180, 7),
  hosePart(8, '2-wire hose', 275, 12.4),
  hosePart(10, '2-wire hose', 250, 16),
  hosePart(12, '2-wire hose', 215, 20),
  hosePart(8, 'return hose', 28, 6),
  hosePart(10, 'return hose', 24, 8),
  hosePart(12, 'return hose', 21, 9),
  hosePart(16, 'suction hose', 17, 22),
  hosePart(20, 'suction hose', 14, 28),
  endPart(6, 'G 1/4', 5),
  endPart(6, '24° 12L', 5.7),
  endPart(6, 'G 1/2', 5.9),
  endPart(8, 'G 1/2', 6.2),
  endPart(10, 'G 1/2', 8.2),
  endPart(10, 'G 3/4', 8.9),
  endPart(16, 'G 1', 15),
  adapterPart('24° 8L', 'G 1/4', '6 mm', 5.1),
  adapterPart('G 3/4', 'G 1', '16 mm', 9.9),
  adapterPart('G 1/2', 'G 3/4', '12 mm', 7.4),
]
