/** A group that need not be there and holds nothing but blanks is not there. */
import { expect, test } from 'vitest'
import { z } from 'zod'
import { withoutBlanks } from '../../src/scenario/blanks.ts'

const inner = z.strictObject({ a: z.number(), b: z.number().nullish() })
const schema = z.strictObject({
  must: inner,
  may: inner.nullish(),
  names: z.record(z.string(), inner).nullish(),
  any: z.unknown(),
})

test('an optional group of blanks goes, one that must be there stays', () =>
  expect(withoutBlanks({ must: { a: null, b: null }, may: { a: null, b: null } }, schema)).toEqual({
    must: { a: null, b: null },
    may: null,
  }))
test('one value keeps the group, with its blanks', () =>
  expect(withoutBlanks({ may: { a: null, b: 1 } }, schema)).toEqual({ may: { a: null, b: 1 } }))
test('names that are all blank go together, else each stays', () => {
  expect(withoutBlanks({ names: { x: { a: null }, y: { b: null } } }, schema)).toEqual({ names: null })
  expect(withoutBlanks({ names: { x: { a: null }, y: { a: 1 } } }, schema)).toEqual({
    names: { x: { a: null }, y: { a: 1 } },
  })
})
test('an empty group is no blank, and what no schema describes is left alone', () => {
  expect(withoutBlanks({ may: {} }, schema)).toEqual({ may: {} })
  expect(withoutBlanks({ any: { cooler: null } }, schema)).toEqual({ any: { cooler: null } })
  expect(withoutBlanks({ stray: { a: null } }, schema)).toEqual({ stray: { a: null } })
})
