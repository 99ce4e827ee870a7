/** Which folders a scenario hangs on, and which of their files: itself, its machine, the shop, the templates. */
import { readdirSync, statSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import type { Sources } from '../load.ts'
import { TEMPLATES } from '../render-html.ts'

export interface Surroundings {
  readonly folders: readonly string[]
  readonly matters: (folder: string, name: string | null) => boolean
}

const TEMPLATE = /\.(?:hbs|css)$/u

const templateFolders = (): readonly string[] => [
  resolve(TEMPLATES),
  ...readdirSync(TEMPLATES, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => join(TEMPLATES, name)),
]

/** The same as long as no template was saved. */
export const templatesAsSaved = (): string =>
  templateFolders()
    .flatMap((folder) => readdirSync(folder).map((name) => join(folder, name)))
    .filter((path) => TEMPLATE.test(path))
    .map((path) => {
      const found = statSync(path, { throwIfNoEntry: false })
      return `${path} ${found?.mtimeMs} ${found?.size}`
    })
    .join('\n')

const OF_A_SHOP = /\.(?:ya?ml|svg|png|jpe?g)$/iu

/** @param read the files of each question; a fleet has one for each unit */
export const surroundingsOf = (scenario: string, cwd: string, read: readonly Sources[]): Surroundings => {
  const whole = resolve(cwd, scenario)
  const named = new Set([
    whole,
    ...read.flatMap(({ machine }) => (machine === null ? [] : [resolve(cwd, machine.file)])),
  ])
  const shops = new Set(read.flatMap(({ shop }) => (shop === null ? [] : [shop])))
  const templates = new Set(templateFolders())
  const folders = new Set([...[...named].map((path) => dirname(path)), ...shops, ...templates])
  return {
    folders: [...folders],
    matters: (folder, name) => {
      if (name === null) return true
      if (named.has(join(folder, name))) return true
      if (shops.has(folder)) return OF_A_SHOP.test(name)
      // A shop that was not there yet.
      return templates.has(folder) ? TEMPLATE.test(name) : name === 'shop'
    },
  }
}
