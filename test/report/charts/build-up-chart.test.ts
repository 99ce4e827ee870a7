import { describe, expect, it } from 'vitest'
import { type BuildUpChart, buildUpChart, type Share } from '../../../src/report/charts/build-up-chart.ts'
import { collisions, outside, textBoxes } from './text-boxes.ts'

const share = (amount: number, over: Partial<Share> = {}): Share => ({
  name: 'control valve',
  amount,
  text: `${amount} bar`,
  look: 'plain',
  ...over,
})

const chart = (over: Partial<BuildUpChart> = {}): BuildUpChart => ({
  id: 'build',
  title: 'Where it goes',
  description: 'Bars.',
  axis: 'bar, from the pump to the tank',
  shares: [share(10), share(25, { look: 'kept' }), share(5)],
  whole: { name: 'at the pump', amount: 40, text: '40 bar' },
  most: 0,
  ...over,
})

const bars = (svg: string) =>
  [...svg.matchAll(/<rect class="bar [^"]*" x="([^"]*)" y="[^"]*" width="([^"]*)"/g)].map(([, x, width]) => ({
    from: Number(x),
    to: Number(x) + Number(width),
  }))

describe('buildUpChart', () => {
  it('is one picture with title and description', () =>
    expect(buildUpChart(chart())).toMatch(
      /^<svg [^>]*role="img" aria-labelledby="build-t build-d"><title id="build-t">Where it goes<\/title><desc id="build-d">Bars\.<\/desc>/,
    ))
  it('begins each share where the last ends, and the whole is as long as all of them', () => {
    const [one, two, three, whole] = bars(buildUpChart(chart()))
    expect(two?.from).toBeCloseTo(one?.to ?? 0, 1)
    expect(three?.from).toBeCloseTo(two?.to ?? 0, 1)
    expect(whole?.to).toBeCloseTo(three?.to ?? 0, 1)
    expect(whole?.from).toBe(one?.from)
  })
  it('keeps the scale of its pair', () => {
    const [alone, paired] = [bars(buildUpChart(chart())), bars(buildUpChart(chart({ most: 80 })))]
    const length = (list: typeof alone) => (list[3]?.to ?? 0) - (list[3]?.from ?? 0)
    expect(length(paired) / length(alone)).toBeCloseTo(0.5, 2)
  })
  it.each([
    ['plain', chart()],
    ['nothing', chart({ shares: [], whole: { name: 'none', amount: 0, text: '$0' } })],
    ['less than nothing left', chart({ shares: [share(50), share(-10)] })],
    [
      'many with long names and long amounts',
      chart({
        shares: Array.from({ length: 14 }, (_, i) =>
          share(i, { name: 'travel hoses (swivel to motor) with a long name, there and back', text: '$123,456' }),
        ),
        whole: { name: 'at the pump', amount: 1_234_567, text: '$1,234,567' },
      }),
    ],
  ])('no two labels meet and none leaves the picture: %s', (_, given) => {
    const svg = buildUpChart(given)
    expect(textBoxes(svg).length).toBeGreaterThan(4)
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
    expect(svg).not.toMatch(/NaN|width="-/)
  })
  it('escapes every text', () => {
    const hostile = '"><script>alert(1)</script>'
    const svg = buildUpChart(
      chart({
        title: hostile,
        description: hostile,
        axis: hostile,
        shares: [share(1, { name: hostile, text: hostile })],
      }),
    )
    expect(svg).not.toContain('<script')
  })
})
