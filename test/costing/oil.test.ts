/** How much oil is filled in again, and which: the litres that each job lets out are those of the list in oil-lost.ts. */
import { describe, expect, it } from 'vitest'
import { fillOil } from '../../src/costing/fill-oil.ts'
import { oilLost } from '../../src/costing/oil-lost.ts'
import type { Part } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'
import { job } from './pricing.ts'

describe('litres', () => {
  it('a pump 2, each hose 0.3, each motor 1', () => {
    expect(oilLost([job('replace pump'), job('replace hose', 3)], 13)).toBeCloseTo(2.9, 12)
    expect(oilLost([job('replace motor', 2)], 13)).toBe(2)
    expect(oilLost([job('set relief')], 13)).toBe(0)
  })
  it('never more than the machine holds', () => {
    expect(oilLost([job('replace pump'), job('replace motor', 2)], 3)).toBe(3)
  })
  it('a cooler takes 2 on top, drained or not', () => {
    expect(oilLost([job('replace hose'), job('fit cooler')], 13)).toBeCloseTo(2.3, 12)
    expect(oilLost([job('change oil'), job('fit cooler')], 13)).toBe(15)
    // 2 + 2 + 2 run out; of 3 in the machine and 2 in the cooler no more than 5.
    expect(oilLost([job('replace pump'), job('replace motor', 2), job('fit cooler')], 3)).toBe(5)
  })
})

/** VG 46: 46 mm2/s at 40 °C, 6.8 at 100 °C. */
const machineOil = { grade: 'ISO VG 46', viscosityAt40: 46e-6, viscosityAt100: 6.8e-6 }
const oil = (id: string, at40: number | null, at100: number | null, price = 1): Part =>
  part(
    id,
    'oil',
    {
      ...(at40 === null ? {} : { 'viscosity-at-40C': `${at40} cSt` }),
      ...(at100 === null ? {} : { 'viscosity-at-100C': `${at100} cSt` }),
    },
    price,
  )
const filled = (...list: readonly Part[]) => fillOil(13, machineOil, shopWith(list)).part

describe('the oil', () => {
  // ISO 3448: a grade is its middle ± 10 %: 46 ± 4.6 is 41.4 to 50.6.
  it('is within the band of the grade, its edges included', () => {
    expect(filled(oil('o', 50.6, 6.8))).toBe('o')
    expect(filled(oil('o', 41.4, 6.8))).toBe('o')
    expect(filled(oil('o', 50.7, 6.8))).toBeNull()
    expect(filled(oil('o', 41.3, 6.8))).toBeNull()
  })
  // 6.8 ± 10 % is 6.12 to 7.48.
  it('is within 10 % at 100 °C', () => {
    expect(filled(oil('o', 46, 7.48))).toBe('o')
    expect(filled(oil('o', 46, 6.12))).toBe('o')
    expect(filled(oil('o', 46, 7.49))).toBeNull()
    expect(filled(oil('o', 46, 6.11))).toBeNull()
  })
  it('is the one nearest at 100 °C, though dearer; of two alike the cheaper', () => {
    const list = [oil('far', 46, 7.3, 1), oil('near-dear', 46, 6.9, 5), oil('near', 46, 6.9, 4)]
    expect(filled(...list)).toBe('near')
    expect(filled(...list.toReversed())).toBe('near')
    expect(filled(oil('far', 46, 6.3, 1), oil('near', 46, 6.9, 9))).toBe('near')
  })
  it('whose viscosity at 100 °C nobody states comes after one that states it', () => {
    expect(filled(oil('half', 46, null, 1))).toBe('half')
    expect(filled(oil('half', 46, null, 1), oil('whole', 46, 7.2, 9))).toBe('whole')
  })
  it('is none that states nothing, or a grade that the table has not', () => {
    expect(filled(oil('o', null, 6.8))).toBeNull()
    expect(filled(part('o', 'oil', { grade: 'ISO VG 15' }, 1))).toBeNull()
    expect(filled(part('o', 'oil', { grade: 'ISO VG 46' }, 1))).toBe('o')
  })
  it('that the list has not is named by its grade, or by its viscosity', () => {
    const none = shopWith([])
    expect(fillOil(13, machineOil, none)).toEqual({
      component: 'fluid',
      kind: 'oil',
      part: null,
      what: 'Hydraulic oil ISO VG 46, litre',
      quantity: 13,
    })
    expect(fillOil(13, { ...machineOil, grade: null }, none).what).toBe('Hydraulic oil 46 cSt, litre')
  })
})
