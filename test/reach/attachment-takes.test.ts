/** What is asked for and no part changes, by hand. */

import { describe, expect, test } from 'vitest'
import type { Circuit, Site } from '../../src/machine.ts'
import { attachmentTakes } from '../../src/reach/attachment-takes.ts'
import { oilTakes } from '../../src/reach/oil-takes.ts'
import { cubicMetresPerSecondFromLpm, pascalsFromBar } from '../../src/units/shop-units.ts'
import { wren } from '../fixtures/wren.ts'

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
      'a relief valve set above 155 bar, with a pump, a valve and hoses that bear it',
    ])
    expect(attachmentTakes(machine(['attachment'], 156), wanting(155))).toEqual([])
  })
  test('a circuit that works it', () =>
    expect(attachmentTakes(machine(['implements'], 156), wanting(155))).toEqual(['a circuit that works an attachment']))
  test('nothing where none is wanted', () =>
    expect(attachmentTakes(wren(), { travelSpeed: null, attachment: null, oilBelow: null })).toEqual([]))
})

describe('from a wished oil temperature', () => {
  // Newton's law of cooling: heat flows from the oil to the air only while the oil is hotter.
  test.each([
    [24, ['air cooler than 24 °C, for no cooler brings oil below the air around it']],
    [10, ['air cooler than 10 °C, for no cooler brings oil below the air around it']],
    [25, []],
    [null, []],
  ] as const)('%s °C in air of 24 °C', (oilBelow, told) =>
    expect(oilTakes({ ambient: 24 } as Site, { travelSpeed: null, attachment: null, oilBelow })).toEqual(told),
  )
})
