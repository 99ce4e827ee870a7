import { describe, expect, it } from 'vitest'
import { type SpeedBar, type SpeedChart, speedChart } from '../../../src/report/charts/speed-chart.ts'
import { collisions, outside, textBoxes } from './text-boxes.ts'

const bar = (over: Partial<SpeedBar> = {}): SpeedBar => ({
  name: 'Two-speed travel motors',
  speed: 4.16,
  range: [3.84, 4.46],
  text: '4.2 km/h',
  rangeText: '3.8–4.5 km/h',
  look: 'way',
  ...over,
})

const chart = (over: Partial<SpeedChart> = {}): SpeedChart => ({
  id: 'speed',
  title: 'Travel speed',
  description: 'Bars. As it is: 2.3 km/h.',
  axis: 'km/h, oil at 50 °C; thin line: the range in which it should lie eight times in ten',
  bars: [bar({ name: 'As it is', speed: 2.31, range: null, text: '2.3 km/h', rangeText: '', look: 'now' }), bar()],
  wanted: { speed: 4.8, text: 'you want 4.8 km/h' },
  ...over,
})

const widths = (svg: string) =>
  [...svg.matchAll(/<rect class="bar [^"]*" x="[^"]*" y="[^"]*" width="([^"]*)"/g)].map(([, width]) => Number(width))

describe('speedChart', () => {
  it('is one picture with title and description', () => {
    const svg = speedChart(chart())
    expect(svg).toMatch(/^<svg [^>]*role="img" aria-labelledby="speed-t speed-d"/)
    expect(svg).toContain('<title id="speed-t">Travel speed</title><desc id="speed-d">Bars. As it is: 2.3 km/h.</desc>')
  })
  it('writes a name of three lines whole', () =>
    expect(speedChart(chart({ bars: [bar({ name: 'High flow, pressure limited to 135 bar' })] }))).not.toContain('…'))
  it('draws bars as long as their speeds', () => {
    const [now = 0, then = 0] = widths(speedChart(chart()))
    expect(then / now).toBeCloseTo(4.16 / 2.31, 2)
  })
  it('draws a range only where there is one', () => {
    expect(speedChart(chart()).match(/class="whisker"/g)).toHaveLength(3)
    expect(speedChart(chart({ bars: [bar({ range: null, rangeText: '' })] }))).not.toContain('whisker')
  })
  it('draws the wanted speed only where there is one', () => {
    expect(speedChart(chart())).toContain('you want 4.8 km/h')
    expect(speedChart(chart({ wanted: null }))).not.toContain('class="wanted"')
  })
  it('draws a machine that does not move as no bar', () =>
    expect(
      widths(
        speedChart(
          chart({ bars: [bar({ speed: 0, range: null, text: 'does not move', rangeText: '' })], wanted: null }),
        ),
      ),
    ).toEqual([0]))
  it.each([
    ['plain', chart()],
    ['wanted far above', chart({ wanted: { speed: 12, text: 'you want 12.0 km/h' } })],
    ['wanted at nothing', chart({ wanted: { speed: 0.2, text: 'you want 0.2 km/h' } })],
    [
      'many ways with long names',
      chart({
        bars: Array.from({ length: 9 }, (_, index) =>
          bar({ name: `Way number ${index} with a name that goes on and on and on`, speed: index }),
        ),
      }),
    ],
  ])('no two labels meet and none leaves the picture: %s', (_, given) => {
    const svg = speedChart(given)
    expect(textBoxes(svg).length).toBeGreaterThan(5)
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
  })
  it('escapes every text', () => {
    const hostile = '<script>alert("&")</script>'
    const svg = speedChart(
      chart({
        title: hostile,
        description: hostile,
        axis: hostile,
        bars: [bar({ name: hostile, text: hostile, rangeText: hostile })],
        wanted: { speed: 3, text: hostile },
      }),
    )
    expect(svg).not.toContain('<script')
    expect(svg).not.toMatch(/&(?!(amp|lt|gt|quot|#39);)/)
  })
  it('writes no coordinate longer than two decimals', () => expect(speedChart(chart())).not.toMatch(/="-?\d+\.\d{3,}"/))
})
