/**
 * Evaluations a second, and the same heat balance solved by a general integrator in the same run. Prints ratios; asserts
 * nothing about time, only that both ways come to the same answer.
 */
import odex from 'odex'
import { expect, test } from 'vitest'
import { HeatTable, heatAt, heatOut, heatStored, settledOil, warmUp } from '../../src/circuit/oil-heat.ts'
import { preparePlant } from '../../src/circuit/plant.ts'
import { judge, workOut } from '../../src/findings/evaluate-machine.ts'
import { wren, wrenSite } from '../fixtures/wren.ts'
import { record } from './record.ts'

const work = {
  duty: { travel: 0.2, work: { share: 0.5, pressure: null, useful: 0.6 }, relief: 0.08, attachment: 0, idle: 0.22 },
  attachment: null,
}

/** Milliseconds a call, median of five rounds after a warm-up. */
const cost = (call: () => unknown, times: number): number => {
  for (let i = 0; i < Math.min(300, times); i++) call()
  const rounds = Array.from({ length: 5 }, () => {
    const began = performance.now()
    for (let i = 0; i < times; i++) call()
    return (performance.now() - began) / times
  })
  return rounds.sort((a, b) => a - b)[2] as number
}

const ours = () => {
  const plant = preparePlant(wren(), wrenSite)
  const table = new HeatTable(plant, work, wrenSite.ambient)
  return { steady: settledOil(plant, work, table), curve: warmUp(plant.machine, wrenSite.ambient, table).curve }
}

/** The same balance by bisection and by odex (Bulirsch-Stoer, dense output), the losses worked out at every call. */
const general = () => {
  const plant = preparePlant(wren(), wrenSite)
  const { machine, site } = plant
  const net = (oil: number) => {
    const at = heatAt(plant, work, oil)
    return at.heat - heatOut(machine, site.ambient, oil, at.coolerShare)
  }
  let [low, high] = [site.ambient, 150]
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (net(middle) > 0) low = middle
    else high = middle
  }
  const solver = new odex.Solver(1)
  solver.denseOutput = true
  const curve: number[][] = []
  solver.solve(
    (_, [oil = 0]) => [(60 * net(oil)) / heatStored(machine, oil)],
    0,
    [site.ambient],
    480,
    solver.grid(5, (minute: number, [oil = 0]: number[]) => {
      curve.push([minute, oil])
      return undefined
    }),
  )
  return { steady: (low + high) / 2, curve }
}

test('bench', () => {
  const [mine, theirs] = [ours(), general()]
  expect(mine.steady).toBeCloseTo(theirs.steady, 6)
  for (const [i, point] of theirs.curve.entries())
    expect(Math.abs((mine.curve[i]?.[1] ?? 0) - (point[1] ?? 0))).toBeLessThan(0.05)
  const whole = cost(() => judge(workOut(wren(), wrenSite, work), null, wrenSite, work), 300)
  const heat = cost(ours, 300)
  const generic = cost(general, 20)
  const rows = {
    'whole evaluation, ms': whole,
    'whole evaluations a second': 1000 / whole,
    'heat balance and curve, ms': heat,
    'the same by bisection and odex, ms': generic,
    'ratio odex to ours': generic / heat,
  }
  record('evaluation', rows)
})
