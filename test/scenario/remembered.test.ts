/** What was read stays known: only as long as it is the same, and nobody can change it for the others. */
import { describe, expect, test } from 'vitest'
import { rememberedByItems, rememberedByText } from '../../src/scenario/remembered.ts'

describe('by text', () => {
  const counting = () => {
    let reads = 0
    const read = rememberedByText(
      (file: string, text: string) => ({ data: { file, inner: [text] }, reads: ++reads }),
      ({ data }) => data,
    )
    return read
  }
  test('a file is read again only where its text is another', () => {
    const read = counting()
    expect([read('a', '1').reads, read('a', '1').reads, read('a', '2').reads, read('a', '1').reads]).toEqual([
      1, 1, 2, 3,
    ])
  })
  test('the same text under another name is another file', () => {
    const read = counting()
    expect([read('a', '1').data.file, read('b', '1').data.file]).toEqual(['a', 'b'])
  })
  test('what is shared cannot be changed', () => {
    const { data } = counting()('a', '1')
    expect(() => data.inner.push('2')).toThrow(TypeError)
  })
  test('of very many files only the last stay known', () => {
    const read = counting()
    for (let i = 0; i < 200; i++) read(`file ${i}`, '')
    expect(read('file 199', '').reads).toBe(200)
    expect(read('file 0', '').reads).toBe(201)
  })
})

test('by items: another item, another number of them or another word beside them is read afresh', () => {
  let reads = 0
  const read = rememberedByItems((items: readonly object[], word: string) => `${items.length}${word}${++reads}`)
  const [a, b] = [{}, {}]
  expect([read([a, b], 'x'), read([a, b], 'x')]).toEqual(['2x1', '2x1'])
  expect([read([a], 'x'), read([a, {}], 'x'), read([a, b], 'y')]).toEqual(['1x2', '2x3', '2y4'])
})
