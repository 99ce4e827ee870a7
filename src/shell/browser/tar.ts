/** Reads a small tar archive in memory; just enough for the archives that come with the browser. */

export interface TarEntry {
  readonly name: string
  readonly executable: boolean
  readonly content: Uint8Array
}

const BLOCK = 512

/**
 * The plain files of a tar archive (ustar, IEEE Std 1003.1, "pax Interchange Format": 512-byte headers, name at 0, mode
 * at 100, size at 124, both octal, type at 156, prefix at 345). Folders are skipped, their names are in the files'.
 * Anything else (links, devices, long-name records) and a name that leaves the folder are errors.
 */
export const readTar = (archive: Uint8Array): TarEntry[] => {
  const entries: TarEntry[] = []
  let at = 0
  while (at + BLOCK <= archive.length && archive[at] !== 0) {
    const header = archive.subarray(at, at + BLOCK)
    const prefix = text(header, 257, 5) === 'ustar' && header[263] === 0x30 ? text(header, 345, 155) : ''
    const name = prefix === '' ? text(header, 0, 100) : `${prefix}/${text(header, 0, 100)}`
    const size = octal(header, 124, 12)
    const type = text(header, 156, 1) || '0'
    const start = at + BLOCK
    if (name.startsWith('/') || name.split('/').includes('..'))
      throw new Error(`archive entry leaves its folder: ${name}`)
    if (start + size > archive.length) throw new Error(`archive ends inside ${name}`)
    if (type === '0') {
      entries.push({
        name,
        executable: (octal(header, 100, 8) & 0o100) !== 0,
        content: archive.subarray(start, start + size),
      })
    } else if (type !== '5') {
      throw new Error(`archive entry of a kind that is not expected (${type}): ${name}`)
    }
    at = start + Math.ceil(size / BLOCK) * BLOCK
  }
  return entries
}

const text = (header: Uint8Array, from: number, length: number): string => {
  const field = header.subarray(from, from + length)
  const end = field.indexOf(0)
  return Buffer.from(end === -1 ? field : field.subarray(0, end)).toString('utf8')
}

const octal = (header: Uint8Array, from: number, length: number): number => {
  const digits = text(header, from, length).trim()
  if (!/^[0-7]+$/.test(digits)) throw new Error('archive header is damaged')
  return Number.parseInt(digits, 8)
}
