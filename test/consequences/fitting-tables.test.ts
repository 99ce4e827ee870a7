import { describe, expect, it } from 'vitest'
import { connectionOf } from '../../src/consequences/read-figures.ts'
import type { Connection } from '../../src/machine.ts'
import { connectionBore, fittingBores, usualDash } from '../../src/tables/fitting-bores.ts'
import { connectionRating, fittingRatings } from '../../src/tables/fitting-ratings.ts'

const at = (text: string): Connection => {
  const connection = connectionOf(text)
  if (connection === null) throw new Error(text)
  return connection
}

describe('ratings of connections', () => {
  // ISO 8434-1: 18L is 315 bar today and was 160 bar; 22L is 160 bar in both. SAE J514: JIC -12 is 241 bar.
  it.each([
    ['24° 18L', 160, 315],
    ['24° 22L', 160, 160],
    ['24° 12S', 630, 630],
    ['JIC -12', 241, 241],
    ['flange 1 code 62', 414, 414],
  ])('%s: %i bar where its age is unknown, %i bar new', (text, unknown, bought) => {
    expect(connectionRating(at(text))).toBeCloseTo(unknown * 1e5, 0)
    expect(connectionRating(at(text), 'new')).toBeCloseTo(bought * 1e5, 0)
  })

  it('a family without a rating has none', () => {
    expect(connectionRating(at('G 1/2'))).toBeNull()
  })

  it('an older edition never rates higher, and every row says where it is from', () => {
    for (const { bar, olderBar, source } of fittingRatings) {
      expect(olderBar).toBeLessThanOrEqual(bar)
      expect(source).not.toBe('')
    }
  })
})

describe('bores of connections', () => {
  // ISO 12151-2: a -8 hose usually goes on 15L or 16S, a -6 on 12L or 14S; dash is sixteenths of an inch.
  it.each([
    ['24° 15L', 8],
    ['24° 16S', 8],
    ['24° 12L', 6],
    ['G 3/4', 12],
    ['NPT 1-1/4', 20],
    ['ORB -10', 10],
  ])('%s usually takes a -%i hose', (text, dash) => {
    expect(usualDash(at(text))).toBe(dash)
  })

  // A maker's catalogue gives 18 mm for the stud of a 22L union of 19 mm: the smaller counts.
  it('22L has the bore of its stud', () => {
    expect(connectionBore(at('24° 22L'))).toBeCloseTo(0.018, 6)
  })

  it('grow with the size within each family', () => {
    for (const family of new Set(fittingBores.map((row) => row.family))) {
      if (family === 'flange 4-bolt') continue // two trade patterns side by side
      const bores = fittingBores.filter((row) => row.family === family).map(({ boreMm }) => boreMm)
      const known = bores.filter((bore) => bore !== null)
      expect(known).toEqual(known.toSorted((one, other) => one - other))
    }
  })
})
