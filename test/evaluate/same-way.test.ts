/** Two options that are one way: told on the second, with all of its figures still there. */
import { expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { customerView } from '../../src/report/customer-view.ts'
import { shopView } from '../../src/report/shop-view.ts'
import { type Edit, SCENARIO, sample } from '../fixtures/fernhill.ts'

const OPTIONS: Edit = [
  SCENARIO,
  /\noptions:[\s\S]*$/u,
  `
options:
  - { name: Cooler, changes: { cooler: { part: cooler-s }, filter: { part: return-filter-s } } }
  - { name: Bigger pump, changes: { circuits: { main: { pump: { part: pump-a-158 } } } } }
  - { name: Filter and cooler, changes: { filter: { part: return-filter-s }, cooler: { part: cooler-s } } }
  - { name: Cooler alone, changes: { cooler: { part: cooler-s } } }
  - { name: The pump again, changes: { circuits: { main: { pump: { part: pump-a-158 } } } } }
  - { name: The pump and its plate, changes: { circuits: { main: { pump: { part: pump-a-158, max-speed: 3200 rpm } } } } }
`,
]
const result = evaluate(sample(OPTIONS), { ranges: false })

test('in any order of the keys, with consequences that are named after their option; one other figure is another way', () => {
  expect(result.options.map(({ sameAs }) => sameAs)).toEqual([null, null, 'Cooler', null, 'Bigger pump', null])
})

test('customer and shop are told, and neither loses a row', () => {
  const { rows } = customerView(result, { units: 'metric', paper: 'a4' }).ways
  const [cooler, , again] = rows.filter(({ name }) => result.options.some((option) => option.name === name))
  expect(again?.reasons[0]).toBe('The same changes for the same price as “Cooler”.')
  expect(again).toEqual({
    ...cooler,
    name: 'Filter and cooler',
    reasons: [again?.reasons[0], ...(cooler?.reasons ?? [])],
  })
  const warnings = shopView(result, { units: 'metric', paper: 'a4' }).warnings.list
  expect(warnings).toContain('“The pump again” makes the same changes for the same price as “Bigger pump”.')
})
