/** What the report prints of the files: readings in their units, and the last day of the quote by the calendar. */
import { describe, expect, test } from 'vitest'
import { type Edit, MACHINE, SCENARIO, SHOP, sample } from '../fixtures/fernhill.ts'

const sheet = (...edits: Edit[]) => sample(...edits).sheet
const row = (label: string, ...edits: Edit[]) => sheet(...edits).rows.find((entry) => entry.label === label)

describe('rows', () => {
  test('a reading is measured unless the file says otherwise', () =>
    expect(row('Timed run: time')).toEqual({
      label: 'Timed run: time',
      value: 31.4,
      unit: 's',
      from: 'measured',
      tolerance: null,
    }))
  test('a figure of the machine is stated, or from where it says', () => {
    expect(row('Travel motor')).toMatchObject({ value: 235, unit: 'cm3/rev', from: 'stated' })
    expect(row('Travel motor', [MACHINE, '235 cm3/rev', '235 cm3/rev (plate)'])?.from).toBe('plate')
  })
  test('a bore is in millimetres', () => expect(row('Drilling of the swivel')).toMatchObject({ value: 6, unit: 'mm' }))
  test('a long time is in minutes', () =>
    expect(row('Oil temperature, read after')).toMatchObject({ value: 70, unit: 'min' }))
  test('American units are shown in metric; the report turns them', () =>
    // 2250 psi = 155.132 bar
    expect(row('Relief setting', [MACHINE, '155 bar', '2250 psi'])?.value).toBeCloseTo(155.1320391, 6))
  test('a written tolerance', () =>
    expect(row('Timed run: time', [SCENARIO, '31.4 s', '31.4 s ± 0.628 s'])?.tolerance).toBe('± 2 %'))
  test('the oil', () => expect(row('Oil')).toMatchObject({ value: 'ISO VG 46', unit: '' }))
})

describe('the quote', () => {
  // 2026-03-02 and 30 days: March has 31, so 1 April. 2028 is a leap year.
  test.each([
    ['2026-03-02', '30 days', '2026-04-01'],
    ['2026-12-15', '30 days', '2027-01-14'],
    ['2028-02-20', '14 days', '2028-03-05'],
    ['2027-02-20', '14 days', '2027-03-06'],
  ])('of %s, valid %s, until %s', (date, days, until) => {
    const edits: Edit[] = []
    if (date !== '2026-03-02') edits.push([SCENARIO, '2026-03-02', date])
    if (days !== '30 days') edits.push([SHOP, '30 days', days])
    expect(sheet(...edits).quote).toEqual({ number: '2041', date, validUntil: until })
  })
  test('without a date it ends on none', () =>
    expect(sheet([SCENARIO, /quote: \{[^}]*\}\n/u, '']).quote).toEqual({ number: null, date: null, validUntil: null }))
})

test('site, wishes and other ways in the units of the result', () => {
  const { site, wants, alternatives, machine } = sheet()
  expect(site).toMatchObject({ ambientC: 31, altitudeM: 240, ground: 'firm soil', tripM: 350, hourIsWorth: 48 })
  expect(site.steepestGradePercent).toBeCloseTo(20, 9)
  expect(wants.speedKmh).toBeCloseTo(4.8, 9)
  expect(alternatives).toEqual([{ name: 'Park the trailer nearer the face', minutesPerDay: 40, cost: 0 }])
  expect(machine).toMatchObject({ name: 'Wren 09', massKg: 980 })
})
