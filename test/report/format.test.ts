import { describe, expect, it } from 'vitest'
import {
  against,
  bare,
  bareSpan,
  count,
  date,
  decimal,
  figure,
  hours,
  minutes,
  quantity,
  retold,
  span,
  tripMinutes,
  typeset,
} from '../../src/report/format.ts'

/** The report sets a no-break space between a figure and its unit. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('decimal', () => {
  it('rounds half away from zero, also where the binary number lies just below', () => {
    expect(decimal(1.005, 2)).toBe('1.01')
    expect(decimal(2.5, 0)).toBe('3')
    expect(decimal(-2.5, 0)).toBe('−3')
  })
  it('never shows minus nothing', () => expect(decimal(-0.04, 1)).toBe('0.0'))
  it('rounds to tens', () => expect(decimal(2204.6, -1)).toBe('2200'))
  it('sets thousands apart from ten thousand on', () => {
    expect(decimal(9999, 0)).toBe('9999')
    expect(decimal(1234567, 0)).toBe('1,234,567')
  })
})

describe('quantity', () => {
  // Handbook conversions: 1 mile 1.609344 km, 1 psi 0.0689476 bar, 1 US gallon 3.785412 L, 1 hp 0.7457 kW, 1 in 25.4 mm.
  const cases: readonly [number, string, string, string][] = [
    [2.31, 'km/h', '2.3 km/h', '1.4 mph'],
    [86, '°C', '86 °C', '187 °F'],
    [-6, '°C', '−6 °C', '21 °F'],
    [158.6, 'bar', '159 bar', '2300 psi'],
    [0.7, 'bar abs', '0.70 bar absolute', '10.2 psi absolute'],
    [24.5, 'L/min', '24.5 L/min', '6.5 US gpm'],
    [8.6, 'kW', '8.6 kW', '11.5 hp'],
    [12.7, 'mm', '12.7 mm', '0.50 in'],
    [980, 'kg', '980 kg', '2160 lb'],
    [350, 'm', '350 m', '1148 ft'],
    [6.1, 'm/s', '6.1 m/s', '20.0 ft/s'],
    [35, 'N·m', '35 N·m', '26 lb·ft'],
    [250, 'cm3/rev', '250 cm³/rev', '15.3 in³/rev'],
    [0.2794, 'm', '279 mm', '11.00 in'],
  ]
  it.each(cases)('%s %s', (value, unit, metric, us) => {
    expect(plain(quantity(value, unit, 'metric'))).toBe(metric)
    expect(plain(quantity(value, unit, 'us'))).toBe(us)
    expect(plain(quantity(value, unit, 'both'))).toBe(`${metric} (${us})`)
  })
  it('leaves alone what has no other unit', () => expect(plain(quantity(20, '%', 'both'))).toBe('20 %'))
  it('prints a unit that it does not know as it stands', () =>
    expect(plain(quantity(3.456, 'furlong', 'us'))).toBe('3.46 furlong'))
  it('never makes a figure of nothing', () => {
    expect(quantity(null, 'bar', 'both')).toBe('not worked out')
    expect(quantity(null, 'bar', 'both', 'not read')).toBe('not read')
    expect(quantity(Number.NaN, 'bar', 'metric')).toBe('not worked out')
    expect(bare(null, 'bar', 'metric')).toBe('–')
    expect(figure(null, 'km/h', 'both')).toEqual({ value: '–', unit: '', also: 'not worked out' })
  })
})

describe('figure', () => {
  it('takes the number and its unit apart', () => {
    const shown = figure(2.31, 'km/h', 'both')
    expect({ ...shown, also: plain(shown.also) }).toEqual({ value: '2.3', unit: 'km/h', also: '1.4 mph' })
    expect(figure(2.31, 'km/h', 'us')).toEqual({ value: '1.4', unit: 'mph', also: '' })
  })
})

describe('span', () => {
  it('shows both ends once', () => expect(plain(span(2.14, 2.48, 'km/h', 'both'))).toBe('2.1–2.5 km/h (1.3–1.5 mph)'))
  it('shows one figure where both round to it', () =>
    expect(plain(span(2.31, 2.33, 'km/h', 'metric'))).toBe('2.3 km/h'))
  it('knows nothing where an end is unknown', () => expect(span(null, 2, 'km/h', 'metric')).toBe('not worked out'))
})

describe('bareSpan', () => {
  it('leaves the unit to the head of the table', () => expect(bareSpan(2.14, 2.48, 'km/h', 'metric')).toBe('2.1–2.5'))
  it('shows one figure where both round to it', () => expect(bareSpan(1.61, 1.63, 'km/h', 'metric')).toBe('1.6'))
})

describe('against', () => {
  it('rounds value and limit alike', () =>
    expect(Object.values(against(7.94, 6.1, 'm/s', 'metric')).map(plain)).toEqual(['7.9 m/s', '6.1 m/s']))
  it('adds decimals until a difference shows', () =>
    expect(Object.values(against(0.698, 0.7, 'bar abs', 'metric')).map(plain)).toEqual([
      '0.698 bar absolute',
      '0.700 bar absolute',
    ]))
})

describe('time', () => {
  it('as people say it', () => {
    expect([3.27, 45.4, 89.4, 90, 145].map((value) => plain(minutes(value)))).toEqual([
      '3.3 min',
      '45 min',
      '89 min',
      '1 h 30 min',
      '2 h 25 min',
    ])
    expect(minutes(null)).toBe('not worked out')
  })
  // 350 m at 2.31 km/h: 0.350 / 2.31 x 60 = 9.09 min
  it('over the trip', () => {
    expect(tripMinutes(2.31, 350)).toBeCloseTo(9.0909, 3)
    expect(tripMinutes(2.31, null)).toBeNull()
    expect(tripMinutes(0, 350)).toBeNull()
  })
  it('of work', () => {
    expect(plain(hours(2, 4.5))).toBe('2–4.5 h')
    expect(plain(hours(1, 1))).toBe('1 h')
  })
  it('as a date', () => {
    expect(date('2026-03-02')).toBe('2 March 2026')
    expect(date(null)).toBe('–')
  })
})

describe('count', () => {
  it('keeps whole numbers whole', () => expect([4, 2.44].map(count)).toEqual(['4', '2.4']))
})

describe('retold', () => {
  it('tells the figures of a sentence in the units of the customer', () => {
    expect(plain(retold('The oil would settle at 104 °C.', 'us'))).toBe('The oil would settle at 219 °F.')
    expect(plain(retold('The oil would settle at 104 °C.', 'both'))).toBe('The oil would settle at 104 °C (219 °F).')
    expect(retold('The oil would settle at 104 °C.', 'metric')).toBe('The oil would settle at 104 °C.')
  })
  // 7 bar = 101.5 psi, 69 bar = 1000.8 psi
  it('converts both ends of a range', () =>
    expect(plain(retold('loses 24 % between 7 and 69 bar', 'us'))).toBe('loses 24 % between 102 and 1000 psi'))
  it('leaves other units alone', () => {
    expect(retold('235 cm3/rev, 12 W/m2K, 75 W/K, 10 minutes', 'us')).toBe('235 cm3/rev, 12 W/m2K, 75 W/K, 10 minutes')
    expect(retold('75 kW/K', 'us')).toBe('75 kW/K')
  })
})

describe('typeset', () => {
  it('sets powers and apostrophes', () =>
    expect(typeset("the maker's pump of 6.8 cm3/rev, 2 m2")).toBe('the maker’s pump of 6.8\u00a0cm³/rev, 2\u00a0m²'))
  it('leaves part numbers alone', () => expect(typeset('part am3 of cm30')).toBe('part am3 of cm30'))
})
