/** Oils against ISO 3448, ground against the bands that its figures are the middle of. */
import { describe, expect, test } from 'vitest'
import { groundFor, groundNames } from '../../src/tables/ground.ts'
import { gradeNumber, oilGrades, viscositiesOf } from '../../src/tables/oil-grades.ts'

describe('oil grades', () => {
  test.each(oilGrades)('VG $grade is its number at 40 °C and thinner at 100 °C', ({ grade, at40, at100 }) => {
    expect(at40).toBe(grade)
    expect(at100).toBeLessThan(at40 / 4)
  })
  // Published typical viscosities at 100 °C (ISO 3448 reference table): 4.5, 5.5, 6.5, 8.5, 11.4 cSt.
  test.each([
    [22, 4.5],
    [32, 5.5],
    [46, 6.5],
    [68, 8.5],
    [100, 11.4],
  ])('VG %i is about %f cSt at 100 °C', (grade, typical) => {
    const at100 = (viscositiesOf(grade)?.at100 ?? 0) * 1e6
    expect(Math.abs(at100 / typical - 1)).toBeLessThan(0.06)
  })
  test.each([
    ['ISO VG 46', 46],
    ['iso vg46', 46],
    ['VG 100', 100],
    ['HLP', null],
  ])('"%s"', (text, number) => expect(gradeNumber(text)).toBe(number))
  test('a grade that the table does not have', () => expect(viscositiesOf(37)).toBeNull())
})

describe('ground', () => {
  test.each(groundNames)('%s on tracks and on wheels', (name) => {
    const [tracks, wheels] = [groundFor(name, 'tracks'), groundFor(name, 'wheels')]
    expect(tracks.slip).toBe(name === 'paved' ? 0.01 : 0.03)
    expect(wheels.slip).toBe(0.01)
    // Adhesion carries the machine along on the level: phi above f_r on every ground.
    expect(tracks.adhesion).toBeGreaterThan(tracks.rollingResistance)
    expect(wheels.adhesion).toBeGreaterThan(wheels.rollingResistance)
  })
  test('the four figures of the method', () => {
    expect(groundFor('firm soil', 'tracks')).toEqual({
      name: 'firm soil',
      rollingResistance: 0.09,
      turning: 0.65,
      adhesion: 0.8,
      slip: 0.03,
    })
    expect(groundFor('sand', 'wheels')).toMatchObject({ rollingResistance: 0.2, turning: 0.5, adhesion: 0.45 })
    expect(groundFor('mud', 'tracks')).toMatchObject({ rollingResistance: 0.22, turning: 0.5, adhesion: 0.5 })
    expect(groundFor('paved', 'wheels')).toMatchObject({ rollingResistance: 0.03, turning: 0.9, adhesion: 0.75 })
    expect(groundFor('grass', 'wheels')).toMatchObject({ rollingResistance: 0.07, turning: 0.85, adhesion: 0.85 })
    expect(groundFor('loose soil', 'tracks')).toMatchObject({ rollingResistance: 0.13, turning: 0.65, adhesion: 0.6 })
  })
})
