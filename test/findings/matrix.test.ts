/**
 * What breaks what: the knock-on matrix of the trade reference (section 3, common practice, no source), row by row. Each
 * component that must be looked at is a check, or stands here with the reason why it is not one.
 */
import { describe, expect, test } from 'vitest'
import { allChecks } from '../../src/findings/all-checks.ts'

interface Row {
  readonly component: string
  /** Checks that look at it, whichever way of changing brings it up. */
  readonly checks: readonly string[]
  /** What of the row is no check, and why. */
  readonly not: { readonly [what: string]: string }
}

const matrix: readonly Row[] = [
  { component: 'Engine power at relief (corner)', checks: ['engine-power'], not: {} },
  {
    component: 'Pump shaft/coupling/through-torque',
    checks: ['shaft-torque', 'coupling-torque', 'pump-speed', 'pump-pressure'],
    not: {},
  },
  {
    component: 'Mount flange, overhang bracket',
    checks: ['pump-mount', 'pump-shaft', 'pump-rotation', 'pump-ports', 'pump-room'],
    not: {
      'overhang bracket': 'no reading of the format says how a long pump is held; the length is held against the room',
    },
  },
  {
    component: 'Suction hose, strainer, tank outlet',
    checks: ['inlet-pressure', 'inlet-pressure-cold', 'strainer-flow', 'line-velocity'],
    not: { 'tank outlet': 'its bore is not read; the suction line with its entrance stands for it' },
  },
  { component: 'Pressure hoses & fittings', checks: ['line-velocity', 'line-pressure', 'port-pressure'], not: {} },
  { component: 'Main relief (flow capacity & set)', checks: ['relief-capacity'], not: {} },
  {
    component: 'Control valve nominal flow, standby loss',
    checks: ['valve-flow', 'valve-pressure', 'standby-loss'],
    not: {},
  },
  {
    component: 'Centre swivel bore/seals/spare port',
    checks: ['swivel-velocity', 'swivel-pressure', 'swivel-passages'],
    not: { seals: 'wear of seals is a fault found by capping passages, not a limit that a change passes' },
  },
  {
    component: 'Motor max rpm / flow / case pressure',
    checks: ['motor-speed', 'motor-flow', 'motor-pressure', 'motor-return-pressure'],
    not: { 'preferred direction in high speed': 'no published figure; the technician checks it, motor by motor' },
  },
  {
    component: 'Counterbalance/brake valve, park brake',
    checks: ['counterbalance', 'holding-brake', 'kinetic-energy', 'braking-class'],
    not: {
      'brake torque': 'not on any plate; braking and stopping are tested at the new speed, and said to be a condition',
    },
  },
  {
    component: 'Return line, filter, cooler core flow',
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
    checks: ['reservoir-dwell', 'oil-temperature', 'oil-viscosity-hot', 'oil-viscosity-cold', 'fan-current'],
    not: {},
  },
  {
    component: 'Cylinders/boom/swing (all faster)',
    checks: ['everything-faster', 'attachment-flow', 'attachment-pressure', 'coupler-flow'],
    not: {
      'cushions and anti-cavitation': 'set for the old flow; nothing of them is read, the finding says what to look at',
    },
  },
  {
    component: 'Track, rollers, tension, stability, ROPS basis',
    checks: ['maker-speed', 'turn-start', 'grade-start', 'pull-lost', 'drift'],
    not: {
      'rollers and tension': 'a state of the machine, seen and set by hand',
      'stability and ROPS': "the maker's business at another speed: consent is a condition of every faster machine",
    },
  },
  {
    component: 'Plates, manual, decals, approval',
    checks: ['maker-speed'],
    not: { 'plates and decals': 'paper, not a limit; consent is a reason of the answer (maker-consent)' },
  },
]

const ids = new Set(allChecks.map(({ id }) => id))

describe('knock-on matrix', () => {
  for (const { component, checks, not } of matrix)
    test(component, () => {
      expect(checks.length).toBeGreaterThan(0)
      expect(checks.filter((id) => !ids.has(id))).toEqual([])
      for (const reason of Object.values(not)) expect(reason.length).toBeGreaterThan(20)
    })

  test('every check answers for a row', () => {
    const named = new Set(matrix.flatMap(({ checks }) => checks))
    expect([...ids].filter((id) => !named.has(id))).toEqual([])
  })
})
