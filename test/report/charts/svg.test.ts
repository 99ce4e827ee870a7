import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { at, clipped, escapeText, keptApart, textWidth, wrapped } from '../../../src/report/charts/svg.ts'

describe('escapeText', () => {
  it('leaves nothing that ends an element or an attribute', () =>
    expect(escapeText(`</svg><script>"'&`)).toBe('&lt;/svg&gt;&lt;script&gt;&quot;&#39;&amp;'))
  it('drops control characters, which no XML may hold', () => expect(escapeText('a\u0000b\u001bc\nd')).toBe('a b c d'))
})

describe('at', () => {
  it('has two decimals at most and no minus nothing', () =>
    expect([1.23456, 2, -0.001].map(at)).toEqual(['1.23', '2', '0']))
})

describe('wrapped', () => {
  const width = 60
  it('fits the width in at most so many lines', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 3 }), (text, most) => {
        const lines = wrapped(text, 10, width, most)
        expect(lines.length).toBeLessThanOrEqual(most)
        for (const line of lines.filter((each) => each.length > 2))
          expect(textWidth(line, 10)).toBeLessThanOrEqual(width)
      }),
    )
  })
  it('breaks at spaces', () => expect(wrapped('Cooler and filter', 10, 70, 2)).toEqual(['Cooler and', 'filter']))
  it('cuts what is left over', () => expect(clipped('A very long name of a way', 10, 60)).toMatch(/…$/))
})

describe('keptApart', () => {
  it('leaves alone what does not collide', () => expect(keptApart([10, 50], [10, 10], 0, 100)).toEqual([10, 50]))
  // Two at the same place share it: their mean stays, half a gap to each side.
  it('moves two that collide by half a gap each', () => expect(keptApart([50, 50], [10, 10], 0, 100)).toEqual([45, 55]))
  it('keeps the distance of neighbours and stays between the ends', () => {
    const places = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(places, (wanted) => {
        const gaps = wanted.map((_, index) => 10 + (index % 3) * 6)
        const placed = keptApart(wanted, gaps, 0, 200)
        const order = placed.map((place, index) => ({ place, gap: gaps[index] ?? 0 })).sort((a, b) => a.place - b.place)
        for (const [index, one] of order.entries()) {
          const next = order[index + 1]
          if (next !== undefined) expect(next.place - one.place).toBeGreaterThanOrEqual((one.gap + next.gap) / 2 - 1e-6)
          expect(one.place - one.gap / 2).toBeGreaterThanOrEqual(-1e-6)
          expect(one.place + one.gap / 2).toBeLessThanOrEqual(200 + 1e-6)
        }
      }),
    )
  })
})
