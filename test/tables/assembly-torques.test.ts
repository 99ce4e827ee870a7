/** Tightening: ranges put together by hand from the published tables, and no figure where there was none. */
import { describe, expect, test } from 'vitest'
import type { ConnectionFamily } from '../../src/machine.ts'
import { assemblyTorques, NO_TABLE, tighteningOf } from '../../src/tables/assembly-torques.ts'
import { familyStandard, familyStandards, threadOf } from '../../src/tables/connection-standards.ts'
import { connections } from '../../src/tables/connections.ts'

const of = (family: ConnectionFamily, size: string) => tighteningOf({ family, size, text: `${family} ${size}` })

describe('torque', () => {
  // Lowest and highest by hand over the tables beside each, N·m.
  test.each([
    ['JIC', '-4', 12, 17], // 12; 15 to 17; 12 to 15
    ['JIC', '-8', 41, 65], // 46; 59 to 65; 41 to 47
    ['JIC', '-12', 75, 119], // 102; 107 to 119; 75 to 88
    ['ORB', '-6', 23, 29], // 26 to 29; 24; 23 to 27
    ['ORB', '-10', 61, 82], // 75 to 82; 62; 61 to 68
    ['ORB', '-16', 115, 193], // 176 to 193; 142; 115 to 136
    ['ORFS', '-6', 24, 35], // 24 to 27; 30 to 35
    ['ORFS', '-16', 125, 176], // 125 to 135; 149 to 176
  ] as const)('%s %s', (family, size, low, high) => expect(of(family, size).torqueNm).toEqual([low, high]))

  test('never falls with the size within a family', () => {
    for (const family of ['JIC', 'ORB', 'ORFS'] as const) {
      const rows = assemblyTorques.filter((row) => row.family === family).map(({ size }) => of(family, size).torqueNm)
      rows.slice(1).forEach((range, index) => {
        expect(range?.[1]).toBeGreaterThanOrEqual(rows[index]?.[1] ?? Number.NaN)
      })
    }
  })
  test('every range is a range', () => {
    for (const { published } of assemblyTorques)
      for (const [low, high] of published) {
        expect(low).toBeGreaterThan(0)
        expect(high).toBeGreaterThanOrEqual(low)
      }
  })
})

describe('turns', () => {
  // ISO 8434-1 cones and taper threads are made up by turns, not by torque.
  test.each([
    ['24L', '12'],
    ['24S', '16'],
    ['NPT', '1/2'],
  ] as const)('%s %s by turns alone', (family, size) => {
    expect(of(family, size).torqueNm).toBeNull()
    expect(of(family, size).turns).toMatch(/turn/u)
  })
  test('a flare of one flat at -8: a sixth of a turn', () => expect(of('JIC', '-8').turns).toMatch(/^1 flat /u))
})

describe('no table', () => {
  test.each([
    ['G', '1/2'],
    ['code 61', '3/4'],
    ['JIC', '-32'],
    ['metric', '22x1.5'],
  ] as const)('%s %s has no figure, and says so', (family, size) =>
    expect(of(family, size)).toEqual({ torqueNm: null, turns: null, source: NO_TABLE }),
  )
})

describe('standards', () => {
  test('every family has one, once', () => {
    const families = [...new Set(connections.map(({ family }) => family))].sort()
    expect(familyStandards.map(({ family }) => family).sort()).toEqual(families)
  })
  test('rows speak of connections that exist', () => {
    const known = new Set(connections.map(({ family, size }) => `${family} ${size}`))
    for (const { family, size } of assemblyTorques) expect(known).toContain(`${family} ${size}`)
  })
  // SAE J1926-1 and SAE J514 share the thread of a dash: the seal tells them apart.
  test('ORB and JIC of a dash share a thread and not a seal, and each warns of the other', () => {
    const [orb, jic] = (['ORB', 'JIC'] as const).map((family) => ({ family, size: '-8', text: '' }))
    if (orb === undefined || jic === undefined) throw new Error('no pair')
    expect(threadOf(orb)?.startsWith(threadOf(jic) ?? 'none')).toBe(true)
    expect(familyStandard(orb)?.seal).not.toBe(familyStandard(jic)?.seal)
    expect(familyStandard(orb)?.mistakenFor).toContain('JIC')
    expect(familyStandard(jic)?.mistakenFor).toContain('ORB')
  })
})
