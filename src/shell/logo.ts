/** The shop's mark as a data: address: read only from beside the shop's files, only as a picture that carries nothing else. */
import { existsSync, readFileSync, realpathSync } from 'node:fs'
import { extname, join, resolve, sep } from 'node:path'

const KINDS: { readonly [ending: string]: string } = {
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.jpeg': 'image/jpeg',
}

const STARTS: { readonly [kind: string]: (bytes: Buffer) => boolean } = {
  'image/png': (bytes) => bytes.subarray(0, 4).equals(Buffer.from([0x89, 0x50, 0x4e, 0x47])),
  'image/jpeg': (bytes) => bytes.subarray(0, 2).equals(Buffer.from([0xff, 0xd8])),
  'image/svg+xml': (bytes) => /<svg[\s>]/u.test(bytes.toString('utf8')),
}

/** Script, handlers, or anything that reaches outside the picture. */
const UNSAFE_SVG =
  /<script|<foreignObject|<!ENTITY|<!DOCTYPE|\son\w+\s*=|javascript:|(?:href|src)\s*=\s*["'](?!#|data:image\/(?:png|jpeg))|url\(\s*["']?(?!#)|@import/iu

export type Logo = { readonly mark: string } | { readonly refused: string }

/**
 * @param folder of the shop's files
 * @param name as the shop file gives it
 */
export const readLogo = (folder: string, name: string): Logo => {
  const path = resolve(folder, name)
  const kind = KINDS[extname(name).toLowerCase()]
  if (kind === undefined) return { refused: `the mark "${name}" is no SVG, PNG or JPEG` }
  if (!path.startsWith(resolve(folder) + sep) || !existsSync(path))
    return { refused: `the mark "${name}" is not beside the shop file` }
  if (!realpathSync(path).startsWith(realpathSync(folder) + sep))
    return { refused: `the mark "${name}" leads out of the shop's folder` }
  const bytes = readFileSync(join(path))
  if (!STARTS[kind]?.(bytes)) return { refused: `the mark "${name}" is not what its ending says` }
  if (kind === 'image/svg+xml' && UNSAFE_SVG.test(bytes.toString('utf8')))
    return { refused: `the mark "${name}" carries script or reaches outside itself` }
  return { mark: `data:${kind};base64,${bytes.toString('base64')}` }
}
