/** Expected SI values by hand from the definitions of the units (NIST SP 811, appendix B), the arithmetic beside each. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DIMENSIONS, type Dimension, inShownUnit, shownUnit, unitNames } from '../../src/units/dimensions.ts'
import { parseQuantity, type Quantity, type QuantityFault } from '../../src/units/quantity.ts'

const read = (text: string | number, dimension: Dimension): Quantity => {
  const result = parseQuantity(text, dimension)
  if (!result.ok) throw new Error(`${text}: ${result.problem.message}`)
  return result.quantity
}
const faultOf = (text: string | number, dimension: Dimension): QuantityFault | null => {
  const result = parseQuantity(text, dimension)
  return result.ok ? null : result.problem.code
}

describe('a number and a unit', () => {
  test.each<[string, Dimension, number]>([
    ['24.5 L/min', 'flow', 24.5e-3 / 60],
    ['24.5 l/min', 'flow', 24.5e-3 / 60],
    // US gallon 3.785411784 L
    ['6.46 gpm', 'flow', (6.46 * 3.785411784e-3) / 60],
    ['160 bar', 'pressure', 160e5],
    // 1 psi = 6894.757293168 Pa
    ['2300 psi', 'pressure', 2300 * 6894.757293168],
    ['-0.15 bar', 'pressure', -15_000],
    ['250 cm3/rev', 'displacement', 250e-6],
    ['250 cm³/rev', 'displacement', 250e-6],
    ['250 cc/rev', 'displacement', 250e-6],
    // 1 in3 = 16.387064 cm3
    ['15.3 in3/rev', 'displacement', 15.3 * 16.387064e-6],
    // (180 - 32) / 1.8
    ['180 °F', 'temperature', 148 / 1.8],
    ['-6 °C', 'temperature', -6],
    ['10 K', 'temperature difference', 10],
    ['18 °F diff', 'temperature difference', 10],
    // 3 miles of 1609.344 m an hour
    ['3 mph', 'travel speed', (3 * 1609.344) / 3600],
    ['46 cSt', 'viscosity', 46e-6],
    ['46 mm2/s', 'viscosity', 46e-6],
    ['12 kW', 'power', 12_000],
    // mechanical 745.69987158 W, metric 735.49875 W
    ['16 hp', 'power', 16 * 745.69987158],
    ['16 PS', 'power', 16 * 735.49875],
    ['35 N·m', 'torque', 35],
    ['35 Nm', 'torque', 35],
    // 4.4482216152605 N times 0.3048 m
    ['26 lb·ft', 'torque', 26 * 4.4482216152605 * 0.3048],
    ['15 %', 'share', 0.15],
    ['3000 rpm', 'speed', 50],
    ['3000 1/min', 'speed', 50],
    ['10 µm', 'length', 10e-6],
    ['40 min/day', 'time per day', 2400],
    ['70 min', 'time', 4200],
    ['0.09 kW/K', 'heat capacity rate', 90],
    ['12 W/m2K', 'heat transfer', 12],
    ['12 W/(m2·K)', 'heat transfer', 12],
    // 5.678263 W/m2K for each Btu/h·ft2·°F
    ['2 Btu/h·ft2·°F', 'heat transfer', 2 * 5.678263],
    ['4 gal', 'volume', 4 * 3.785411784e-3],
    // standard inch of mercury 3386.39 Pa
    ['5 inHg', 'pressure', 5 * 3386.389],
  ])('%s', (text, dimension, si) => {
    const { si: got } = read(text, dimension)
    expect(Math.abs(got - si)).toBeLessThanOrEqual(1e-6 * Math.abs(si))
  })
})

describe('broken numbers', () => {
  test.each<[string, number]>([
    ['5/8 in', 15.875],
    ['1-1/16 in', 26.9875],
    ['1 1/2 in', 38.1],
    ['½ in', 12.7],
    ['1½ in', 38.1],
    ['1 ⅝ in', 41.275],
    ['.5 in', 12.7],
    ['5⁄8 in', 15.875],
    ['5/8 "', 15.875],
  ])('%s', (text, mm) => expect(read(text, 'length').si * 1000).toBeCloseTo(mm, 9))
})

describe('tolerance and provenance', () => {
  test('in per cent, it is a share of the value', () =>
    expect(read('250 cm3/rev ± 3 %', 'displacement').tolerance).toBeCloseTo(7.5e-6, 12))
  test('in a unit, it is that much', () =>
    expect(read('1.45 mph ± 0.05 mph', 'travel speed').tolerance).toBeCloseTo((0.05 * 1609.344) / 3600, 9))
  test('of a share it is in points', () => expect(read('92 % ± 3 %', 'share').tolerance).toBeCloseTo(0.03, 12))
  test('of a temperature it is a difference', () => {
    expect(read('84 °C ± 2 K', 'temperature').tolerance).toBe(2)
    expect(read('180 °F ± 9 °F', 'temperature').tolerance).toBeCloseTo(5, 9)
  })
  test('+/- serves too', () => expect(read('200 bar +/- 5 %', 'pressure').tolerance).toBeCloseTo(10e5, 3))
  test('none written, none kept', () => expect(read('200 bar', 'pressure').tolerance).toBeNull())
  test.each(['measured', 'plate', 'manual', 'assumed'] as const)('(%s)', (word) =>
    expect(read(`6 mm (${word})`, 'length').from).toBe(word),
  )
  test('nothing said is stated', () => expect(read('6 mm', 'length').from).toBe('stated'))
  test('both together', () => {
    const { si, tolerance, from } = read('250 cm3/rev ± 3 % (measured)', 'displacement')
    expect([si, from]).toEqual([250e-6, 'measured'])
    expect(tolerance).toBeCloseTo(7.5e-6, 12)
  })
})

describe('what is refused', () => {
  test.each<[string | number, Dimension, QuantityFault]>([
    ['40', 'flow', 'unit-missing'],
    [40, 'flow', 'unit-missing'],
    [-8, 'length', 'unit-missing'],
    ['40 bar', 'flow', 'unit-of-another-dimension'],
    ['10 °C', 'temperature difference', 'unit-of-another-dimension'],
    ['300 K', 'temperature', 'unit-of-another-dimension'],
    ['40 furlong', 'length', 'unit-unknown'],
    ['40 BAR', 'pressure', 'unit-unknown'],
    ['40 imp gpm', 'flow', 'unit-unknown'],
    ['2,300 psi', 'pressure', 'comma-in-number'],
    ['1,234.5 psi', 'pressure', 'comma-in-number'],
    ['1_000 bar', 'pressure', 'number-unreadable'],
    ['1/0 in', 'length', 'number-unreadable'],
    ['0x10 bar', 'pressure', 'unit-unknown'],
    ['bar', 'pressure', 'number-unreadable'],
    ['', 'pressure', 'number-unreadable'],
    ['1e400 bar', 'pressure', 'number-out-of-reach'],
    ['6 mm (guess)', 'length', 'provenance-unknown'],
    ['7 bar ± x', 'pressure', 'tolerance-unreadable'],
    ['7 bar ± 1', 'pressure', 'tolerance-unreadable'],
    ['7 bar ± -1 %', 'pressure', 'tolerance-unreadable'],
    ['7 bar ± 1 % ± 1 %', 'pressure', 'tolerance-unreadable'],
    ['7 bar ± 1 L/min', 'pressure', 'tolerance-unreadable'],
    [`${'7'.repeat(61)}`, 'pressure', 'quantity-too-long'],
  ])('%s as %s', (text, dimension, code) => expect(faultOf(text, dimension)).toBe(code))

  test('a bare number is told the units that would do', () => {
    const result = parseQuantity('40', 'flow')
    expect(result.ok ? '' : result.problem.expected).toContain('L/min, gpm')
  })
  test.each<[string, Dimension, string | null]>([
    ['20 C', 'temperature', 'write 20 °C if that is what you mean'],
    ['68 deg F', 'temperature', 'write 68 °F if that is what you mean'],
    ['40 BAR', 'pressure', 'write 40 bar if that is what you mean'],
    ['1-1/16 IN', 'length', 'write 1-1/16 in if that is what you mean'],
    ['40 furlong', 'length', null],
  ])('%s, but for capitals, dots or the degree sign a unit of %s', (text, dimension, remedy) => {
    const result = parseQuantity(text, dimension)
    expect(result.ok ? 'read' : [result.problem.code, result.problem.remedy]).toEqual(['unit-unknown', remedy])
  })
  test('a comma is answered with both readings', () => {
    const result = parseQuantity('2,300 psi', 'pressure')
    expect(result.ok ? '' : result.problem.remedy).toBe('write 2300 or 2.300')
  })
  test('a grouped number has one reading only', () => {
    const result = parseQuantity('1,234,567 Pa', 'pressure')
    expect(result.ok ? '' : result.problem.remedy).toBe('write 1234567')
  })
  test('thousands set off by a point, a comma before the decimals: one reading too', () => {
    const result = parseQuantity('1.234,5 psi', 'pressure')
    expect(result.ok ? '' : result.problem.remedy).toBe('write 1234.5')
  })
})

const dimensions = Object.keys(DIMENSIONS) as Dimension[]
const anyUnit = fc
  .constantFrom(...dimensions)
  .chain((dimension) =>
    fc.tuple(fc.constant(dimension), fc.constantFrom(...DIMENSIONS[dimension].units.flatMap((row) => row.names))),
  )
const number = fc
  .double({ min: -1e6, max: 1e6, noNaN: true, noDefaultInfinity: true })
  .map((value) => Number(value.toPrecision(9)))

describe('properties', () => {
  test('every spelling of every unit reads as value times factor plus offset', () => {
    fc.assert(
      fc.property(anyUnit, number, ([dimension, unit], value) => {
        const row = DIMENSIONS[dimension].units.find(({ names }) => names.includes(unit))
        const expected = value * (row?.factor ?? Number.NaN) + (row?.offset ?? 0)
        expect(read(`${value} ${unit}`, dimension).si).toBeCloseTo(expected, 9)
      }),
    )
  })
  test('shown and read again it is the same', () => {
    fc.assert(
      fc.property(anyUnit, number, ([dimension, unit], value) => {
        const { si } = read(`${value} ${unit}`, dimension)
        const again = read(`${inShownUnit(dimension, si)} ${shownUnit(dimension)}`, dimension)
        expect(Math.abs(again.si - si)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(si)))
      }),
    )
  })
  test('n a/b is n + a/b', () => {
    fc.assert(
      fc.property(fc.nat(60), fc.integer({ min: 1, max: 63 }), fc.integer({ min: 1, max: 64 }), (n, a, b) => {
        expect(read(`${n}-${a}/${b} in`, 'length').si).toBeCloseTo((n + a / b) * 0.0254, 12)
        expect(read(`${n} ${a}/${b} in`, 'length').si).toBeCloseTo((n + a / b) * 0.0254, 12)
      }),
    )
  })
  test('no text throws, and what is read is a finite number', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), fc.constantFrom(...dimensions), (text, dimension) => {
        const result = parseQuantity(text, dimension)
        return !result.ok || Number.isFinite(result.quantity.si)
      }),
    )
  })
  test('no unit belongs to two dimensions but where people use it for both', () => {
    const homes = new Map<string, Dimension[]>()
    for (const dimension of dimensions)
      for (const name of DIMENSIONS[dimension].units.flatMap((row) => row.names))
        homes.set(name, [...(homes.get(name) ?? []), dimension])
    const shared = [...homes].filter(([, list]) => list.length > 1).map(([name]) => name)
    expect(shared).toEqual(['%'])
  })
  test('every dimension names its units', () => {
    for (const dimension of dimensions) expect(unitNames(dimension).length).toBeGreaterThan(0)
  })
})

describe('decimal figures keep their digits', () => {
  test.each<[string, Dimension, number]>([
    ['35 %', 'share', 0.35],
    ['7.5 %', 'share', 0.075],
    ['15 cm3/rev', 'displacement', 15e-6],
    ['46 cSt', 'viscosity', 46e-6],
    ['262 mm', 'length', 0.262],
    ['13 L', 'volume', 0.013],
  ])('%s', (text, dimension, si) => expect(read(text, dimension).si).toBe(si))
})
