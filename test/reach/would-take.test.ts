/**
 * What would have to be true, each rule against a figure worked out by hand. Value and limit always differ, so that a rule
 * that takes the wrong one of them fails. Source: arithmetic, shown where there is any beyond rounding up.
 */
import { expect, test } from 'vitest'
import type { Finding } from '../../src/evaluation.ts'
import { wouldTakeOf } from '../../src/reach/would-take.ts'

const finding = (check: string, value: number | null, limit: number | null) =>
  ({ check, value, limit, heading: 'Too small' }) as Finding

const TAKEN = { swivelBoreMm: 8, plateOver: 1.1 }

test.each([
  // What is asked for, rounded up: 18.41 kW needs a plate of 20.3 (below), a pump of 181.2 mm needs 182.
  // On the plate a tenth more than what is left at height: 18.41 x 1.1 = 20.251.
  ['engine-power', 18.41, 15, 'an engine of 20.3 kW (or lower relief settings, at the cost of pull)'],
  ['pump-room', 181.2, 170, 'room for a pump of 182 mm'],
  ['pump-speed', 3000.2, 2800, 'a pump of that size for 3001 rpm'],
  ['pump-pressure', 210, 190, 'a pump of that size for 210 bar'],
  ['motor-speed', 401.5, 350, 'motors of that size for 402 rpm'],
  ['motor-flow', 45.3, 40, 'motors of that size for 46 L/min'],
  ['motor-pressure', 205.1, 175, 'motors of that size for 206 bar'],
  ['valve-flow', 52.01, 50, 'a valve for 53 L/min'],
  ['swivel-pressure', 230, 210, 'a swivel for 230 bar'],
  // Here the limit is what is needed: 9 510 N / 1000 = 9.51 kN, up to 9.6.
  ['grade-start', 8000, 9510, 'motors that pull 9.6 kN on the steepest slope'],
  ['pull-lost', 8000, 9510, 'motors that pull 9.6 kN on the steepest slope'],
  ['turn-start', 8000, 12_340, 'motors that pull 12.4 kN to turn on the spot'],
  ['oil-temperature', 91, 82, 'a cooler that sheds more than any on the list'],
  // Velocity goes with 1/bore^2: 8 mm x sqrt(9/4) = 12 mm.
  ['swivel-velocity', 9, 4, 'a swivel with 12 mm drillings'],
])('%s', (check, value, limit, told) => {
  expect(wouldTakeOf([finding(check, value, limit)], TAKEN)).toEqual([told])
})

test('without a figure, a rule or a bore that somebody has read, the finding speaks for itself', () => {
  const own = 'a way round this: "too small"'
  expect(wouldTakeOf([finding('engine-power', null, 15)], TAKEN)).toEqual([own])
  expect(wouldTakeOf([finding('no-such-check', 2, 1)], TAKEN)).toEqual([own])
  expect(wouldTakeOf([finding('swivel-velocity', 9, 4)], { ...TAKEN, swivelBoreMm: null })).toEqual([own])
})

test.each([
  ['holding-brake', 'a brake that holds it with the engine off'],
  ['counterbalance', 'a counterbalance valve that holds it back downhill'],
  ['swivel-passages', 'a swivel with a passage free for the line that shifts the motors'],
])('%s is missing altogether', (check, told) => {
  expect(wouldTakeOf([finding(check, null, null)], TAKEN)).toEqual([told])
})

test('the same words stand once, in the order of the findings', () => {
  const stops = [finding('pull-lost', 1, 9510), finding('valve-flow', 60, 50), finding('grade-start', 2, 9510)]
  expect(wouldTakeOf(stops, TAKEN)).toEqual(['motors that pull 9.6 kN on the steepest slope', 'a valve for 60 L/min'])
})
