import { describe, expect, it } from 'vitest'
import { type PriceAndSpeedChart, priceAndSpeedChart, type Step } from '../../../src/report/charts/price-and-speed.ts'
import { collisions, outside, textBoxes } from './text-boxes.ts'

const step = (price: number, reached: number, over: Partial<Step> = {}): Step => ({
  price,
  reached,
  text: `$${price}: ${reached} km/h`,
  what: 'Orbital motor 250 cm³',
  look: 'way',
  named: true,
  apart: false,
  ...over,
})

const STEPS = [step(0, 2.3, { look: 'now' }), step(1500, 2.8), step(1900, 3.5, { look: 'best' }), step(3900, 4.9)]

const chart = (steps: readonly Step[] = STEPS, over: Partial<PriceAndSpeedChart> = {}): PriceAndSpeedChart => ({
  id: 'steps',
  title: 'Price against speed',
  description: 'Steps.',
  axis: 'price in USD, the likely figure, tax included',
  unit: 'km/h',
  steps,
  wanted: { reached: 3.4, text: 'wanted: 3.4 km/h' },
  ...over,
})

type Point = readonly [x: number, y: number]

/** Corners of the steps, from the path itself. */
const corners = (svg: string): readonly Point[] => {
  const [, d = ''] = /class="steps" d="([^"]*)"/u.exec(svg) ?? []
  return [...d.matchAll(/[ML]([\d.]+),([\d.]+)/gu)].map(([, x, y]) => [Number(x), Number(y)] as const)
}
const dots = (svg: string): readonly Point[] =>
  [...svg.matchAll(/<circle class="dot[^"]*" cx="([^"]*)" cy="([^"]*)"/gu)].map(([, x, y]) => [Number(x), Number(y)])
const leaders = (svg: string): readonly (readonly Point[])[] =>
  [...svg.matchAll(/class="leader" points="([^"]*)"/gu)].map(([, points = '']) =>
    points.split(' ').map((point) => {
      const [x, y] = point.split(',').map(Number)
      return [x ?? Number.NaN, y ?? Number.NaN] as const
    }),
  )
const pairs = (points: readonly Point[]) => points.slice(1).map((point, i) => [points[i] ?? point, point] as const)

/** Two segments cross inside of both, not merely at an end. */
const cross = ([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean => {
  const side = ([px, py]: Point, [qx, qy]: Point, [rx, ry]: Point) => (qx - px) * (ry - py) - (qy - py) * (rx - px)
  const near = 1e-6
  return side(a, b, c) * side(a, b, d) < -near && side(c, d, a) * side(c, d, b) < -near
}

describe('priceAndSpeedChart', () => {
  it('is one picture with title and description', () =>
    expect(priceAndSpeedChart(chart())).toMatch(
      /^<svg [^>]*role="img" aria-labelledby="steps-t steps-d"><title id="steps-t">Price against speed<\/title><desc id="steps-d">Steps\.<\/desc>/u,
    ))

  it('rises only at a price: a level tread up to the next step, then straight up', () => {
    const svg = priceAndSpeedChart(chart())
    for (const [[x1, y1], [x2, y2]] of pairs(corners(svg))) expect(x1 === x2 || y1 === y2).toBe(true)
    // Every way stands on the steps, dearer to the right, faster higher.
    const places = dots(svg)
    expect(places).toHaveLength(4)
    for (const [x, y] of places)
      expect(corners(svg).some(([cx, cy]) => Math.abs(cx - x) < 0.02 && Math.abs(cy - y) < 0.02)).toBe(true)
    for (const [[x1, y1], [x2, y2]] of pairs(places)) {
      expect(x2).toBeGreaterThan(x1)
      expect(y2).toBeLessThan(y1)
    }
  })

  it('keeps to its scale: as far apart as the prices are', () => {
    const [now, one, , last] = dots(priceAndSpeedChart(chart()))
    const [from, part, whole] = [now?.[0] ?? 0, one?.[0] ?? 0, last?.[0] ?? 0]
    // 1,500 of 3,900.
    expect((part - from) / (whole - from)).toBeCloseTo(1500 / 3900, 3)
  })

  it('falls where less is better', () => {
    const places = dots(priceAndSpeedChart(chart([step(0, 86), step(600, 74), step(1300, 66)], { wanted: null })))
    for (const [[, y1], [, y2]] of pairs(places)) expect(y2).toBeGreaterThan(y1)
  })

  it('one that stands apart is no part of the steps', () => {
    const aside = step(1000, 3.5, { apart: true, look: 'best' })
    const [with_, without] = [priceAndSpeedChart(chart([...STEPS, aside])), priceAndSpeedChart(chart())]
    expect(corners(with_)).toHaveLength(corners(without).length)
    expect(dots(with_)).toHaveLength(5)
  })

  it('names those that are to be named, and draws them all', () => {
    const svg = priceAndSpeedChart(chart(STEPS.map((one, i) => ({ ...one, named: i !== 1 }))))
    expect(textBoxes(svg).filter(({ text }) => text.includes('$'))).toHaveLength(3)
    expect(dots(svg)).toHaveLength(4)
  })

  it('is told apart without colour: what is offered is larger, what is wanted is dashed', () => {
    const svg = priceAndSpeedChart(chart())
    const radii = [...svg.matchAll(/class="dot (\w+)"[^>]* r="(\d)"/gu)].map(([, look, r]) => [look, r])
    expect(radii.filter(([look]) => look === 'best')).toEqual([['best', '5']])
    expect(svg).toContain('class="wanted"')
  })

  const many = Array.from({ length: 14 }, (_, i) =>
    step(300 * i, 2 + 0.05 * i, {
      text: `from $${300 * i}, with a special order: ${2 + 0.05 * i} km/h`,
      what: 'Two-speed orbital wheel motor 490/245 cm³ and Gear pump 13.7 cm³ and Tandem gear pump 14 + 14 cm³ and Valve',
    }),
  )
  const CASES: readonly (readonly [string, PriceAndSpeedChart])[] = [
    ['plain', chart()],
    ['nothing wanted', chart(STEPS, { wanted: null })],
    ['one step', chart([step(0, 2.3)])],
    ['no step at all', chart([], { wanted: { reached: 3, text: 'wanted: 3 km/h' } })],
    ['wanted out of reach', chart(STEPS, { wanted: { reached: 9, text: 'wanted: 9 km/h (5.6 mph)' } })],
    ['many with long names close together', chart(many)],
    ['two at one speed', chart([step(0, 2.3), step(900, 2.3), step(901, 2.31)])],
    ['one apart', chart([...STEPS, step(1000, 3.5, { apart: true, look: 'best' })])],
    [
      'by temperature',
      chart([step(0, 86), step(600, 74), step(1300, 66)], { wanted: { reached: 70, text: 'wanted: 70 °C' } }),
    ],
    ['large money', chart([step(0, 2), step(123_456, 3), step(234_567, 4)])],
  ]
  it.each(CASES)('no two labels meet and none leaves the picture: %s', (_, given) => {
    const svg = priceAndSpeedChart(given)
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
    expect(svg).not.toMatch(/NaN|undefined|Infinity/u)
  })
  it.each(CASES.filter(([name]) => name !== 'one apart'))(
    'no leader crosses the steps or another leader: %s',
    (_, given) => {
      const svg = priceAndSpeedChart(given)
      const [lines, ways] = [leaders(svg).map(pairs), pairs(corners(svg))]
      lines.forEach((one, index) => {
        for (const segment of one) {
          expect(ways.filter((other) => cross(segment, other))).toEqual([])
          for (const other of lines.slice(index + 1).flat()) expect(cross(segment, other)).toBe(false)
        }
      })
    },
  )

  it('escapes every text', () => {
    const hostile = '"><script>alert(1)</script>'
    const svg = priceAndSpeedChart({
      ...chart([step(0, 2, { text: hostile, what: hostile })]),
      title: hostile,
      description: hostile,
      axis: hostile,
      unit: hostile,
      wanted: { reached: 2, text: hostile },
    })
    expect(svg).not.toContain('<script')
  })
})
