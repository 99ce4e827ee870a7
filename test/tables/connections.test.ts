/** Threads of the standards, and the traps: a shared thread is not a fit. */
import { describe, expect, test } from 'vitest'
import { connections, sizesOf } from '../../src/tables/connections.ts'
import { fittingBores } from '../../src/tables/fitting-bores.ts'
import { fittingRatings } from '../../src/tables/fitting-ratings.ts'
import { motorFlanges, pumpFlanges, pumpShafts, unknownFlange, unknownShaft } from '../../src/tables/mounts.ts'
import { sources } from '../../src/tables/sources.ts'

const thread = (family: string, size: string) =>
  connections.find((row) => row.family === family && row.size === size)?.thread

describe('connections', () => {
  test('each family and size once', () => {
    const keys = connections.map(({ family, size }) => `${family} ${size}`)
    expect(new Set(keys).size).toBe(keys.length)
  })
  test('every row names a source that exists', () => {
    for (const { source } of connections) expect(sources[source].standard.length).toBeGreaterThan(0)
  })
  // ISO 8434-1: series L and S of different tube share their nut thread.
  test.each([
    ['15', '14'],
    ['10', '8'],
    ['12', '10'],
    ['22', '20'],
    ['28', '25'],
    ['42', '38'],
  ])('24° %sL and %sS share a thread and are two connections', (light, heavy) => {
    expect(thread('24L', light)).toBe(thread('24S', heavy))
    expect(thread('24L', light)).toMatch(/^M\d/u)
  })
  // SAE J1926-1 and SAE J514: the same straight thread with another seal.
  test.each(['-4', '-5', '-6', '-8', '-10', '-12', '-16'])('ORB %s and JIC %s share a thread', (size) =>
    expect(thread('ORB', size)?.startsWith(thread('JIC', size) ?? 'none')).toBe(true),
  )
  // SAE J1926-1, ISO 228-1, ASME B1.20.1
  test('single values of the standards', () => {
    expect(thread('ORB', '-8')).toBe('3/4-16 UNF')
    expect(thread('ORB', '-12')).toBe('1-1/16-12 UN')
    expect(thread('ORFS', '-8')).toBe('13/16-16')
    expect(thread('G', '1/2')).toContain('14 tpi, 20.955 mm')
    expect(thread('NPT', '1/2')).toContain('14 tpi')
    expect(thread('NPT', '3/8')).toContain('18 tpi')
    expect(thread('24L', '12')).toBe('M18x1.5')
    expect(thread('24S', '10')).toBe('M18x1.5')
    expect(thread('ORB', '-6')).toContain('9/16-18')
    expect(thread('JIC', '-6')).toContain('9/16-18')
  })
  test('sizes of a family', () =>
    expect(sizesOf('ORFS')).toEqual(['-4', '-6', '-8', '-10', '-12', '-16', '-20', '-24']))
  test('bores and ratings speak of connections that exist', () => {
    const known = new Set(connections.map(({ family, size }) => `${family} ${size}`))
    for (const { family, size } of [...fittingBores, ...fittingRatings]) expect(known).toContain(`${family} ${size}`)
  })
})

describe('mounts', () => {
  // SAE J744: the number before the dash of a flange's code is its pilot in millimetres, rounded down.
  test.each(pumpFlanges)('$text has the pilot of its code $code', ({ code, pilotMm }) =>
    expect(Math.floor(pilotMm)).toBe(Number(code.split('-')[0])),
  )
  // SAE J744: a shaft's code begins with its diameter in millimetres, to the nearest.
  test.each(pumpShafts)('$text has the diameter of its code $code', ({ code, diameterMm }) =>
    expect(Math.abs(diameterMm - Number(code.split('-')[0]))).toBeLessThanOrEqual(0.5),
  )
  test('a flange that the standard would have to know', () => {
    expect(unknownFlange('SAE A 2-bolt')).toBeNull()
    expect(unknownFlange('SAE A 3-bolt')).toContain('SAE A 2-bolt')
  })
  test('a flange of no standard is left alone', () => expect(unknownFlange('rectangular 4-bolt 36.5 mm')).toBeNull())
  test('a spline that the standard does not have', () => {
    expect(unknownShaft('9T 16/32 DP')).toBeNull()
    expect(unknownShaft('10T 16/32 DP')).toContain('9T 16/32 DP')
    expect(unknownShaft('1:8 taper 17 mm')).toBeNull()
  })
  test('motor flanges are trade patterns', () => expect(motorFlanges.length).toBeGreaterThan(0))
})
