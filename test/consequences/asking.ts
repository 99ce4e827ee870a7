/** Findings that ask, and the input of the remedies, for tests. */
import type { RemedyInput } from '../../src/consequences/remedy.ts'
import type { Finding } from '../../src/evaluation.ts'
import type { Machine } from '../../src/machine.ts'
import type { Shop } from '../../src/shop.ts'
import { figures } from '../fixtures/machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'

export const finding = (
  check: string,
  component: string,
  value: Finding['value'],
  limit: Finding['limit'] = 0,
): Finding => ({
  id: `${check}:${component}`,
  component,
  check,
  value,
  limit,
  unit: '',
  severity: 'change',
  existing: false,
  because: '',
  source: '',
  heading: `${check} is over`,
})

export const asking = (shop: Shop, findings: readonly Finding[], over: Partial<RemedyInput> = {}): RemedyInput => ({
  asking: findings,
  machine: wren(),
  before: wren(),
  shop,
  site: wrenSite,
  figures: figures(),
  steady: { averageHeatKw: 1.2, returnFlowLpm: 22, steadyOilC: 90 },
  targetOilC: 65,
  option: 'Bigger pump',
  done: new Set(),
  earlier: [],
  ...over,
})

export const withCircuit = (machine: Machine, change: Partial<Machine['circuits'][number]>): Machine => ({
  ...machine,
  circuits: machine.circuits.map((circuit) => ({ ...circuit, ...change })),
})

export const withPump = (machine: Machine, change: Partial<Machine['circuits'][number]['pump']>): Machine => ({
  ...machine,
  circuits: machine.circuits.map((circuit) => ({ ...circuit, pump: { ...circuit.pump, ...change } })),
})
