/** What would have to be true: each rule by hand. */
import { describe, expect, test } from 'vitest'
import type { Finding } from '../../src/evaluation.ts'
import type { Circuit } from '../../src/machine.ts'
import { attachmentTakes } from '../../src/reach/attachment-takes.ts'
import { wouldTakeOf } from '../../src/reach/would-take.ts'
import { cubicMetresPerSecondFromLpm, pascalsFromBar } from '../../src/units/shop-units.ts'
import { finding } from '../fixtures/result.ts'
import { wren } from '../fixtures/wren.ts'

const stop = (check: string, value: Finding['value'], limit: Finding['limit']): Finding =>
  finding({ id: `${check}:x`, check, value, limit, severity: 'stop' })

describe('from what stops', () => {
  test('an engine with the power that is asked for, rounded up', () =>
    expect(wouldTakeOf([stop('engine-power', 12.91, 9.1)], null)).toEqual(['an engine of 13 kW']))
  test('a swivel in which the oil keeps its guide velocity', () =>
    // Velocity goes with 1/bore²: 7 mm × √(10.4/6.1) = 9.14 mm, rounded up.
    expect(wouldTakeOf([stop('swivel-velocity', 10.4, 6.1)], 7)).toEqual(['a swivel with 9.2 mm drillings']))
  test('nothing of a swivel that nobody has read', () =>
    expect(wouldTakeOf([stop('swivel-velocity', 10.4, 6.1)], null)).toEqual([]))
  test('the pull that the slope needs, which is the limit', () =>
    expect(wouldTakeOf([stop('grade-start', 3900, 4610)], null)).toEqual([
      'motors that pull 4.7 kN on the steepest slope',
    ]))
  test('nothing where there is no figure, and each thing once', () => {
    expect(wouldTakeOf([stop('engine-power', null, 9.1), stop('drift', 6, 5)], null)).toEqual([])
    expect(wouldTakeOf([stop('valve-flow', 46.1, 40), stop('valve-flow', 46.1, 40)], null)).toEqual([
      'a valve for 47 L/min',
    ])
  })
})

describe('from what an attachment asks', () => {
  const wanting = (pressure: number) => ({
    travelSpeed: null,
    attachment: { flow: cubicMetresPerSecondFromLpm(38), pressure: pascalsFromBar(pressure) },
    oilBelow: null,
  })
  const machine = (works: Circuit['works'], setting: number) => {
    const own = wren()
    return {
      ...own,
      circuits: own.circuits.map((one) => ({
        ...one,
        works,
        relief: { ...one.relief, setting: pascalsFromBar(setting) },
      })),
    }
  }
  test('a relief above its pressure', () => {
    expect(attachmentTakes(machine(['attachment'], 155), wanting(155))).toEqual([
      'a relief set above 155 bar, with a pump, a valve and hoses that bear it',
    ])
    expect(attachmentTakes(machine(['attachment'], 156), wanting(155))).toEqual([])
  })
  test('a circuit that works it', () =>
    expect(attachmentTakes(machine(['implements'], 156), wanting(155))).toEqual(['a circuit that works an attachment']))
  test('nothing where none is wanted', () =>
    expect(attachmentTakes(wren(), { travelSpeed: null, attachment: null, oilBelow: null })).toEqual([]))
})
