/** Packing of tags: a small document written by hand in the browser's form, read back with a PDF library. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test } from 'vitest'
import { packPdf } from '../../../src/shell/browser/pack-pdf.ts'

/** ISO 32000-1, 7.5.4: ten digits of offset, five of generation, n or f, and a line end of two bytes. */
const documentOf = (objects: readonly string[], trailer = '/Root 1 0 R'): Uint8Array => {
  let text = '%PDF-1.4\n%\xd3\xeb\xe9\xe1\n'
  const offsets = objects.map((body, index) => {
    const at = text.length
    text += `${index + 1} 0 obj\n${body}\nendobj\n`
    return at
  })
  const rows = offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('')
  const size = objects.length + 1
  text += `xref\n0 ${size}\n0000000000 65535 f \n${rows}trailer\n<</Size ${size}\n${trailer}>>\nstartxref\n${text.length}\n%%EOF\n`
  return Buffer.from(text, 'latin1')
}

const CONTENT = '/P <</MCID 0>> BDC BT /F1 12 Tf 20 50 Td (Hello) Tj ET EMC'
/** One page with one word, tagged as a paragraph in a document, and many more tags beside it. */
const tagged = (more: number): Uint8Array =>
  documentOf([
    '<</Type /Catalog\n/Pages 2 0 R\n/MarkInfo <</Type /MarkInfo\n/Marked true>>\n/Lang (en)\n/StructTreeRoot 6 0 R>>',
    '<</Type /Pages\n/Count 1\n/Kids [3 0 R]>>',
    '<</Type /Page\n/Parent 2 0 R\n/MediaBox [0 0 200 100]\n/StructParents 0\n/Contents 4 0 R\n/Resources <</Font <</F1 5 0 R>>>>>>',
    `<</Length ${CONTENT.length}>> stream\n${CONTENT}\nendstream`,
    '<</Type /Font\n/Subtype /Type1\n/BaseFont /Helvetica>>',
    '<</Type /StructTreeRoot\n/K 7 0 R\n/ParentTree <</Nums [0 [8 0 R]]>>>>',
    `<</Type /StructElem\n/S /Document\n/P 6 0 R\n/K [8 0 R ${Array.from({ length: more }, (_, i) => `${9 + i} 0 R`).join(' ')}]>>`,
    '<</Type /StructElem\n/S /P\n/P 7 0 R\n/Pg 3 0 R\n/K [0]>>',
    ...Array.from({ length: more }, () => '<</Type /StructElem\n/S /Div\n/P 7 0 R\n/Pg 3 0 R\n/K []>>'),
  ])

const read = async (bytes: Uint8Array) => {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const page = await pdf.getPage(1)
  const text = (await page.getTextContent()).items.map((item) => ('str' in item ? item.str : '')).join('')
  return { pages: pdf.numPages, text, mark: await pdf.getMarkInfo(), tree: await page.getStructTree() }
}

describe('a tagged document', () => {
  // More than two streams hold, so that the second and third are reached too.
  const plain = tagged(450)
  const packed = packPdf(plain)
  test('reads the same: text, tags, marks', async () => expect(await read(packed)).toEqual(await read(plain)))
  test('what it reads is not nothing', async () => {
    const { text, mark, tree } = await read(packed)
    expect(text).toBe('Hello')
    expect(mark).toMatchObject({ Marked: true })
    expect(JSON.stringify(tree)).toContain('"role":"P"')
  })
  test('is a good deal smaller, and the same bytes twice', () => {
    expect(packed.length).toBeLessThan(plain.length / 4)
    expect(Buffer.from(packPdf(plain)).equals(Buffer.from(packed))).toBe(true)
  })
  test('says that it is of version 1.5, which object streams need', () =>
    expect(Buffer.from(packed).toString('latin1').slice(0, 8)).toBe('%PDF-1.5'))
  test('leaves everything but the tags in plain sight', () => {
    const text = Buffer.from(packed).toString('latin1')
    expect(text).toContain('/Lang (en)')
    expect(text).toContain(CONTENT)
    expect(text).not.toContain('/Type /StructElem')
  })
})

describe('anything else comes back as it was', () => {
  const same = (bytes: Uint8Array) => expect(packPdf(bytes)).toBe(bytes)
  test('no PDF', () => same(Buffer.from('%PDF-fake')))
  test('nothing', () => same(new Uint8Array()))
  test('a document without tags', () =>
    same(documentOf(['<</Type /Catalog\n/Pages 2 0 R>>', '<</Type /Pages\n/Count 0\n/Kids []>>'])))
  test('one that was changed after it was written', () =>
    same(documentOf(['<</Type /Catalog>>', '<</Type /StructElem>>'], '/Root 1 0 R\n/Prev 12')))
  test('one that is locked', () =>
    same(documentOf(['<</Type /Catalog>>', '<</Type /StructElem>>'], '/Root 1 0 R\n/Encrypt 2 0 R')))
  test('one whose table points astray', () => {
    const text = Buffer.from(tagged(3)).toString('latin1')
    same(Buffer.from(text.replace(/(\d{10}) 00000 n /u, '0000000003 00000 n '), 'latin1'))
  })
  test('one that is packed already', () => same(packPdf(tagged(3))))
})
