/** A reading that is a fault only by a figure that nobody read: the answer says so, up to the customer's copy. */
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { customerView } from '../../src/report/customer-view.ts'
import { type Edit, MACHINE, SCENARIO, sample } from '../fixtures/fernhill.ts'

const read = (what: string): Edit => [SCENARIO, /\nmeasured:[\s\S]*?\n(?=status:)/u, `\nmeasured: { ${what} }\n`]
const noDroop: Edit = [MACHINE, /\n {2}governor-droop: 6 %.*/u, '']
const resultOf = (...edits: readonly Edit[]) => evaluate(sample(...edits), { ranges: false })

describe('an engine read at 3,000 rpm without load', () => {
  // The default of the method, 8 % over 3,000 rpm, is 3,240 rpm: 3,000 is 7.4 % under it, and no fault by a droop of 0 to 5 %.
  const assumed = resultOf(read('engine-speed: 3000 rpm'), noDroop)

  test('is a fault by the default droop, and the answer rests on it', () => {
    expect(assumed.recommendation.faults.map(({ component }) => component)).toEqual(['engine'])
    expect(assumed.recommendation.faults[0]?.text).toContain('look up the maker')
    expect(assumed.restsOn).toEqual(['engine.governor-droop'])
    expect(assumed.recommendation.provisional).toBe(true)
  })

  test('as the customer is told', () => {
    const { answer } = customerView(assumed, { units: 'metric', paper: 'a4' })
    expect(answer.provisional).toBe(true)
  })

  test('is a fault for sure by a droop that is stated, and at 2,800 rpm by any', () => {
    const stated = resultOf(read('engine-speed: 3000 rpm'))
    expect(stated.recommendation.faults).toHaveLength(1)
    expect(stated.restsOn).toEqual([])
    const slow = resultOf(read('engine-speed: 2800 rpm'), noDroop)
    expect(slow.recommendation.faults).toHaveLength(1)
    expect(slow.restsOn).toEqual([])
  })
})

test('a relief is low against a setting that was assumed: the repair rests on that setting', () => {
  const setting: Edit = [MACHINE, 'setting: 155 bar', 'setting: 155 bar (assumed)']
  const low = resultOf(read('relief-pressure: 140 bar'), setting)
  expect(low.recommendation.faults.map(({ component }) => component)).toEqual(['circuits.main.relief'])
  expect(low.restsOn).toEqual(['circuits.main.relief.setting'])
  // What was read carries the figures; no fault, nothing rests on what was assumed.
  expect(resultOf(read('relief-pressure: 150 bar'), setting).restsOn).toEqual([])
})
