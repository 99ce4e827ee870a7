import { describe, expect, it } from 'vitest'
import { type LineBar, type LineSpeedChart, lineSpeedChart } from '../../../src/report/charts/line-speed-chart.ts'
import { collisions, outside, textBoxes } from './text-boxes.ts'

const bar = (speed: number, guide: number, name = 'return hose'): LineBar => ({
  name,
  speed,
  guide,
  text: `${speed} m/s`,
  guideText: `to ${guide} m/s`,
})

const chart = (bars: readonly LineBar[], over: Partial<LineSpeedChart> = {}): LineSpeedChart => ({
  id: 'lines',
  title: 'Oil speed',
  description: 'Bars.',
  axis: 'm/s; grey band: up to the guide value',
  bars,
  most: 0,
  ...over,
})

const widths = (svg: string, kind: string) =>
  [...svg.matchAll(new RegExp(`<rect class="${kind}" x="[^"]*" y="[^"]*" width="([^"]*)"`, 'g'))].map(([, w]) =>
    Number(w),
  )

describe('lineSpeedChart', () => {
  it('draws speed and band on one scale', () => {
    const svg = lineSpeedChart(chart([bar(1.5, 3)]))
    expect((widths(svg, 'bar way')[0] ?? 0) / (widths(svg, 'band')[0] ?? 1)).toBeCloseTo(0.5, 2)
  })
  it('fills a bar that leaves its band, and none that stays on the end of it', () => {
    const svg = lineSpeedChart(chart([bar(3, 3), bar(3.01, 3)]))
    expect(widths(svg, 'bar way')).toHaveLength(1)
    expect(widths(svg, 'bar best')).toHaveLength(1)
  })
  it.each([
    ['none', []],
    ['two', [bar(1, 1.2), bar(9, 6)]],
    [
      'many with long names',
      Array.from({ length: 16 }, (_, i) => bar(i, 6, 'travel hoses (swivel to motor) with a name that goes on')),
    ],
  ] as const)('no two labels meet and none leaves the picture: %s', (_, bars) => {
    const svg = lineSpeedChart(chart(bars))
    expect(collisions(textBoxes(svg))).toEqual([])
    expect(outside(svg)).toEqual([])
    expect(svg).not.toMatch(/NaN|width="-/)
  })
  it('escapes every text', () =>
    expect(lineSpeedChart(chart([bar(1, 2, '<script>')], { title: '<script>', axis: '<script>' }))).not.toContain(
      '<script',
    ))
})
