/**
 * What breaks what: the knock-on matrix of the trade reference (section 3, common practice, no source), cross by cross. For
 * each cross the change is made on a demo machine, and a check of the row must see it: its value or its limit moves by a
 * thousandth or more. What of a row is no check stands here with the reason why.
 */
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import type { Finding } from '../../src/evaluation.ts'
import { allChecks } from '../../src/findings/all-checks.ts'
import type { Json } from '../../src/question.ts'
import { loadQuestions } from '../../src/shell/load.ts'

const newCircuit = (pump: Json): Json => ({
  loop: 'open',
  pump,
  relief: { setting: '140 bar', 'rated-flow': '40 L/min' },
  valve: { 'rated-flow': '40 L/min', 'drop-at-rated-flow': '12 bar', 'max-pressure': '250 bar' },
  lines: {
    suction: { hose: -16, kind: 'suction hose', length: '0.6 m' },
    pressure: { hose: -8, kind: '2-wire hose', length: '1 m' },
    return: { hose: -12, kind: 'return hose', length: '1.3 m' },
  },
  drives: 'no track',
  works: ['attachment'],
})

/** The ways of changing, each as a patch over the machine of a demo scenario. */
const WAYS: { readonly [way: string]: { readonly on: string; readonly changes: { readonly [key: string]: Json } } } = {
  'bigger pump': {
    on: 'two-speed-travel.yaml',
    changes: {
      circuits: {
        left: { pump: { part: 'tandem-r-140', section: 1 } },
        right: { pump: { part: 'tandem-r-140', section: 2 } },
      },
    },
  },
  'faster engine': { on: 'two-speed-travel.yaml', changes: { engine: { 'rated-speed': '3000 rpm' } } },
  'smaller motors': { on: 'two-speed-travel.yaml', changes: { travel: { motor: { displacement: '390 cm3/rev' } } } },
  'two-speed motors': { on: 'two-speed-travel.yaml', changes: { travel: { motor: { part: 'motor-2s-490' } } } },
  'bigger sprocket': { on: 'two-speed-travel.yaml', changes: { travel: { sprocket: { 'pitch-diameter': '350 mm' } } } },
  // Flow combining has no word of its own in the format: the nearest is one section that gets all tracks.
  'flow combined': {
    on: 'two-speed-travel.yaml',
    changes: { circuits: { left: { drives: 'both tracks' }, right: { drives: 'no track' } } },
  },
  'second pump': {
    on: 'twice-as-fast.yaml',
    changes: {
      circuits: {
        main: { pump: { part: 'tandem-r-055', section: 1 } },
        extra: newCircuit({ part: 'tandem-r-055', section: 2 }),
      },
    },
  },
}

const FLOW = ['bigger pump', 'faster engine']
const EVERY_FLOW = [...FLOW, 'flow combined']
const TRAVEL = [...FLOW, 'smaller motors', 'two-speed motors', 'bigger sprocket', 'flow combined']

interface Row {
  readonly component: string
  /** Ways with a cross in this row. */
  readonly ways: readonly string[]
  /** Checks that look at it. */
  readonly checks: readonly string[]
  /** What of the row is no check, and why; a way of the table that is not among `ways` stands here too. */
  readonly not: { readonly [what: string]: string }
}

const matrix: readonly Row[] = [
  {
    component: 'Engine power at relief (corner)',
    ways: [...EVERY_FLOW, 'second pump'],
    checks: ['engine-power'],
    not: {},
  },
  {
    component: 'Pump shaft/coupling/through-torque',
    ways: [...FLOW, 'second pump'],
    checks: ['shaft-torque', 'coupling-torque', 'pump-speed', 'pump-pressure'],
    not: {},
  },
  {
    component: 'Mount flange, overhang bracket',
    ways: ['bigger pump', 'second pump'],
    checks: ['pump-mount', 'pump-shaft', 'pump-rotation', 'pump-ports', 'pump-room'],
    not: {
      'overhang bracket': 'no reading of the format says how a long pump is held; the length is held against the room',
    },
  },
  {
    component: 'Suction hose, strainer, tank outlet',
    ways: [...FLOW, 'second pump'],
    checks: ['inlet-pressure', 'inlet-pressure-cold', 'strainer-flow', 'line-velocity'],
    not: { 'tank outlet': 'its bore is not read; the suction line with its entrance stands for it' },
  },
  {
    component: 'Pressure hoses & fittings',
    ways: [...EVERY_FLOW, 'second pump'],
    checks: ['line-velocity', 'line-pressure', 'port-pressure'],
    not: {},
  },
  {
    component: 'Main relief (flow capacity & set)',
    ways: [...FLOW, 'second pump'],
    checks: ['relief-capacity'],
    not: {
      'flow combined':
        "whether two sections meet over one relief is the valve maker's business; the format has no such valve",
    },
  },
  {
    component: 'Control valve nominal flow, standby loss',
    ways: [...EVERY_FLOW, 'second pump'],
    checks: ['valve-flow', 'valve-pressure', 'standby-loss'],
    not: {},
  },
  {
    component: 'Centre swivel bore/seals/spare port',
    ways: [...EVERY_FLOW, 'two-speed motors'],
    checks: ['swivel-velocity', 'swivel-pressure', 'swivel-passages'],
    not: { seals: 'wear of seals is a fault found by capping passages, not a limit that a change passes' },
  },
  {
    component: 'Motor max rpm / flow / case pressure',
    ways: [...EVERY_FLOW, 'smaller motors', 'two-speed motors'],
    checks: ['motor-speed', 'motor-flow', 'motor-pressure', 'motor-return-pressure'],
    not: { 'preferred direction in high speed': 'no published figure; the technician checks it, motor by motor' },
  },
  {
    component: 'Counterbalance/brake valve, park brake',
    ways: TRAVEL,
    checks: ['counterbalance', 'holding-brake', 'kinetic-energy', 'braking-class'],
    not: {
      'brake torque': 'not on any plate; braking and stopping are tested at the new speed, and said to be a condition',
    },
  },
  {
    component: 'Return line, filter, cooler core flow',
    ways: [...EVERY_FLOW, 'second pump'],
    checks: [
      'line-velocity',
      'filter-flow',
      'filter-bypass-cold',
      'filter-missing',
      'cooler-pressure',
      'cooler-bypass-cold',
    ],
    not: {},
  },
  {
    component: 'Tank dwell, heat, cooler, alternator',
    ways: [...EVERY_FLOW, 'two-speed motors', 'second pump'],
    checks: ['reservoir-dwell', 'oil-temperature', 'oil-viscosity-hot', 'oil-viscosity-cold', 'fan-current'],
    not: {},
  },
  {
    component: 'Cylinders/boom/swing (all faster)',
    ways: FLOW,
    checks: ['everything-faster', 'attachment-flow', 'attachment-pressure', 'coupler-flow'],
    not: {
      'cushions and anti-cavitation': 'set for the old flow; nothing of them is read, the finding says what to look at',
    },
  },
  {
    component: 'Track, rollers, tension, stability, ROPS basis',
    ways: TRAVEL,
    checks: ['maker-speed', 'turn-start', 'grade-start', 'pull-lost', 'drift'],
    not: {
      'rollers and tension': 'a state of the machine, seen and set by hand',
      'stability and ROPS': "the maker's business at another speed: consent is a condition of every faster machine",
    },
  },
  {
    component: 'Plates, manual, decals, approval',
    ways: TRAVEL,
    checks: ['maker-speed'],
    not: {
      'plates and decals': 'paper, not a limit; consent is a reason of the answer (maker-consent)',
      'second pump': 'it leaves the travel speed alone, so that no figure passes a limit of the maker',
    },
  },
]

const ids = new Set(allChecks.map(({ id }) => id))

const apart = (one: Finding['value'], other: Finding['value']): boolean =>
  typeof one === 'number' && typeof other === 'number'
    ? Math.abs(one - other) > 1e-3 * Math.max(Math.abs(one), Math.abs(other))
    : one !== other

/** Checks whose figure a way moves, on the machine as asked, before anything is put right. */
const seen = new Map<string, ReadonlySet<string>>()
const seenBy = (way: string): ReadonlySet<string> => {
  const known = seen.get(way)
  if (known !== undefined) return known
  const { on, changes } = WAYS[way] as (typeof WAYS)[string]
  const read = loadQuestions(on, join(import.meta.dirname, '../../scenarios'))[0]?.read
  if (read === undefined || 'problems' in read) throw new Error(`${on} is not read`)
  const scenario = { ...read.loaded.scenario, options: [{ name: way, why: null, reach: null, changes }] }
  const result = evaluate({ ...read.loaded, scenario }, { ranges: false })
  const before = new Map(result.baseline.findings.map((finding) => [finding.id, finding]))
  const moved = (result.options[0]?.asAskedOnly.findings ?? []).filter((finding) => {
    const was = before.get(finding.id)
    return was === undefined || apart(was.value, finding.value) || apart(was.limit, finding.limit)
  })
  const checks = new Set(moved.map(({ check }) => check))
  seen.set(way, checks)
  return checks
}

describe('knock-on matrix', () => {
  for (const { component, ways, checks, not } of matrix)
    describe(component, () => {
      test.each(ways)('%s', (way) => expect(checks.filter((id) => seenBy(way).has(id))).not.toEqual([]))

      test('names checks that exist, and reasons for the rest', () => {
        expect(checks.filter((id) => !ids.has(id))).toEqual([])
        for (const reason of Object.values(not)) expect(reason.length).toBeGreaterThan(20)
      })
    })

  test('every check answers for a row', () => {
    const named = new Set(matrix.flatMap(({ checks }) => checks))
    expect([...ids].filter((id) => !named.has(id))).toEqual([])
  })

  test('a change of the sprocket leaves what the pump feeds alone', () => {
    for (const id of ['relief-capacity', 'coupling-torque', 'pump-mount', 'standby-loss'])
      expect(seenBy('bigger sprocket').has(id), id).toBe(false)
  })
})
