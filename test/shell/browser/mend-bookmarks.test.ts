import { expect, test } from 'vitest'
import { mendBookmarks } from '../../../src/shell/browser/mend-bookmarks.ts'

const mended = (pdf: string, ...headings: string[]) =>
  Buffer.from(mendBookmarks(Buffer.from(pdf, 'latin1'), headings)).toString('latin1')
const hex = (text: string) => `<FEFF${Buffer.from(text, 'utf16le').swap16().toString('hex').toUpperCase()}>`

test('a title that says its heading twice says it once, and nothing behind it moves', () => {
  const pdf = '<</Title (Relief valvesRelief valves)\n/Parent 4 0 R>> endobj'
  const put = mended(pdf, 'Terms', 'Relief\n  valves')
  expect(put).toContain('/Title (Relief valves)  ')
  expect(put.indexOf('/Parent')).toBe(pdf.indexOf('/Parent'))
  expect(put.length).toBe(pdf.length)
})

test('a heading of two lines, of which one fitted on the page before', () => {
  const title = `/Title ${hex('“A long wayA long wayround the yard”'.replace('wayA', 'way“A'))}`
  expect(mended(title, '“A long way round the yard”', 'Terms').trimEnd()).toBe(
    `/Title ${hex('“A long way round the yard”')}`,
  )
})

test('letters beyond Latin, and brackets, which are written otherwise', () => {
  expect(mended(`/Title ${hex('“A”“A”')}`, '“A”').trimEnd()).toBe(`/Title ${hex('“A”')}`)
  expect(mended(String.raw`/Title (a \(b\)a \(b\))`, 'a (b)').trimEnd()).toBe(String.raw`/Title (a \(b\))`)
})

test('a heading that repeats itself stays as it is, and so does what is no heading', () => {
  for (const title of ['/Title (TotoToto)', '/Title (Toto)', `/Title ${hex('ĄĄ')}`, '/Title ()'])
    expect(mended(title, 'TotoToto', 'To', 'Toto', 'ĄĄ')).toBe(title)
  expect(mended('/Title (BoraBora)', 'Terms')).toBe('/Title (BoraBora)')
})
