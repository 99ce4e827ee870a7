/**
 * Code points that a WOFF2 font has a sign for, read from its cmap table (WOFF2: W3C Recommendation, sections 4 and 5;
 * cmap formats 4 and 12: ISO/IEC 14496-22). The cmap is never transformed in a WOFF2 file.
 */
import { brotliDecompressSync } from 'node:zlib'

const CMAP = 0
const GLYF = 10
const LOCA = 11
const OWN_TAG = 63

/** Variable-length number of WOFF2: seven bits a byte, the highest bit says that more follow. */
const base128 = (bytes: Buffer, start: number): { value: number; next: number } => {
  let value = 0
  let next = start
  for (let byte = 0x80; byte & 0x80; next += 1) {
    byte = bytes.readUInt8(next)
    value = value * 128 + (byte & 0x7f)
  }
  return { value, next }
}

const cmapTable = (font: Buffer): Buffer => {
  const tables = font.readUInt16BE(12)
  let at = 48
  let offset = 0
  let found: { from: number; length: number } | null = null
  for (let index = 0; index < tables; index += 1) {
    const flags = font.readUInt8(at)
    const tag = flags & 0x3f
    const transform = flags >> 6
    const original = base128(font, at + 1 + (tag === OWN_TAG ? 4 : 0))
    const transformed = tag === GLYF || tag === LOCA ? transform !== 3 : transform !== 0
    const stored = transformed ? base128(font, original.next) : original
    if (tag === CMAP) found = { from: offset, length: stored.value }
    offset += stored.value
    at = stored.next
  }
  if (found === null) throw new Error('no cmap')
  const data = brotliDecompressSync(font.subarray(at, at + font.readUInt32BE(20)))
  return data.subarray(found.from, found.from + found.length)
}

const format4 = (table: Buffer, into: Set<number>) => {
  const segments = table.readUInt16BE(6) / 2
  for (let index = 0; index < segments; index += 1) {
    const end = table.readUInt16BE(14 + 2 * index)
    const start = table.readUInt16BE(16 + 2 * segments + 2 * index)
    const delta = table.readUInt16BE(16 + 4 * segments + 2 * index)
    const rangeAt = 16 + 6 * segments + 2 * index
    const range = table.readUInt16BE(rangeAt)
    for (let code = start; code <= end && code !== 0xffff; code += 1) {
      const glyph = range === 0 ? (code + delta) & 0xffff : table.readUInt16BE(rangeAt + range + 2 * (code - start))
      if (glyph !== 0) into.add(code)
    }
  }
}

const format12 = (table: Buffer, into: Set<number>) => {
  for (let index = 0; index < table.readUInt32BE(12); index += 1) {
    const group = 16 + 12 * index
    for (let code = table.readUInt32BE(group); code <= table.readUInt32BE(group + 4); code += 1) into.add(code)
  }
}

export const codePoints = (font: Buffer): ReadonlySet<number> => {
  const cmap = cmapTable(font)
  const points = new Set<number>()
  for (let index = 0; index < cmap.readUInt16BE(2); index += 1) {
    const table = cmap.subarray(cmap.readUInt32BE(8 + 8 * index))
    const format = table.readUInt16BE(0)
    if (format === 4) format4(table, points)
    if (format === 12) format12(table, points)
  }
  return points
}
