/**
 * Parts lists of any size on machines of the demo: sizes, ratings and prices run on evenly, or are scattered about that at random.
 * All invented.
 */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import type { Loaded } from '../../src/loaded.ts'
import { readAll } from '../../src/scenario/read.ts'

const ROOT = new URL('../../scenarios/', import.meta.url)
const textOf = (file: string): string => readFileSync(new URL(file, ROOT), 'utf8')

export interface Sizes {
  readonly pumps: number
  readonly motors: number
  readonly hoses: number
  readonly coolers: number
  readonly swivels: number
  readonly sprockets: number
  readonly oils: number
}

const times = <T>(count: number, make: (i: number) => T): readonly T[] =>
  Array.from({ length: count }, (_, i) => make(i))
const id = (kind: string, i: number): string => `${kind}-${String(i + 1).padStart(2, '0')}`
const part = (kind: string, i: number, name: string, figures: object, price: number) => ({
  id: id(name, i),
  kind,
  name: `${name} ${i + 1}`,
  figures,
  price: Math.round(price * 100) / 100,
  stock: 1,
})

const DASHES = [-4, -5, -6, -8, -10, -12, -16] as const
const SUCTION = [-12, -16, -20, -24] as const
const THREADS = ['G 1/4', 'G 3/8', 'G 1/2', 'G 3/4', 'G 1', 'G 1-1/4', 'G 1-1/2'] as const

const pumps = (count: number) =>
  times(count, (i) => {
    const displacement = Math.round((5 + (9.75 * i) / Math.max(1, count - 1)) * 100) / 100
    return part(
      'pump',
      i,
      'pump',
      {
        displacement: `${displacement} cm3/rev`,
        'max-pressure': `${210 + 10 * (i % 4)} bar`,
        'max-speed': '4000 rpm',
        'min-inlet-pressure': '0.7 bar',
        efficiency: {
          volumetric: '93 %',
          hydromechanical: '88 %',
          at: { pressure: '160 bar', speed: '3600 rpm', viscosity: '32 cSt' },
        },
        mount: {
          flange: 'SAE A 2-bolt',
          shaft: i % 5 === 4 ? '11T 16/32 DP' : '9T 16/32 DP',
          rotation: i % 7 === 6 ? 'counterclockwise' : 'clockwise',
          length: `${Math.round(98 + (58.5 * i) / Math.max(1, count - 1))} mm`,
        },
        ports: { inlet: 'G 3/4', outlet: 'G 1/2' },
      },
      180 + 6 * i + 17 * (i % 3),
    )
  })

/** For machines whose two tracks have a section each. */
const tandems = (count: number) =>
  times(count, (i) => {
    const section = {
      displacement: `${Math.round((4 + (7 * i) / Math.max(1, count - 1)) * 100) / 100} cm3/rev`,
      'max-pressure': `${210 + 10 * (i % 4)} bar`,
      'max-speed': '3500 rpm',
      'min-inlet-pressure': '0.7 bar',
      efficiency: {
        volumetric: '93 %',
        hydromechanical: '88 %',
        at: { pressure: '140 bar', speed: '2800 rpm', viscosity: '32 cSt' },
      },
      ports: { inlet: 'G 1', outlet: 'G 1/2' },
    }
    return part(
      'tandem pump',
      i,
      'tandem',
      {
        sections: [section, section],
        mount: {
          flange: 'rectangular 4-bolt 36.5 mm',
          shaft: '1:8 taper 17 mm',
          rotation: i % 7 === 6 ? 'counterclockwise' : 'clockwise',
          length: `${140 + i} mm`,
        },
        'max-shaft-torque': '130 N·m',
      },
      330 + 9 * i + 17 * (i % 3),
    )
  })

const motors = (count: number) =>
  times(count, (i) => {
    const displacement = 160 + 8 * i
    return part(
      'motor',
      i,
      'motor',
      {
        displacement: `${displacement} cm3/rev`,
        ...(i % 8 === 7 ? { 'second-displacement': `${displacement / 2} cm3/rev` } : {}),
        'max-pressure': `${175 + 15 * (i % 3)} bar`,
        'max-flow': '75 L/min',
        'max-speed': '400 rpm',
        'max-return-pressure': '70 bar',
        efficiency: {
          volumetric: '93 %',
          hydromechanical: '85 %',
          at: { pressure: '100 bar', speed: '60 rpm', viscosity: '32 cSt' },
        },
        mount: { flange: '4-bolt 82.5 mm', shaft: '32 mm keyed' },
        ports: { work: 'G 1/2' },
      },
      300 + 4 * i + 23 * (i % 4) + (i % 8 === 7 ? 330 : 0),
    )
  })

const hoses = (count: number) => [
  ...times(count, (i) => {
    const dash = DASHES[i % DASHES.length] ?? -8
    const kind = i < DASHES.length ? '2-wire hose' : '1-wire hose'
    const rated = kind === '2-wire hose' ? 280 : 170
    return part('hose', i, 'hose', { hose: dash, kind, 'max-pressure': `${rated} bar` }, -1.4 * dash - (i >= 7 ? 2 : 0))
  }),
  ...times(count, (i) => {
    const dash = SUCTION[i % SUCTION.length] ?? -16
    return part(
      'hose',
      i,
      'suction',
      { hose: dash, kind: 'suction hose', 'max-pressure': '17 bar' },
      8 - 0.9 * dash + i,
    )
  }),
]

const fittings = [...DASHES, -20, -24].flatMap((dash) => THREADS.map((end, i) => ({ dash, end, i })))

const partsOf = (sizes: Sizes) => [
  ...pumps(sizes.pumps),
  ...motors(sizes.motors),
  ...hoses(sizes.hoses),
  ...times(sizes.coolers, (i) =>
    part(
      'cooler',
      i,
      'cooler',
      {
        place: 'return',
        capacity: `${30 + 9 * i} W/K`,
        'at-flow': '30 L/min',
        drop: '0.4 bar',
        'max-pressure': '16 bar',
        bypass: '4.5 bar',
        'fan-current': '0 A',
      },
      260 + 31 * i,
    ),
  ),
  ...times(sizes.swivels, (i) =>
    part(
      'swivel',
      i,
      'swivel',
      { bore: `${7 + i} mm`, passages: 7, 'spare-passages': 1, 'max-pressure': '250 bar', ports: { work: 'G 1/4' } },
      520 + 60 * i,
    ),
  ),
  ...times(sizes.sprockets, (i) =>
    part('sprocket', i, 'sprocket', { 'pitch-diameter': `${285 + 7 * i} mm` }, 160 + 9 * i),
  ),
  ...times(sizes.oils, (i) =>
    part(
      'oil',
      i,
      'oil',
      { 'viscosity-at-40C': `${30 + 12 * i} cSt`, 'viscosity-at-100C': `${5.2 + 1.3 * i} cSt` },
      4.6 + 0.3 * i,
    ),
  ),
  part('oil', 0, 'oil-like-ours', { grade: 'ISO VG 46' }, 4.8),
  ...times(5, (i) =>
    part(
      'valve',
      i,
      'valve',
      {
        'rated-flow': `${40 + 15 * i} L/min`,
        'drop-at-rated-flow': '12 bar',
        'max-pressure': '250 bar',
        ports: { inlet: 'G 1/2', outlet: 'G 1/2', work: 'G 3/8' },
      },
      420 + 40 * i,
    ),
  ).slice(0, sizes.swivels > 2 ? 5 : 1),
  ...times(5, (i) => part('relief', i, 'relief', { 'rated-flow': `${40 + 20 * i} L/min` }, 58 + 11 * i)),
  ...times(6, (i) =>
    part('coupling', i, 'coupling', { type: 'jaw', 'rated-torque': `${60 + 40 * i} N·m` }, 45 + 14 * i),
  ),
  ...fittings.map(({ dash, end, i }, n) => part('fitting', n, 'end', { hose: dash, end }, 3 - 0.4 * dash + i)),
]

type ListPart = ReturnType<typeof part>

/** Figures that a list scatters. */
const SCATTERED = ['displacement', 'second-displacement', 'capacity', 'rated-flow', 'pitch-diameter'] as const

/** Prices from half to nearly twice, sizes by an eighth up or down, and a fifth of the parts not in stock. */
const scattered = (parts: readonly ListPart[], seed: number): readonly ListPart[] => {
  const draws = fc.sample(fc.noBias(fc.integer({ min: 0, max: 1000 })), { seed, numRuns: 8 * parts.length })
  let drawn = 0
  const between = (low: number, high: number): number => low + ((high - low) * (draws[drawn++] ?? 0)) / 1000
  return parts.map((one) => {
    const figures: { [key: string]: unknown } = { ...one.figures }
    for (const key of SCATTERED) {
      const text = figures[key]
      if (typeof text !== 'string') continue
      const value = Number.parseFloat(text) * between(0.88, 1.12)
      figures[key] = text.replace(/^[\d.]+/u, String(Math.round(value * 100) / 100))
    }
    const price = Math.round(one.price * between(0.5, 1.8) * 100) / 100
    return { ...one, figures, price, stock: between(0, 1) < 0.8 ? 1 : 0 }
  })
}

export interface ListOn {
  readonly scenario: string
  readonly machine: string
  /** Its pumps are sections of a tandem, and the demo's own lists are read as well. */
  readonly tandem: boolean
}

export const SLOW: ListOn = { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false }
export const TWO_TRACKS: readonly ListOn[] = [
  { scenario: 'slower-every-season.yaml', machine: 'machines/alder-10.yaml', tandem: true },
  { scenario: 'two-speed-travel.yaml', machine: 'machines/hornbeam-18.yaml', tandem: true },
]

/**
 * The scenario of a machine, with another wish, on such a list.
 * @param seed of what is scattered; null: all runs on evenly
 */
export const loadedWith = (
  sizes: Sizes,
  speed: string,
  { scenario: file, machine, tandem }: ListOn = SLOW,
  seed: number | null = null,
): Loaded => {
  const scenario = textOf(file)
    .replace(/options:[\s\S]*$/u, '')
    .replace(/travel-speed: [\d.]+ km\/h/u, `travel-speed: ${speed}`)
  const even = [...partsOf(sizes), ...(tandem ? tandems(sizes.pumps) : [])]
  const parts = JSON.stringify({ format: 1, parts: seed === null ? even : scattered(even, seed) })
  const demo = tandem ? ['shop/parts-pumps.yaml', 'shop/parts-motors.yaml'] : []
  const read = readAll(
    { file, text: scenario },
    { file: machine, text: textOf(machine) },
    [
      { file: 'shop/labour.yaml', text: textOf('shop/labour.yaml').replace(/special-order:[\s\S]*$/u, '') },
      { file: 'shop/parts.yaml', text: parts },
      ...demo.map((list) => ({ file: list, text: textOf(list) })),
      { file: 'shop/shop.yaml', text: textOf('shop/shop.yaml') },
    ],
    'shop',
  )
  if ('problems' in read) throw new Error(read.problems.map(({ message }) => message).join('; '))
  return read.loaded
}
