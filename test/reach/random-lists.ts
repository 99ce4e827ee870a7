/**
 * Small parts lists at random, on machines of the demo: few enough combinations to look at every one. Figures, prices and
 * stock are drawn from short lists, so that sizes meet, prices tie, parts do not fit and lists lack what is needed.
 */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import type { Loaded } from '../../src/loaded.ts'
import { readAll } from '../../src/scenario/read.ts'

const ROOT = new URL('../../scenarios/', import.meta.url)
const textOf = (file: string): string => readFileSync(new URL(file, ROOT), 'utf8')

export interface Base {
  readonly scenario: string
  readonly machine: string
  readonly tandem: boolean
  /**
   * An attachment is wanted of a machine on which no circuit works one, the one that drives does, that one and one of its own
   * do, two of its own do, those of both tracks do, or that of the left track does, where each track has a pump of its own.
   */
  readonly attachment?:
    | 'no circuit'
    | 'driving circuit'
    | 'two circuits'
    | 'two of its own'
    | 'both tracks'
    | 'left track'
  /** Cooler oil is wanted besides. */
  readonly oil?: true
  /** It has no holding brake: nothing makes it faster. */
  readonly brakeless?: true
  /** Its pump, its pressure hose and its room are past their limits already: others may be as far. */
  readonly overrun?: true
  /** Hot air: what is added to the oil's heat is soon too much. */
  readonly hotAir?: true
  /** More speed is wanted besides, of a machine whose sides differ: their reliefs were read one bar apart. */
  readonly faster?: true
}

export const BASES: readonly Base[] = [
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false },
  { scenario: 'two-speed-travel.yaml', machine: 'machines/hornbeam-18.yaml', tandem: true },
  { scenario: 'broom-for-the-loader.yaml', machine: 'machines/plover-12.yaml', tandem: false },
  { scenario: 'too-hot-to-touch.yaml', machine: 'machines/alder-10.yaml', tandem: true },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, oil: true },
  { scenario: 'too-hot-to-touch.yaml', machine: 'machines/alder-10.yaml', tandem: true, faster: true },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, attachment: 'no circuit' },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, attachment: 'driving circuit' },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, attachment: 'two circuits' },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, attachment: 'two of its own' },
  { scenario: 'two-speed-travel.yaml', machine: 'machines/hornbeam-18.yaml', tandem: true, attachment: 'both tracks' },
  { scenario: 'two-speed-travel.yaml', machine: 'machines/hornbeam-18.yaml', tandem: false, attachment: 'left track' },
]

/** Of these few lists reach anything, or none: what matters is that nothing is cut that would. */
export const HARD_BASES: readonly Base[] = [
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, brakeless: true },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, hotAir: true },
  { scenario: 'two-speed-travel.yaml', machine: 'machines/hornbeam-18.yaml', tandem: true, hotAir: true },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, overrun: true },
  { scenario: 'twice-as-fast.yaml', machine: 'machines/linnet-10.yaml', tandem: false, overrun: true, oil: true },
]

const singlePump = (displacement: string): string =>
  `{displacement: ${displacement}, max-pressure: 230 bar, max-speed: 4000 rpm, min-inlet-pressure: 0.7 bar, ports: {inlet: G 3/4, outlet: G 1/2}, ` +
  'efficiency: {volumetric: 93 %, hydromechanical: 88 %, at: {pressure: 160 bar, speed: 3600 rpm, viscosity: 32 cSt}}, ' +
  'mount: {flange: SAE A 2-bolt, shaft: 9T 16/32 DP, rotation: clockwise, length: 106 mm}}'

/** Circuits that work the attachment beside the one that drives, each with a pump of its own. */
const ownCircuit = (name: string, displacement: string, setting: string, suction: string): string => `
  ${name}:
    loop: open
    pump: ${singlePump(displacement)}
    coupling: {type: jaw, rated-torque: 60 N·m}
    relief: {setting: ${setting}, rated-flow: 50 L/min, override: 10 %}
    valve: {rated-flow: 40 L/min, drop-at-rated-flow: 14 bar, max-pressure: 210 bar,
            ports: {inlet: G 1/2, outlet: G 1/2, work: G 3/8}}
    lines:
      suction: ${suction}
      pressure: {hose: -8, kind: 2-wire hose, length: 1.2 m, elbows: 1, ends: [G 1/2, G 1/2]}
    drives: no track
    works: [attachment]
    auxiliary: {lines: {out: {hose: -6, kind: 2-wire hose, length: 1.8 m, elbows: 2}}, coupler: {flow: 30 L/min, drop: 4 bar}}`

const OWN_SUCTION = '{hose: -24, kind: suction hose, length: 0.6 m, elbows: 1, ends: [G 1, G 3/4]}'
const SECOND = ownCircuit('second', '6 cm3/rev', '120 bar', OWN_SUCTION)
/** Tools of both pump in one line. */
const THIRD = ownCircuit('third', '4.5 cm3/rev', '110 bar', '{same-as: second}')

/** The lists of these have single pumps for each of them. */
const isOfTwoPumps = ({ attachment }: Base): boolean => attachment === 'two circuits' || attachment === 'two of its own'

/** The machine with room for a tandem, and with an attachment on its circuit where that is asked for. */
const machineText = ({ machine, attachment, brakeless, overrun }: Base): string => {
  const asRead = textOf(machine)
  const asBuilt = overrun
    ? asRead
        .replace('max-speed: 4000 rpm', 'max-speed: 3600 rpm')
        .replace('room: {length: 150 mm (measured)}', 'room: {length: 100 mm (measured)}')
        .replace(
          'pressure: {hose: -8, kind: 2-wire hose,',
          'pressure: {hose: -8, kind: 2-wire hose, max-pressure: 120 bar,',
        )
    : asRead
  if (overrun && asBuilt.split('120 bar').length < 2) throw new Error('the machine has changed')
  const text = brakeless ? asBuilt.replace('brakes: {holding: yes', 'brakes: {holding: no') : asBuilt
  if (attachment === undefined) return text
  const roomy = text
    .replace('room: {length: 150 mm (measured)}', 'room: {length: 260 mm}')
    .replace(/net-power: \S+ kW/u, 'net-power: 15 kW')
    .replace('suction:  {hose: -16,', 'suction:  {hose: -24,')
    .replace('rated-torque: 60 N·m', 'rated-torque: 160 N·m')
    .replace('filter: {place: return, rated-flow: 60 L/min', 'filter: {place: return, rated-flow: 110 L/min')
  if (attachment === 'no circuit') return roomy
  /** What all of it returns passes the filter, and the engine carries two pumps: else few lists reach anything. */
  const strong = roomy
    .replace('net-power: 15 kW', 'net-power: 20 kW')
    .replace(/filter: \{place: return, rated-flow: \d+ L/u, 'filter: {place: return, rated-flow: 220 L')
    .replace(/swivel: \{bore: \d+ mm \(measured\)/u, 'swivel: {bore: 12 mm')
  if (attachment === 'two of its own') return strong.replace('\ntravel:', `${SECOND}${THIRD}\ntravel:`)
  const more =
    attachment === 'driving circuit'
      ? roomy
      : attachment === 'two circuits'
        ? strong.replace('\ntravel:', `${SECOND}\ntravel:`)
        : attachment === 'left track'
          ? strong.replaceAll(/pump: \{part: \S+, section: \d\}/gu, `pump: ${singlePump('7 cm3/rev')}`)
          : strong
  const hose = '{hose: -8, kind: 2-wire hose, length: 2.1 m, elbows: 2}'
  return more.replace(
    attachment === 'left track' ? /\n( +)works: \[implements\]/u : /\n( +)works: \[implements\]/gu,
    (_, indent: string) =>
      `\n${indent}works: [implements, attachment]\n${indent}auxiliary: {lines: {out: ${hose}, back: ${hose}}, coupler: {flow: 30 L/min, drop: 4 bar}}`,
  )
}

type Figures = { readonly [key: string]: unknown }

export interface RandomPart {
  readonly kind: string
  readonly figures: Figures
  readonly price: number | null
  readonly holds?: readonly { readonly part: string; readonly quantity: number }[]
}

const one = <T>(...values: readonly T[]) => fc.constantFrom(...values)
const price = (...values: readonly number[]) => fc.oneof({ weight: 12, arbitrary: one(...values) }, fc.constant(null))
const some = (part: fc.Arbitrary<RandomPart>, most: number, least = 0) =>
  fc.array(part, { minLength: least, maxLength: most })

const anyMount = fc.record({
  flange: one('SAE A 2-bolt', 'SAE A 2-bolt', 'SAE A 2-bolt', 'flange X'),
  shaft: one('9T 16/32 DP', '9T 16/32 DP', '11T 16/32 DP'),
  rotation: one('clockwise', 'clockwise', 'clockwise', 'counterclockwise'),
  length: one('106 mm', '112 mm', '120 mm', '170 mm'),
})
/** Most go on as they are: else few lists reach anything. */
const mount = fc.oneof(
  {
    weight: 2,
    arbitrary: one({ flange: 'SAE A 2-bolt', shaft: '9T 16/32 DP', rotation: 'clockwise', length: '112 mm' }),
  },
  { weight: 1, arbitrary: anyMount },
)

const section = fc.record({
  displacement: one('6 cm3/rev', '7 cm3/rev', '7.2 cm3/rev', '8 cm3/rev', '9 cm3/rev', '12 cm3/rev', '16 cm3/rev'),
  'max-pressure': one('230 bar', '240 bar', '240 bar', '160 bar'),
  'max-speed': one('4000 rpm', '4000 rpm', '4000 rpm', '3000 rpm'),
  'min-inlet-pressure': one('0.7 bar'),
  efficiency: one({
    volumetric: '93 %',
    hydromechanical: '88 %',
    at: { pressure: '160 bar', speed: '3000 rpm', viscosity: '32 cSt' },
  }),
  ports: one(
    { inlet: 'G 3/4', outlet: 'G 1/2' },
    { inlet: 'G 1', outlet: 'G 1/2' },
    { inlet: 'ORB -12', outlet: 'ORB -8' },
  ),
})

const pump = fc
  .tuple(section, mount, price(150, 200, 200, 260))
  .map(([figures, on, cost]): RandomPart => ({ kind: 'pump', figures: { ...figures, mount: on }, price: cost }))

const tandemOf = (sections: 2 | 3) =>
  fc.tuple(section, mount, price(300, 420, 520), fc.option(one('5 cm3/rev', '8 cm3/rev'), { freq: 1 })).map(
    ([{ displacement, ...figures }, on, cost, other]): RandomPart => ({
      kind: 'tandem pump',
      figures: {
        sections: [
          ...Array.from({ length: sections - 1 }, () => ({ ...figures, displacement })),
          { ...figures, displacement: other ?? displacement },
        ],
        mount: { ...on, flange: on.flange === 'flange X' ? 'flange X' : 'SAE A 2-bolt', length: '210 mm' },
      },
      price: cost,
    }),
  )
const tandem = tandemOf(2)

const MOTOR_MOUNTS: { readonly [machine: string]: Figures } = {
  'machines/linnet-10.yaml': { flange: '4-bolt 82.5 mm', shaft: '32 mm keyed' },
  'machines/alder-10.yaml': { flange: '4-bolt 82.5 mm', shaft: '32 mm keyed' },
  'machines/hornbeam-18.yaml': { flange: 'wheel mount 125 mm', shaft: '1:10 taper 35 mm' },
}

const motorFor = (machine: string) =>
  fc
    .record({
      displacement: one(200, 250, 305, 310, 400, 490),
      second: one(false, false, true),
      'max-pressure': one('210 bar', '215 bar', '170 bar'),
      'max-flow': one('75 L/min', '20 L/min'),
      'max-speed': one('480 rpm', '480 rpm', '90 rpm'),
      price: price(250, 320, 400),
    })
    .map(
      ({ displacement, second, price: cost, ...figures }): RandomPart => ({
        kind: 'motor',
        figures: {
          ...figures,
          displacement: `${displacement} cm3/rev`,
          ...(second ? { 'second-displacement': `${displacement / 2} cm3/rev` } : {}),
          'max-return-pressure': '70 bar',
          efficiency: {
            volumetric: '93 %',
            hydromechanical: '85 %',
            at: { pressure: '100 bar', speed: '60 rpm', viscosity: '32 cSt' },
          },
          mount: MOTOR_MOUNTS[machine] ?? {},
          ports: { work: 'G 1/2' },
        },
        price: cost,
      }),
    )

const simple = (kind: string, figures: fc.Arbitrary<Figures>, ...prices: readonly number[]) =>
  fc.tuple(figures, price(...prices)).map(([of, cost]): RandomPart => ({ kind, figures: of, price: cost }))

const hose = simple(
  'hose',
  fc.oneof(
    fc
      .record({ hose: one(-5, -6, -8, -10, -12), kind: one('2-wire hose', '1-wire hose') })
      .map((of): Figures => ({ ...of, 'max-pressure': of.kind === '1-wire hose' ? '120 bar' : '275 bar' })),
    one<Figures>(
      { hose: -20, kind: 'suction hose', 'max-pressure': '17 bar' },
      { hose: -16, kind: 'suction hose', 'max-pressure': '17 bar' },
      { hose: -12, kind: 'return hose', 'max-pressure': '30 bar' },
    ),
  ),
  6,
  9,
  14,
)

const fitting = simple(
  'fitting',
  fc.record({ hose: one(-5, -6, -8, -10, -12, -16, -20), end: one('G 1/2', 'G 3/8', 'G 3/4', 'G 1', '24° 12L') }),
  4,
  7,
)
const adapter = simple(
  'adapter',
  one<Figures>(
    { from: 'G 1/2', to: 'G 3/4', bore: '12 mm' },
    { from: 'G 3/8', to: 'G 1/2', bore: '9 mm' },
    { from: 'ORB -8', to: 'G 1/2', bore: '11 mm' },
    { from: 'ORB -12', to: 'G 3/4', bore: '17 mm' },
    { from: 'flange X', to: 'SAE A 2-bolt' },
  ),
  9,
  45,
)
const valve = simple(
  'valve',
  fc.record({
    'rated-flow': one('30 L/min', '55 L/min', '80 L/min'),
    'drop-at-rated-flow': one('8 bar', '14 bar'),
    'max-pressure': one('250 bar', '160 bar'),
    ports: one({ inlet: 'G 1/2', outlet: 'G 3/4', work: 'G 3/8' }, { inlet: 'G 1/2', outlet: 'G 1/2', work: 'G 1/2' }),
  }),
  350,
  460,
)
const swivel = simple(
  'swivel',
  fc.record({
    bore: one('7 mm', '9 mm', '11 mm'),
    passages: one(6, 8),
    'spare-passages': one(0, 1),
    'max-pressure': one('210 bar', '160 bar'),
    ports: one({ work: 'G 1/4' }, { work: 'G 3/8' }),
  }),
  500,
  700,
)
const filter = simple(
  'filter',
  fc.record({
    place: one('return'),
    'rated-flow': one('40 L/min', '100 L/min'),
    drop: one('0.3 bar'),
    bypass: one('1.7 bar'),
  }),
  80,
  118,
)
const cooler = simple(
  'cooler',
  fc.record({
    place: one('return'),
    capacity: one('0.03 kW/K', '0.075 kW/K', '0.12 kW/K'),
    'at-flow': one('30 L/min'),
    drop: one('0.4 bar'),
    'max-pressure': one('16 bar'),
    'fan-current': one('0 A', '8 A'),
  }),
  300,
  420,
)
const oilPart = simple('oil', fc.record({ grade: one('ISO VG 32', 'ISO VG 46', 'ISO VG 68') }), 4, 5)
const relief = simple('relief', fc.record({ 'rated-flow': one('40 L/min', '60 L/min', '90 L/min') }), 60, 85)
const coupling = simple(
  'coupling',
  fc.record({ type: one('jaw'), 'rated-torque': one('95 N·m', '160 N·m', '325 N·m') }),
  60,
  90,
)
const sprocket = simple('sprocket', fc.record({ 'pitch-diameter': one('300 mm', '330 mm') }), 150, 190)

export interface RandomList {
  readonly parts: readonly RandomPart[]
  readonly orders: readonly string[]
  /** Wanted over what is reached today. */
  readonly more: number
  readonly budget: number
  /** How many of the parts go into a kit, and for how much less. */
  readonly kit: { readonly of: number; readonly share: number } | null
  readonly withoutHours: string | null
}

export const listFor = (base: Base): fc.Arbitrary<RandomList> => {
  const { machine, tandem: isTandem, attachment, oil, faster } = base
  const isOfTwoWishes = oil === true || faster === true
  // A second pump takes a tandem and a valve; where the attachment has pumps enough, those are what is drawn.
  const isSecond = attachment === 'no circuit' || attachment === 'driving circuit'
  const [two, three] = [some(tandem, isSecond ? 2 : 1, isSecond ? 1 : 0), some(tandemOf(3), 1)]
  const isOneMore = isSecond || attachment === 'left track'
  const tandems = isOneMore ? two : attachment === 'both tracks' ? three : fc.constant([])
  return fc.record({
    parts: fc
      .tuple(
        some(
          isTandem ? tandem : pump,
          isSecond ? 1 : isOfTwoPumps(base) ? 2 : 3,
          isSecond ? 0 : attachment === 'both tracks' ? 2 : 1,
        ),
        tandems,
        MOTOR_MOUNTS[machine] === undefined ? fc.constant([]) : some(motorFor(machine), 2),
        some(sprocket, 1),
        some(hose, 2),
        some(valve, isSecond ? 2 : 1, isSecond ? 1 : 0),
        some(swivel, 1),
        some(filter, 1),
        // Two wishes are met by few lists: those that want cooler oil besides have a cooler.
        some(cooler, isOfTwoWishes ? 2 : 1, isOfTwoWishes && base.overrun !== true ? 1 : 0),
        some(oilPart, 1),
        some(relief, 2),
        some(coupling, 3, 1),
        fc.array(fitting, { minLength: 6, maxLength: 18 }),
        some(adapter, 3),
      )
      .map((lists) => lists.flat()),
    orders: fc.subarray(['swivel', 'valve', 'motor', 'pump', 'tandem pump', 'hose', 'adapter', 'cooler', 'fitting']),
    // Half of the wishes are small: else few lists meet one.
    more: one(1.02, 1.03, 1.05, 1.1, 1.2, 1.4, 1.9),
    budget: one(900, 1600, 2600, 5000),
    kit: fc.option(fc.record({ of: one(1, 2, 3), share: one(0.5, 0.8) })),
    withoutHours: fc.option(one('replace hose', 'replace motor', 'replace relief', 'fit second pump'), { freq: 6 }),
  })
}

/** Parts of the demo list that machines name as their own. */
const OWN: readonly string[] = ['tandem-r-070', 'tandem-r-055']

const partsText = (
  { parts, orders, kit, withoutHours }: RandomList,
  base: Base,
  order: 'as is' | 'turned round',
): string => {
  const listed = parts.map((part, i) => ({
    id: `part-${String(i).padStart(2, '0')}-${part.kind.replace(' ', '-')}`,
    kind: part.kind,
    name: `${part.kind} ${i}`,
    figures: part.figures,
    ...(part.price === null ? {} : { price: part.price }),
    'lead-time': '5 days',
    stock: 1,
  }))
  const inKit = listed.filter(({ kind }) => ['filter', 'cooler', 'pump', 'hose'].includes(kind)).slice(0, kit?.of ?? 0)
  const alone = inKit.reduce((sum, part) => sum + ('price' in part ? (part.price as number) : 0), 0)
  const kits =
    kit === null || inKit.length === 0
      ? []
      : [
          {
            id: 'kit-1',
            kind: 'kit',
            name: 'Kit',
            holds: inKit.map(({ id }) => ({ part: id, quantity: 1 })),
            price: Math.round(alone * kit.share),
          },
        ]
  const own = base.tandem
    ? OWN.map((id) => ({
        id,
        kind: 'tandem pump',
        name: id,
        figures: {
          sections: [1, 2].map(() => ({
            displacement: id === 'tandem-r-055' ? '5.5 cm3/rev' : '7 cm3/rev',
            'max-pressure': '230 bar',
            'max-speed': '3500 rpm',
            'min-inlet-pressure': '0.7 bar',
            efficiency: {
              volumetric: '93 %',
              hydromechanical: '88 %',
              at: { pressure: '160 bar', speed: '3000 rpm', viscosity: '32 cSt' },
            },
            ports: { inlet: 'G 1', outlet: 'G 1/2' },
          })),
          mount: { flange: 'SAE A 2-bolt', shaft: '9T 16/32 DP', rotation: 'clockwise', length: '210 mm' },
        },
        price: 430,
      }))
    : []
  const all = [...listed, ...kits, ...own]
  const jobs = [
    ['replace pump', 2.5, 3.5, 5],
    ['fit second pump', 8, 11, 16],
    ['replace motor', 1.5, 2.2, 3.2],
    ['replace swivel', 5, 7, 10],
    ['replace valve', 2.5, 4, 6],
    ['replace relief', 0.5, 0.8, 1.5],
    ['replace coupling', 0.8, 1.2, 2],
    ['replace hose', 0.4, 0.7, 1.2],
    ['replace sprocket', 1.2, 1.8, 3],
    ['fit cooler', 4, 5, 7],
    ['fit filter', 1.5, 2.2, 3.5],
    ['fit shift line', 4.5, 6, 8.5],
    ['change oil', 0.8, 1.2, 2],
    ['test and record', 1.5, 2, 3],
  ] as const
  return JSON.stringify({
    format: 1,
    parts: order === 'as is' ? all : all.toReversed(),
    'special-order': orders.map((kind) => ({
      kind,
      allow: { low: 200, likely: 300, high: 500 },
      'lead-time': '30 days',
    })),
    labour: jobs
      .filter(([job]) => job !== withoutHours)
      .map(([job, low, likely, high]) => ({ job, hours: { low, likely, high } })),
  })
}

/** The scenario on such a list. */
export const loadedWith = (base: Base, list: RandomList, order: 'as is' | 'turned round' = 'as is'): Loaded => {
  const source = (file: string, text: string) => ({ file, text })
  const shop = textOf('shop/shop.yaml').replace('logo: mark.svg', '')
  const asWritten = textOf(base.scenario).replace(/options:[\s\S]*$/u, '')
  const scenario = base.hotAir ? asWritten.replace(/ambient: \d+ °C/u, 'ambient: 44 °C') : asWritten
  const read = readAll(
    source(base.scenario, scenario),
    source(base.machine, machineText(base)),
    [source('shop/parts.yaml', partsText(list, base, order)), source('shop/shop.yaml', shop)],
    'shop',
  )
  if ('problems' in read) throw new Error(read.problems.map(({ message }) => message).join('; '))
  return read.loaded
}
