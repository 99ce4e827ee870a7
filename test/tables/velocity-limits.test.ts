import { describe, expect, it } from 'vitest'
import { lineRole, velocityLimits } from '../../src/tables/velocity-limits.ts'

describe('velocity limits', () => {
  it('keep the bands in order', () => {
    for (const { guide, change, always } of Object.values(velocityLimits)) {
      expect(change).toBeGreaterThan(guide)
      if (always !== null) expect(always).toBeGreaterThan(change)
    }
  })

  // 2 to 4, about 10, 15 to 20 ft/s; 1 ft = 0.3048 m
  it('stand at the upper ends of the published bands', () => {
    expect(velocityLimits.suction.guide / 0.3048).toBeCloseTo(4, 0)
    expect(velocityLimits.return.guide / 0.3048).toBeCloseTo(10, 0)
    expect(velocityLimits.pressure.guide / 0.3048).toBeCloseTo(20, 0)
  })

  it.each([
    ['circuits.main.lines.suction', 'suction'],
    ['circuits.main.lines.pressure', 'pressure'],
    ['circuits.main.lines.return', 'return'],
    ['circuits.main.auxiliary.lines.out', 'auxiliary'],
    ['travel.lines.swivel-to-motor', 'work'],
    ['travel.lines.return', 'work'],
  ])('%s is a %s line', (id, role) => {
    expect(lineRole(id)).toBe(role)
  })
})
