/** What editors are told: every file names its schema, and a default in a description is the one that is taken. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { jsonSchemas } from '../../src/scenario/json-schema.ts'
import type { SourceText } from '../../src/scenario/read.ts'
import { readAll } from '../../src/scenario/read.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const files = ['scenarios', 'test/fixtures/fernhill'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true })
    .map(String)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => join(folder, name)),
)

const kindOf = (file: string): string => /(?:^|[\\/])(machine|shop)s?[\\/][^\\/]+$/u.exec(file)?.[1] ?? 'scenario'

describe('the schema of each file', () => {
  test('there are files', () => expect(files.length).toBeGreaterThan(20))
  test.each(files)('%s', (file) => {
    const [first = ''] = readFileSync(join(ROOT, file), 'utf8').split('\n')
    const named = /^# yaml-language-server: \$schema=(\S+)$/u.exec(first)?.[1] ?? 'none'
    const path = resolve(ROOT, dirname(file), named)
    expect(path).toBe(join(ROOT, 'scenarios', 'schema', `${kindOf(file)}.schema.json`))
    expect(existsSync(path)).toBe(true)
  })
})

interface Node {
  readonly description?: string
  readonly properties?: { readonly [key: string]: Node }
  readonly additionalProperties?: Node | boolean
  readonly anyOf?: readonly Node[]
  readonly oneOf?: readonly Node[]
}

/** Every description that names a default, with its path; names of circuits and hoses as in the files below. */
const defaultsIn = (node: Node, path: readonly string[] = []): readonly (readonly [string, string])[] => {
  const found = /default: (.*)$/u.exec(node.description ?? '')?.[1]
  const own: readonly (readonly [string, string])[] = found === undefined ? [] : [[path.join('.'), found]]
  const named = typeof node.additionalProperties === 'object' ? node.additionalProperties : null
  return [
    ...own,
    ...(node.anyOf ?? node.oneOf ?? []).flatMap((one) => defaultsIn(one, path)),
    ...Object.entries(node.properties ?? {}).flatMap(([key, child]) => defaultsIn(child, [...path, key])),
    ...(named === null ? [] : defaultsIn(named, [...path, path.at(-1) === 'circuits' ? 'main' : 'valve-to-swivel'])),
  ]
}

/** As little as may be written: every default is then taken. */
const MACHINE = `format: 1
machine: {name: M, type: tracked excavator, mass: 1000 kg}
engine: {net-power: 8 kW, rated-speed: 3000 rpm}
fluid: {grade: ISO VG 46}
reservoir: {volume: 10 L, cooling-surface: 0.5 m2}
circuits:
  main:
    pump: {displacement: 8 cm3/rev, efficiency: {volumetric: 92 %}}
    relief: {setting: 150 bar}
    lines: {suction: {hose: -12, length: 0.6 m}, pressure: {hose: -8, length: 1 m}, return: {hose: -10, length: 1 m}}
    drives: both tracks
travel:
  motor: {displacement: 235 cm3/rev, efficiency: {volumetric: 93 %}}
  sprocket: {pitch-diameter: 262 mm}
  track: {gauge: 0.76 m, ground-contact-length: 0.98 m}
  lines: {valve-to-swivel: {hose: -5, length: 1 m}}
filter: {rated-flow: 40 L/min}
cooler: {capacity: 0.05 kW/K, at-flow: 20 L/min}
strainer: {rated-flow: 40 L/min, drop-at-rated-flow: 0.05 bar}
`
const SCENARIO = `format: 1
title: T
asked: A?
customer: {name: C}
machine: machine.yaml
site: {ambient: 20 °C}
measured: {travel: {distance: 20 m, time: 30 s}}
`
const SHOP = 'format: 1\nshop: {name: S}\nlabour-rate: 90\n'
const source = (file: string, text: string): SourceText => ({ file, text })

describe('defaults', () => {
  const read = readAll(
    source('s.yaml', SCENARIO),
    source('machine.yaml', MACHINE),
    [source('shop/s.yaml', SHOP)],
    'shop',
  )
  if ('problems' in read) throw new Error(read.problems.map(({ message }) => message).join('; '))
  const { assumptions, machine } = read.loaded.prepare([]).resolve()
  const taken = new Map(
    [...assumptions, ...read.loaded.assumptions]
      .filter(({ from }) => from === 'default')
      .map(({ path, value, unit }) => [path, `${value}${unit === '' ? '' : ` ${unit}`}`]),
  )
  const schemas = jsonSchemas() as unknown as { readonly machine: Node; readonly scenario: Node }
  const told = new Map([...defaultsIn(schemas.machine), ...defaultsIn(schemas.scenario)])
  // What depends on another figure is told in words; these are its values on this machine.
  const words: { readonly [path: string]: string } = {
    'circuits.main.pump.efficiency.at.speed': '3000 rpm',
    'fluid.viscosity-at-100C': '6.8 cSt',
    'reservoir.heat-transfer': '12 W/m2K',
    'reservoir.steel-mass': '25 kg',
    'site.coldest-start': '20 °C',
  }

  test.each([...taken].filter(([path]) => told.has(path)))('%s is %s', (path, value) =>
    expect(words[path] ?? told.get(path)).toBe(value),
  )

  test('most of them are noted as assumptions when they are taken', () =>
    expect([...taken.keys()].filter((path) => told.has(path)).length).toBeGreaterThan(25))

  test('what is noted as taken by default is told, where the file has a key for it', () => {
    const keyless = ['other-heat-transfer', 'site.ground.rolling-resistance']
    expect([...taken.keys()].filter((path) => !told.has(path) && !keyless.includes(path))).toEqual([])
  })

  test('a sprocket on the motor turns as fast as it', () => {
    expect(told.get('travel.final-drive-ratio')).toBe(String(machine.travel.finalDriveRatio))
  })

  test('the shop’s', () => {
    const { shop } = read.loaded
    const of = new Map(defaultsIn((jsonSchemas() as unknown as { readonly shop: Node }).shop))
    expect(of.get('quote-valid')).toBe(`${shop.quoteValidDays} days`)
    expect([of.get('units'), of.get('currency')]).toEqual([shop.units, shop.currency])
    expect(of.get('limits.share-of-value')).toBe(`${100 * shop.limits.shareOfValue} %`)
    expect(of.get('limits.payback')).toBe(String(shop.limits.paybackYears))
    expect(of.get('limits.least-gain')).toBe(`${100 * shop.limits.leastGain} %`)
  })
})

test('every schema comment is only a comment', () => {
  for (const file of files) expect(parse(readFileSync(join(ROOT, file), 'utf8'))).toHaveProperty('format', 1)
})
