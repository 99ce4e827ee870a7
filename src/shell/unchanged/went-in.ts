/**
 * A digest of everything that goes into a report: the tool with its packages, templates and fonts, the texts of all files, the
 * shop's mark, the options, the browser. Where it is the same, the report is the same.
 */
import { createHash, type Hash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { unitText } from '../../scenario/fleet.ts'
import { TOOL } from '../../tool.ts'
import type { CopyOptions } from '../copy-options.ts'
import type { Sources } from '../load.ts'
import { MOST_BYTES } from '../logo.ts'
import { CODE, ROOT } from '../places.ts'
import type { Copy } from '../render-html.ts'

/** Each piece with its length before it, so that two pieces never read like one. */
const add = (hash: Hash, ...pieces: readonly (string | Uint8Array | null)[]): void => {
  for (const piece of pieces) {
    if (piece === null) hash.update('-;')
    else hash.update(`${Buffer.byteLength(piece)};`).update(piece)
  }
}

const addFolder = (hash: Hash, folder: string, ending: RegExp): void => {
  const names = readdirSync(folder, { recursive: true }).map(String)
  for (const name of names.filter((path) => ending.test(path)).sort())
    add(hash, name.split('\\').join('/'), readFileSync(join(folder, name)))
}

/** The nearest `node_modules/NAME` above the tool. */
const packageFolder = (name: string, from: string): string | null => {
  const here = join(from, 'node_modules', name)
  if (existsSync(here)) return here
  return dirname(from) === from ? null : packageFolder(name, dirname(from))
}

/** Weights that the pages use. */
const FONT = /-(?:400|600|700)-normal\.woff2$/u

/** Digest of the tool itself: its code, what it is built on, templates and fonts. */
export const toolDigest = (): string => {
  const hash = createHash('sha256')
  add(hash, TOOL.name, TOOL.version, process.version)
  addFolder(hash, CODE, /\.(?:js|ts)$/u)
  addFolder(hash, join(ROOT, 'templates'), /\.(?:hbs|css)$/u)
  const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
    readonly dependencies: { readonly [name: string]: string }
  }
  for (const name of Object.keys(dependencies).sort()) {
    const folder = packageFolder(name, ROOT)
    add(hash, name, folder === null ? null : readFileSync(join(folder, 'package.json')))
    if (folder !== null && name.startsWith('@fontsource/')) addFolder(hash, join(folder, 'files'), FONT)
  }
  return hash.digest('hex')
}

/** The pictures of a shop's folder; which of them is its mark only its files say. */
const addPictures = (hash: Hash, shop: string): void => {
  for (const name of readdirSync(shop, { recursive: true }).map(String).sort()) {
    if (!/\.(?:svg|png|jpe?g)$/iu.test(name)) continue
    const found = statSync(join(shop, name), { throwIfNoEntry: false })
    // Anything else is refused as a mark.
    const picture = found?.isFile() === true && found.size <= MOST_BYTES
    add(hash, name, picture ? readFileSync(join(shop, name)) : String(found?.size))
  }
}

/**
 * Digest of what goes into one copy of one question.
 * @param tool from toolDigest
 * @param unit of a fleet, counted from 0: what stands under the other units does not matter to it
 * @param browser that prints it; null for the HTML
 */
export const wentIn = (
  tool: string,
  { scenario, machine, shopFiles, shop }: Sources,
  unit: number | null,
  copy: Copy,
  options: CopyOptions,
  browser: string | null,
): string => {
  const hash = createHash('sha256')
  const text = unit === null || scenario.text === null ? scenario.text : unitText(scenario.file, scenario.text, unit)
  add(hash, tool, scenario.file, text)
  for (const source of [machine, ...shopFiles]) add(hash, source?.file ?? null, source?.text ?? null)
  if (shop !== null) addPictures(hash, shop)
  const every = copy === 'technician' && options.everyOption
  add(hash, copy, options.units, options.paper, String(every), browser)
  return hash.digest('hex')
}
