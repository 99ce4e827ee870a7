/** The shop's mark as a data: address: read only from beside the shop's files, only as a picture that carries nothing else. */
import { readFileSync, realpathSync, statSync } from 'node:fs'
import { extname, isAbsolute, resolve, sep } from 'node:path'
import { isPlainPicture } from './svg-picture.ts'

const KINDS: { readonly [ending: string]: string } = {
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.jpeg': 'image/jpeg',
}

/** First bytes: PNG, 3rd edition, 5.2; JPEG, ITU T.81, B.2.1 (SOI, then a marker). */
const STARTS: { readonly [kind: string]: (bytes: Buffer) => boolean } = {
  'image/png': (bytes) => bytes.subarray(0, 8).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])),
  'image/jpeg': (bytes) => bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff])),
  'image/svg+xml': (bytes) => /^\ufeff?\s*(?:<[?!][\s\S]*?>\s*)*<svg[\s>]/u.test(bytes.toString('utf8')),
}

/** Every copy carries the mark, and a report is meant to stay under 400 kB. */
export const MOST_BYTES = 100_000

export type Logo = { readonly mark: string } | { readonly refused: string }

/**
 * @param folder of the shop's files
 * @param name as the shop file gives it
 */
export const readLogo = (folder: string, name: string): Logo => {
  const refused = (why: string): Logo => ({ refused: `the mark "${name}" ${why}` })
  const kind = KINDS[extname(name).toLowerCase()]
  if (kind === undefined) return refused('is no SVG, PNG or JPEG')
  const path = resolve(folder, name)
  const found = statSync(path, { throwIfNoEntry: false })
  if (isAbsolute(name) || !path.startsWith(resolve(folder) + sep) || found === undefined)
    return refused('is not beside the shop file')
  if (!realpathSync(path).startsWith(realpathSync(folder) + sep)) return refused("leads out of the shop's folder")
  // A pipe or a device may never end.
  if (!found.isFile()) return refused('is no file')
  if (found.size > MOST_BYTES)
    return refused(`has ${Math.round(found.size / 1000)} kB; ${MOST_BYTES / 1000} kB are the most: save it smaller`)
  const bytes = readFileSync(path)
  if (!STARTS[kind]?.(bytes)) return refused('is not what its ending says')
  if (kind === 'image/svg+xml' && !isPlainPicture(bytes.toString('utf8')))
    return refused('carries script or reaches outside itself: save it as a plain SVG, or as PNG')
  return { mark: `data:${kind};base64,${bytes.toString('base64')}` }
}
