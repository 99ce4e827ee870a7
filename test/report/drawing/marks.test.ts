import { describe, expect, test } from 'vitest'
import { diagramOf } from '../../../src/diagram-of.ts'
import { type Mark, placedMarks } from '../../../src/report/drawing/marks.ts'
import { mainCircuit, wren } from '../../fixtures/machine.ts'

const diagram = diagramOf(wren())
const placed = (components: readonly string[], of = diagram) => {
  const rows = components.map((component, index): Mark => ({ number: String(index + 1), component }))
  const { at, beside } = placedMarks(of, rows)
  return { at: Object.fromEntries(at), beside: beside.map(({ number }) => number) }
}

describe('where a number goes', () => {
  test('onto the component itself', () => {
    expect(placed(['circuits.main.pump', 'travel.swivel', 'travel.lines.swivel-to-motor'])).toEqual({
      at: { 'circuits.main.pump': ['1'], 'travel.swivel': ['2'], 'travel.lines.swivel-to-motor': ['3'] },
      beside: [],
    })
  })
  test('onto the whole that it is a part of, beside the number that is there', () => {
    expect(placed(['circuits.main.pump', 'circuits.main.pump.mount', 'circuits.main.pump.ports']).at).toEqual({
      'circuits.main.pump': ['1', '2', '3'],
    })
  })
  test('into the place of what the machine does not have yet', () => {
    expect(diagram.filter).toBeNull()
    expect(placed(['filter', 'cooler', 'cooler-bypass', 'breather'])).toEqual({
      at: { filter: ['1'], cooler: ['2'], 'cooler-bypass': ['3'], breather: ['4'] },
      beside: [],
    })
  })
  test('oil is drawn as the tank that it is in', () => {
    expect(placed(['fluid']).at).toEqual({ reservoir: ['1'] })
  })
  test('beside the drawing where an oil circuit has no such place', () => {
    expect(
      placed(['lamp-set', 'alternator', 'travel.lines.shift', 'brakes', 'circuits.third', 'cooler-bypass']),
    ).toEqual({
      at: {},
      beside: ['1', '2', '3', '4', '5', '6'],
    })
  })
  test('a shared suction line is that of the circuit that has it', () => {
    const [left, right] = [mainCircuit(), mainCircuit()]
    const two = diagramOf({
      ...wren(),
      circuits: [
        { ...left, name: 'left', drives: 'left track' },
        { ...right, name: 'right', drives: 'right track', suctionSharedWith: 'left' },
      ],
    })
    expect(placed(['circuits.right.lines.suction'], two)).toEqual({
      at: { 'circuits.left.lines.suction': ['1'] },
      beside: [],
    })
  })
  test('couplers only where there is an attachment', () => {
    expect(placed(['circuits.main.auxiliary.coupler']).beside).toEqual([])
    const without = diagramOf({ ...wren(), circuits: [{ ...mainCircuit(), works: ['implements'] }] })
    expect(placed(['circuits.main.auxiliary.coupler'], without).beside).toEqual(['1'])
  })
})
