import { describe, expect, it } from 'vitest'
import { capacityAt, coolerNeed, surfaceLoss } from '../../src/consequences/cooler-need.ts'
import { wren } from '../fixtures/wren.ts'

describe('coolerNeed', () => {
  // A pool digger in summer: 1.51 kW in, 30 W/K off the machine, 65 °C at 38 °C ambient.
  // 1510 - 30 x 27 = 700 W; 700 / 27 = 25.9 W/K; x 1.5 = 38.9 W/K.
  it('is what is left at the target, over the difference, and half again for dirt', () => {
    expect(coolerNeed(1510, 30, 65, 38, 0)).toBeCloseTo(38.9, 1)
  })

  // With the air 7 K warmer at the core: 700 / 20 = 35 W/K; x 1.5 = 52.5 W/K.
  it('counts air that is warmer than ambient', () => {
    expect(coolerNeed(1510, 30, 65, 38, 7)).toBeCloseTo(52.5, 6)
  })

  it('is nothing where the surface alone does it', () => {
    expect(coolerNeed(800, 30, 65, 38, 0)).toBe(0)
  })

  it('does not exist where the air is no colder than the oil is to be', () => {
    expect(coolerNeed(1510, 30, 38, 38, 0)).toBeNull()
    expect(coolerNeed(1510, 30, 45, 38, 8)).toBeNull()
  })
})

describe('capacityAt', () => {
  // A quarter of the flow: half the capacity. More flow than the reference adds nothing.
  it('falls with the root of the flow and does not rise above its reference', () => {
    expect(capacityAt(90, 40, 10)).toBeCloseTo(45, 9)
    expect(capacityAt(90, 40, 80)).toBe(90)
  })
})

describe('surfaceLoss', () => {
  // 12 x 0.5 + 12 x 0.9 = 16.8 W/K, times the calibrated factor.
  it('adds tank and other surface', () => {
    expect(surfaceLoss(wren())).toBeCloseTo(16.8, 9)
    expect(surfaceLoss({ ...wren(), coolingFactor: 0.5 })).toBeCloseTo(8.4, 9)
  })
})
