/**
 * Packs the tags of a PDF. The browser writes each structure element as an object in plain text, which makes up two thirds
 * of a tagged report; ISO 32000-1 (7.5.7, 7.5.8) lets them stand compressed in object streams, with a cross-reference stream
 * in place of the table. Everything else stays as it was, byte for byte.
 */
import { deflateSync } from 'node:zlib'

/** Objects of one stream; readers open a whole stream for one of them. */
const MOST_IN_STREAM = 200

interface PdfObject {
  readonly number: number
  /** From "N 0 obj" to "endobj". */
  readonly text: string
}

interface Read {
  readonly objects: readonly PdfObject[]
  readonly size: number
  /** Entries of the trailer besides its size: root, info, id. */
  readonly trailer: string
}

/** null where it is not in the plain form that the browser writes. */
const readPdf = (text: string): Read | null => {
  const end = /startxref\s+(\d+)\s+%%EOF\s*$/u.exec(text)
  if (end === null || !text.startsWith('%PDF-1.')) return null
  const table = Number(end[1])
  const head = /^xref\s+0 (\d+)\s+/u.exec(text.slice(table, table + 64))
  const trailer = /trailer\s*<<([\s\S]*)>>\s*startxref/u.exec(text.slice(table))?.[1]
  if (head === null || trailer === undefined || /\/(?:Prev|Encrypt|XRefStm)\b/u.test(trailer)) return null
  const size = Number(head[1])
  const from = table + head[0].length
  const entries = Array.from({ length: size }, (_, number) => ({
    number,
    entry: text.slice(from + 20 * number, from + 20 * number + 20),
  })).filter(({ entry }) => /^\d{10} 00000 n/u.test(entry))
  const places = entries
    .map(({ number, entry }) => ({ number, at: Number(entry.slice(0, 10)) }))
    .toSorted((one, other) => one.at - other.at)
  const objects = places.map(({ number, at }, index) => ({
    number,
    text: text.slice(at, places[index + 1]?.at ?? table).trimEnd(),
  }))
  const whole = objects.every(
    ({ number, text: object }) => object.startsWith(`${number} 0 obj`) && object.endsWith('endobj'),
  )
  return whole ? { objects, size, trailer: trailer.replace(/\/Size \d+/u, '').trim() } : null
}

const isTag = ({ text }: PdfObject): boolean => text.includes('/Type /StructElem') && !text.includes('stream\n')

const bodyOf = ({ number, text }: PdfObject): string => text.slice(`${number} 0 obj`.length, -'endobj'.length).trim()

const streamObject = (number: number, entries: string, content: Buffer): string => {
  const packed = deflateSync(content, { level: 9 }).toString('latin1')
  return `${number} 0 obj\n<<${entries}\n/Filter /FlateDecode\n/Length ${packed.length}>> stream\n${packed}\nendstream\nendobj`
}

const objectStream = (number: number, objects: readonly PdfObject[]): string => {
  const bodies = objects.map(bodyOf)
  let at = 0
  const offsets = bodies.map((body, index) => {
    const offset = at
    at += body.length + 1
    return `${objects[index]?.number} ${offset}`
  })
  const head = `${offsets.join(' ')}\n`
  const content = Buffer.from(head + bodies.join('\n'), 'latin1')
  return streamObject(number, `/Type /ObjStm\n/N ${objects.length}\n/First ${head.length}`, content)
}

/** A row of the cross-reference stream: kind, offset or stream, generation or index; 1, 4 and 2 bytes. */
const rowOf = ([kind, place, index]: readonly [number, number, number]): Buffer => {
  const row = Buffer.alloc(7)
  row.writeUInt8(kind, 0)
  row.writeUInt32BE(place, 1)
  row.writeUInt16BE(index, 5)
  return row
}

const FREE = [0, 0, 0xffff] as const

/** @returns the same document, smaller; the bytes as they came where they are in another form than the browser's */
export const packPdf = (pdf: Uint8Array): Uint8Array => {
  const read = readPdf(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength).toString('latin1'))
  const tags = read?.objects.filter(isTag) ?? []
  if (read === null || tags.length === 0) return pdf
  const rows = new Map<number, readonly [number, number, number]>()
  const parts = ['%PDF-1.5\n%\xd3\xeb\xe9\xe1\n']
  let at = parts[0]?.length ?? 0
  const write = (number: number, object: string): void => {
    rows.set(number, [1, at, 0])
    parts.push(`${object}\n`)
    at += object.length + 1
  }
  for (const object of read.objects) if (!isTag(object)) write(object.number, object.text)
  let next = read.size
  for (let first = 0; first < tags.length; first += MOST_IN_STREAM) {
    const some = tags.slice(first, first + MOST_IN_STREAM)
    some.forEach(({ number }, index) => {
      rows.set(number, [2, next, index])
    })
    write(next, objectStream(next, some))
    next += 1
  }
  const start = at
  rows.set(next, [1, start, 0])
  const content = Buffer.concat(Array.from({ length: next + 1 }, (_, number) => rowOf(rows.get(number) ?? FREE)))
  parts.push(
    `${streamObject(next, `/Type /XRef\n/Size ${next + 1}\n/W [1 4 2]\n${read.trailer}`, content)}\nstartxref\n${start}\n%%EOF\n`,
  )
  return Buffer.from(parts.join(''), 'latin1')
}
