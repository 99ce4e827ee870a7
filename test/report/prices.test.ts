import { describe, expect, it } from 'vitest'
import { money, moneyPerSpeed, moneySaid, moneySpan, roundMoney } from '../../src/report/prices.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('money', () => {
  it('to the cent', () => {
    expect(money(1322.86, 'USD')).toBe('$1,322.86')
    expect(money(7.4, 'EUR')).toBe('€7.40')
    expect(plain(money(12, 'CHF'))).toBe('CHF 12.00')
    expect(money(null, 'USD')).toBe('no price yet')
  })
  it('without cents', () => expect(roundMoney(1184.5, 'USD')).toBe('$1,185'))
  it('as a range, or from where something has no price', () => {
    expect(moneySpan(1184, 1504, 'USD', false)).toBe('$1,184–$1,504')
    expect(moneySpan(1184, 1504, 'USD', true)).toBe('from $1,184')
    expect(moneySpan(55.2, 55.4, 'USD', false)).toBe('$55')
  })
  it('behind a preposition or a verb, without a second preposition', () => {
    expect(`for ${moneySaid(4526, 5100, 'USD', true)}`).toBe('for at least $4,526')
    expect(`for ${moneySaid(4526, 5100, 'USD', false)}`).toBe('for $4,526–$5,100')
  })
  // 2736 for 1 km/h is 2736 x 1.609344 = 4403 for 1 mph.
  it('for each unit of speed', () => {
    expect(moneyPerSpeed(2736, 'USD', 'metric')).toBe('$2,736 per km/h gained')
    expect(moneyPerSpeed(2736, 'USD', 'us')).toBe('$4,403 per mph gained')
  })
})
