import { describe, expect, test } from 'vitest'
import { diagramOf } from '../src/diagram-of.ts'
import { hose, mainCircuit, wren } from './fixtures/machine.ts'

describe('the sample machine', () => {
  const diagram = diagramOf(wren())
  const [main] = diagram.circuits
  test('is described with the figures of its plates', () => {
    expect(main?.pump.id).toBe('circuits.main.pump')
    expect(main?.pump.displacementCm3).toBeCloseTo(7.9, 9)
    expect(main?.relief.settingBar).toBeCloseTo(155, 9)
    expect(main?.valve?.ratedFlowLpm).toBeCloseTo(38, 9)
    expect(diagram.travel.motor.displacementCm3).toBeCloseTo(235, 9)
    expect(diagram.reservoir.volumeL).toBeCloseTo(13, 9)
  })
  test('its lines have their ids, dash sizes and bores', () => {
    expect([main?.suction, main?.pressure, main?.return, ...diagram.travel.lines].map((line) => line?.dash)).toEqual([
      12, 8, 10, 5, 4,
    ])
    expect(main?.return?.id).toBe('circuits.main.lines.return')
    expect(main?.return?.boreMm).toBeCloseTo(15.9, 9)
  })
  test('what it does not have is null', () => {
    expect([diagram.filter, diagram.cooler, main?.auxiliary, diagram.travel.motor.secondDisplacementCm3]).toEqual([
      null,
      null,
      null,
      null,
    ])
    expect(diagram.strainer).toEqual({ id: 'strainer' })
  })
  test('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(diagram))).toEqual(diagram)
  })
})

describe('two circuits on one suction line', () => {
  const line = hose({ id: 'circuits.left.lines.suction', bore: 0.025 })
  const circuit = mainCircuit()
  const lines = { ...circuit.lines, suction: line }
  const { circuits } = diagramOf({
    ...wren(),
    circuits: [
      { ...circuit, name: 'left', drives: 'left track', lines },
      { ...circuit, name: 'right', drives: 'right track', lines, suctionSharedWith: 'left' },
    ],
  })
  test('the line stands once, the other names whose it is', () => {
    expect(circuits.map(({ suction }) => suction?.id ?? null)).toEqual(['circuits.left.lines.suction', null])
    expect(circuits.map(({ suctionSharedWith }) => suctionSharedWith)).toEqual([null, 'left'])
  })
})
