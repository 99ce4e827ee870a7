/** Where every bench puts its figures: a table on the terminal, and out/bench.json. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const FOLDER = fileURLToPath(new URL('../../out/', import.meta.url))
const FILE = `${FOLDER}bench.json`

export interface Rows {
  readonly [what: string]: number
}

const shown = (value: number): string => (value >= 1000 ? value.toFixed(0) : value.toPrecision(3))

/** Prints a group of figures, and puts it in the place of the same group of an earlier run. */
export const record = (group: string, rows: Rows): void => {
  console.log(
    [group, ...Object.entries(rows).map(([what, value]) => `  ${what.padEnd(66)} ${shown(value).padStart(8)}`)].join(
      '\n',
    ),
  )
  mkdirSync(FOLDER, { recursive: true })
  const before = existsSync(FILE) ? (JSON.parse(readFileSync(FILE, 'utf8')) as object) : {}
  writeFileSync(FILE, `${JSON.stringify({ ...before, [group]: rows }, null, 2)}\n`)
}

/** Middle one of several measurements. */
export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN
