/** The charts of the shop's copy show the result's own figures, of every demo scenario and of the stories made by hand. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Evaluation, ResultDocument } from '../../../src/evaluation.ts'
import { quantity } from '../../../src/report/format.ts'
import { roundMoney } from '../../../src/report/prices.ts'
import { chartsView, pressureShares, priceShares } from '../../../src/report/view-model-shop/charts.ts'
import { collisions, outside, textBoxes } from '../charts/text-boxes.ts'
import { STORIES } from '../stories.ts'

const GOLDEN = new URL('../../golden/', import.meta.url)
const demos = readdirSync(GOLDEN)
  .filter((file) => file.endsWith('.json'))
  .map(
    (file) => [file.slice(0, -5), JSON.parse(readFileSync(new URL(file, GOLDEN), 'utf8')) as ResultDocument] as const,
  )

const waysOf = (result: ResultDocument): readonly Evaluation[] => [
  result.baseline,
  ...(result.restored === null ? [] : [result.restored]),
  ...result.options.map(({ evaluation }) => evaluation),
]
const drivingOf = (result: ResultDocument) =>
  result.diagram.circuits.filter(({ drives }) => drives !== 'no track').map(({ name }) => name)
const drawings = (result: ResultDocument, units: 'metric' | 'us' = 'metric') => {
  const { pressure, lineSpeed, price } = chartsView(result, units)
  return [...pressure, ...lineSpeed, ...price].map(({ chartSvg }) => chartSvg)
}

describe.each(demos)('%s', (_, result) => {
  it('the pressure bars are the pump’s pressure, with nothing left over', () => {
    for (const evaluation of waysOf(result)) {
      const shares = pressureShares(evaluation, drivingOf(result))
      expect(shares.filter(({ id }) => id === '')).toEqual([])
      expect(shares.reduce((sum, { bar }) => sum + bar, 0)).toBeCloseTo(evaluation.travel.level.pumpPressureBar, 1)
    }
  })
  it('the price bars are the likely total', () => {
    for (const { cost } of [...result.options, ...(result.restoration === null ? [] : [result.restoration])])
      expect(priceShares(cost).reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(cost.likely, 2)
  })
  it('the figures beside the bars are those of the result', () => {
    const { pressure, lineSpeed, price } = chartsView(result, 'metric')
    const { level } = result.baseline.travel
    const texts = (svg = '') => textBoxes(svg).map(({ text }) => text)
    expect(texts(pressure[0]?.chartSvg)).toContain(quantity(level.pumpPressureBar, 'bar', 'metric'))
    expect(texts(pressure[0]?.chartSvg)).toContain(quantity(level.motorDifferentialBar, 'bar', 'metric'))
    for (const { velocityMps } of result.baseline.lines)
      expect(texts(lineSpeed[0]?.chartSvg)).toContain(quantity(velocityMps, 'm/s', 'metric'))
    const cost = result.restoration?.cost ?? null
    if (cost !== null) expect(texts(price[0]?.chartSvg)).toContain(roundMoney(cost.labourTotal, cost.currency))
  })
})

describe.each([...demos, ...STORIES])('drawn: %s', (_, result) => {
  it.each(['metric', 'us'] as const)('no two labels meet, none leaves its picture, %s', (units) => {
    for (const svg of drawings(result, units)) {
      expect(collisions(textBoxes(svg))).toEqual([])
      expect(outside(svg)).toEqual([])
      expect(svg).not.toMatch(/NaN|undefined|width="-/)
    }
  })
})

describe('what does not fit', () => {
  it('what no component accounts for has a bar of its own', () => {
    const [, result] = STORIES[0] ?? []
    const { baseline } = result as ResultDocument
    // By hand: 74 at the pump; motors 41, pressure hose 1.4, valve 3.1; 28.5 are left.
    expect(pressureShares(baseline, ['main']).at(-1)?.bar).toBeCloseTo(28.5, 9)
  })
  it('a machine that does not move has no pressure drawn, and says so', () => {
    const [, result] = STORIES.find(([name]) => name === 'nothing known') ?? []
    const view = chartsView(result as ResultDocument, 'metric')
    expect(view.hasPressure).toBe(false)
    expect(view.still).toHaveLength(1)
    expect(view.hasPrice).toBe(false)
  })
})
