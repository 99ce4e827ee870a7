import { describe, expect, it } from 'vitest'
import { notes } from '../../src/calibration/notes.ts'
import { pascalsFromBar } from '../../src/units/shop-units.ts'

describe('heat that the reading implies', () => {
  const start = 'The tank temperature that was read means that the machine gives off'
  // A share of what the surfaces should give: 1.52 is 52 % more than all of it, 0.68 is 32 % less.
  it.each([
    [1.52, `${start} 52 % more heat than its surfaces should; the figures here go by the reading.`],
    [0.68, `${start} 32 % less heat than its surfaces should; the figures here go by the reading.`],
    [1.02, `${start} as much heat as its surfaces should.`],
    [0.98, `${start} as much heat as its surfaces should.`],
  ])('a factor of %s', (factor, said) => expect(notes.coolingFactor(factor)).toBe(said))
})

describe('which circuit', () => {
  const low = (circuit: string) => notes.reliefLow(circuit, pascalsFromBar(95), pascalsFromBar(140))
  it('is named as people name it', () =>
    // 1 − 95/140 = 0.321
    expect(low('left')).toBe(
      'The relief valve of the left circuit opens at 95 bar, 32 % under the 140 bar that it should hold.',
    ))
  it('is not named where there is only the main one', () =>
    expect(low('main')).toBe('The relief valve opens at 95 bar, 32 % under the 140 bar that it should hold.'))
})
