import { describe, expect, it } from 'vitest'
import { keyedShafts, splinedShafts, taperedShafts, usualShaftTorque } from '../../src/tables/shaft-torques.ts'

describe('usual shaft torques', () => {
  it('rise with the shaft, and every range is one', () => {
    for (const row of [...splinedShafts, ...keyedShafts, ...taperedShafts]) {
      expect(row.low).toBeGreaterThan(0)
      expect(row.high).toBeGreaterThan(row.low)
      expect(row.source).toMatch(/memory|published/)
    }
    for (const rows of [keyedShafts, taperedShafts]) {
      const lows = rows.map(({ low }) => low)
      expect(lows).toEqual(lows.toSorted((a, b) => a - b))
    }
  })

  // teeth, pitch and diameters of SAE J744; the torques from memory
  it.each([
    ['9T 16/32 DP', 55],
    ['9T 20/40', 20],
    ['11 teeth 16/32', 120],
    ['13T-16/32 DP', 190],
    ['5/8 in keyed', 40],
    ['1 in keyed', 200],
    ['1-1/4 in keyed', 450],
    ['22.2 mm keyed', 130],
    ['taper 1:8 17 mm', 130],
  ])('%s carries from %d N·m', (shaft, low) => {
    expect(usualShaftTorque(shaft)?.low).toBe(low)
  })

  it.each(['9T', '10T DIN', '12T 16/32', '24 mm keyed', 'taper', 'tang'])('%s names no row, and gets none', (shaft) => {
    expect(usualShaftTorque(shaft)).toBeNull()
  })
})
