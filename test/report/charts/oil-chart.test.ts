import { describe, expect, it } from 'vitest'
import { type OilChart, type OilCurve, oilChart } from '../../../src/report/charts/oil-chart.ts'
import { curveTo } from '../../fixtures/result.ts'
import { collisions, outside, textBoxes } from './text-boxes.ts'

const curve = (settled: number, over: Partial<OilCurve> = {}): OilCurve => ({
  name: 'Cooler and return filter',
  points: curveTo(settled),
  end: `${settled} °C`,
  look: 'way',
  ...over,
})

const LIMITS = [
  { temperature: 60, text: 'warm from 60 °C' },
  { temperature: 70, text: 'hot from 70 °C' },
  { temperature: 82, text: 'too hot from 82 °C' },
]

const chart = (curves: readonly OilCurve[], over: Partial<OilChart> = {}): OilChart => ({
  id: 'oil',
  title: 'Oil temperature',
  description: 'As it is: 86 °C after eight hours.',
  axis: 'hours of work, from a cold start',
  unit: '°C',
  curves,
  limits: LIMITS,
  ...over,
})

const lastHeight = (svg: string, look: string) => {
  const [, path = ''] = new RegExp(`class="curve ${look}" d="([^"]*)"`).exec(svg) ?? []
  return Number(path.split(',').at(-1))
}

describe('oilChart', () => {
  it('is one picture with title and description', () => {
    const svg = oilChart(chart([curve(86, { look: 'now' })]))
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="oil-t oil-d"/)
    expect(svg).toContain('<desc id="oil-d">As it is: 86 °C after eight hours.</desc>')
  })
  it('draws each limit with its label, at its own height', () => {
    const svg = oilChart(chart([curve(86)]))
    for (const { text } of LIMITS) expect(svg).toContain(`>${text}</text>`)
    expect(svg.match(/class="limit"/g)).toHaveLength(3)
  })
  it('puts a curve that ends on a limit on its line', () => {
    const flat = curve(82, {
      look: 'now',
      points: [
        [0, 82],
        [480, 82],
      ],
    })
    const svg = oilChart(chart([flat]))
    const heights = [...svg.matchAll(/class="limit" x1="[^"]*" y1="([^"]*)"/g)].map(([, y]) => Number(y))
    expect(lastHeight(svg, 'now')).toBeCloseTo(heights[2] ?? Number.NaN, 1)
  })
  it('writes a name of three lines whole where there is room', () =>
    expect(oilChart(chart([curve(73), curve(67, { name: 'High flow, pressure limited to 135 bar' })]))).not.toContain(
      '…',
    ))
  it('draws hotter higher', () => {
    const svg = oilChart(chart([curve(86, { look: 'now' }), curve(66, { look: 'best' })]))
    expect(lastHeight(svg, 'now')).toBeLessThan(lastHeight(svg, 'best'))
  })
  it('tells the ways apart without colour', () => {
    const svg = oilChart(chart([curve(90), curve(80), curve(70, { look: 'against' })]))
    const dashes = [...svg.matchAll(/stroke-dasharray="([^"]*)"/g)].map(([, dash]) => dash)
    expect(new Set(dashes).size).toBe(3)
  })
  it.each([
    ['one curve', [curve(86)]],
    ['four that end together', [curve(86, { look: 'now' }), curve(86.2), curve(86.4), curve(85.9, { look: 'best' })]],
    ['some that never settle', [curve(148), curve(150), curve(60)]],
    ['all cold', [curve(34), curve(33)]],
    [
      'long names',
      [
        curve(70, { name: 'A way with a name that is much longer than there is room for' }),
        curve(71, { name: 'Another way with a name that is much longer than there is room for' }),
      ],
    ],
  ])('no two labels meet and none leaves the picture: %s', (_, curves) => {
    const svg = oilChart(chart(curves))
    expect(textBoxes(svg).length).toBeGreaterThan(10)
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
  })
  it('has room for limits in °F', () => {
    const limits = [140, 158, 180].map((temperature) => ({ temperature, text: `too hot from ${temperature} °F` }))
    const svg = oilChart(
      chart(
        [
          curve(190, {
            points: [
              [0, 88],
              [480, 190],
            ],
          }),
        ],
        { limits, unit: '°F' },
      ),
    )
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
  })
  it('escapes every text', () => {
    const hostile = '"><script>alert(1)</script>'
    const svg = oilChart(
      chart([curve(86, { name: hostile, end: hostile })], {
        title: hostile,
        description: hostile,
        axis: hostile,
        unit: hostile,
      }),
    )
    expect(svg).not.toContain('<script')
    expect(svg).not.toContain('">"')
  })
})
