/** The shop over one file or several, and what it does not state. */
import { describe, expect, test } from 'vitest'
import { readDocument, type SourceDocument } from '../../src/scenario/document.ts'
import { readShop } from '../../src/scenario/read-shop.ts'
import { type Edit, PARTS, problemsOf, sample } from '../fixtures/fernhill.ts'

const documents = (...texts: string[]): SourceDocument[] =>
  texts.map((text, i) => {
    const read = readDocument(`${i}.yaml`, text)
    if (!('document' in read)) throw new Error('unreadable')
    return read.document
  })
const shopOf = (...texts: string[]) => {
  const read = readShop(documents(...texts), 'shop', true)
  if (!('shop' in read)) throw new Error(read.problems.map(({ message }) => message).join('; '))
  return read.shop
}
const codes = (...texts: string[]) => {
  const read = readShop(documents(...texts), 'shop', true)
  return 'problems' in read ? read.problems.map(({ file, code }) => `${file} ${code}`) : []
}

const LETTERHEAD = 'format: 1\nshop: {name: Tool Shed}\nlabour-rate: 90\n'
const part = (id: string) =>
  `format: 1\nparts:\n  - {id: ${id}, kind: fitting, name: End, figures: {hose: -8, end: G 1/2}}\n`

test('the sample shop', () =>
  expect(sample().shop).toMatchObject({
    name: 'Fernhill Equipment',
    units: 'metric',
    currency: 'USD',
    labourRate: 96,
    markUp: 0.35,
    marginStated: null,
    tax: 0.075,
    supplies: { shareOfLabour: 0.04, atMost: 60 },
    freight: 45,
    contingency: 0.1,
    quoteValidDays: 30,
    disposal: 0,
    limits: { shareOfValue: 0.4, paybackYears: 2, leastGain: 0.1 },
    specialOrder: [{ kind: 'swivel', allow: { low: 600, likely: 850, high: 1400 }, leadDays: 40 }],
    labour: [{ job: 'replace pump', hours: { low: 2, likely: 2.5, high: 4 } }],
  }))

test('a shop that states nothing adds nothing', () =>
  expect(shopOf(LETTERHEAD)).toMatchObject({
    markUp: null,
    marginStated: null,
    tax: 0,
    supplies: { shareOfLabour: 0, atMost: null },
    freight: 0,
    contingency: 0,
    terms: [],
    parts: [],
  }))

test('parts over several files, in the order of the files', () =>
  expect(shopOf(LETTERHEAD, part('one'), part('two')).parts.map(({ id }) => id)).toEqual(['one', 'two']))

describe('parts', () => {
  const only = (figures: string) => shopOf(LETTERHEAD, `format: 1\nparts:\n  - ${figures}\n`).parts[0]
  test('neither cost nor price is unpriced, not free', () =>
    expect(only('{id: a, kind: oil, name: Oil, figures: {grade: ISO VG 46}}')).toMatchObject({
      cost: null,
      price: null,
    }))
  test('what a kit holds, one of each unless it says', () =>
    expect(sample().shop.parts.find(({ kind }) => kind === 'kit')?.holds).toEqual([
      { part: 'cooler-s', quantity: 1 },
      { part: 'return-filter-s', quantity: 1 },
      { part: 'hose-1w-10', quantity: 2 },
    ]))
  test('a lead time in weeks is no unit, in days it is', () => {
    expect(only('{id: a, kind: harness, name: Cable, lead-time: 14 days}')?.leadDays).toBe(14)
    expect(
      codes(LETTERHEAD, 'format: 1\nparts: [{id: a, kind: harness, name: Cable, lead-time: 2 fortnights}]'),
    ).toEqual(['1.yaml unit-unknown'])
  })
  test('jobs that a part brings', () =>
    expect(
      only('{id: a, kind: harness, name: Cable, labour: [{job: lay cable, hours: {low: 1, likely: 1, high: 2}}]}')
        ?.labour,
    ).toEqual([{ job: 'lay cable', hours: { low: 1, likely: 1, high: 2 } }]))
})

describe('refused', () => {
  test('the same id in two files', () =>
    expect(codes(LETTERHEAD, part('one'), part('one'))).toEqual(['2.yaml part-twice']))
  test('no letterhead anywhere', () => expect(codes(part('one'))).toEqual(['shop shop-missing']))
  test('a margin of the whole price', () =>
    expect(codes(`${LETTERHEAD}margin: 100 %\n`)).toEqual(['0.yaml number-out-of-range']))
  test('a pump without its displacement', () => {
    const edit: Edit = [PARTS, 'displacement: 15.8 cm3/rev,', '']
    expect(problemsOf(edit).map(({ file, code }) => `${file} ${code}`)).toEqual([`${PARTS} key-missing`])
  })
  test('a price below zero', () =>
    expect(codes(LETTERHEAD, 'format: 1\nparts: [{id: a, kind: harness, name: Cable, price: -4}]')).toEqual([
      '1.yaml number-out-of-range',
    ]))
})
