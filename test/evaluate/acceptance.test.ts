/** An `after:` block from the file to the result and the terminal. */
import { describe, expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { type Edit, SCENARIO, sample } from '../fixtures/fernhill.ts'

const after = (text: string): Edit => [SCENARIO, /\nstatus:/u, `\nafter: ${text}\nstatus:`]
const RUNS = 'runs: [{direction: forward, distance: 20 m, time: 24 s}, {direction: back, distance: 20 m, time: 25 s}]'

describe('after', () => {
  test('the option that was carried out is what it is held against', () => {
    const { acceptance, options } = evaluate(
      sample(after(`{date: 2026-04-20, option: Bigger pump, oil: 51 °C, ${RUNS}}`)),
    )
    const { range } = options.find(({ name }) => name === 'Bigger pump') ?? {}
    expect(acceptance).toMatchObject({ date: '2026-04-20', option: 'Bigger pump', oilC: 51 })
    expect(acceptance?.rows[0]).toMatchObject({ what: 'speed', promisedLow: range?.speedKmh.p10 })
    expect(acceptance?.rows[0]?.measured).toBeCloseTo(2.94, 9)
  })
  test('without an option, the machine as it stood or restored', () => {
    const { acceptance, baselineRange, restored } = evaluate(sample(after(`{${RUNS}}`)))
    expect(restored).toBeNull()
    expect(acceptance).toMatchObject({ option: null, rows: [{ promisedLow: baselineRange?.speedKmh.p10 }] })
  })
  test('without the block there is none', () => expect(evaluate(sample(), { ranges: false }).acceptance).toBeNull())
})
