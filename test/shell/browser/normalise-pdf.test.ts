import { describe, expect, test } from 'vitest'
import { normalisePdf } from '../../../src/shell/browser/normalise-pdf.ts'

const pdf = (date: string, ids: readonly string[]) =>
  Buffer.from(
    `%PDF-1.4\n<</CreationDate (D:${date}+00'00')\n/ModDate (D:${date}+00'00')>>\n${ids.map((id) => `(${id})`).join('')}\nstream\n${ids[0]}\nendstream\n%%EOF`,
    'latin1',
  )
const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1')

describe('normalisePdf', () => {
  test('two prints of one page become the same bytes, streams left alone', () => {
    const one = normalisePdf(pdf('20260302101112', ['node00000017', 'node00000009', 'node00000017']), '2026-03-02')
    const two = normalisePdf(pdf('20271231235959', ['node00000417', 'node00000409', 'node00000417']), '2026-03-02')
    expect(text(one).replace(/stream\n.*\nendstream/u, '')).toBe(text(two).replace(/stream\n.*\nendstream/u, ''))
    expect(text(one)).toContain("(D:20260302000000+00'00')")
    expect(text(one)).toContain('stream\nnode00000017\nendstream')
    expect(one.length).toBe(pdf('20260302101112', ['node00000017', 'node00000009', 'node00000017']).length)
  })

  test('refuses what is no date', () => {
    expect(() => normalisePdf(pdf('20260302101112', []), 'tomorrow')).toThrow('not a date')
  })
})
