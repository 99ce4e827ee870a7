import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import { diagramOf } from '../../../src/diagram-of.ts'
import { evaluate } from '../../../src/evaluate.ts'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { drawingTexts, drawingView } from '../../../src/report/view-model/drawing.ts'
import { loadQuestions } from '../../../src/shell/load.ts'
import { wren } from '../../fixtures/machine.ts'
import { resultOf } from '../../fixtures/result.ts'
import { numbersOf } from '../drawing/read-svg.ts'
import { STORIES } from '../stories.ts'

const SCENARIOS = fileURLToPath(new URL('../../../scenarios/', import.meta.url))

const demos: readonly (readonly [string, ResultDocument])[] = readdirSync(SCENARIOS)
  .filter((file) => file.endsWith('.yaml'))
  .flatMap((file) =>
    loadQuestions(file, SCENARIOS).map(({ unit, read }) => {
      if ('problems' in read) throw new Error(`${file} is not read without a mistake`)
      return [unit === null ? file : `${file}, ${unit}`, evaluate(read.loaded, { ranges: false })] as const
    }),
  )

const groupsOf = (result: ResultDocument) => customerView(result, { units: 'metric', paper: 'a4' }).parts.groups

describe.each([...demos, ...STORIES])('%s', (_, result) => {
  const groups = groupsOf(result)
  test('the numbers of a drawing are those of the table under it', () => {
    for (const { drawing, rows } of groups) {
      if (drawing === null) continue
      const told = [...numbersOf(drawing.circuitSvg), ...drawing.beside.map(({ number }) => number)]
      expect(told.sort()).toEqual(rows.map(({ number }) => number).sort())
    }
  })
  test('every drawing has ids of its own', () => {
    const ids = groups.flatMap(({ drawing }) =>
      [...(drawing?.circuitSvg ?? '').matchAll(/ id="([^"]*)"/g)].map(([, id]) => id),
    )
    expect(new Set(ids).size).toBe(ids.length)
  })
})

describe('the demo scenarios', () => {
  test('have a drawing wherever something is to be changed', () => {
    const without = demos.filter(([, result]) => {
      const groups = groupsOf(result).filter(({ hasRows }) => hasRows)
      return groups.length > 0 && !groups.some(({ hasDrawing }) => hasDrawing)
    })
    expect(without.map(([name]) => name)).toEqual([])
    expect(demos.filter(([, result]) => groupsOf(result).some(({ hasDrawing }) => hasDrawing)).length).toBeGreaterThan(
      5,
    )
  })
})

describe('texts beside the symbols', () => {
  const diagram = diagramOf(wren())
  test('metric: displacement, bar, L/min, hose size', () => {
    const texts = drawingTexts(diagram, 'metric')
    expect(texts['circuits.main.pump']).toEqual(['pump', '7.9\u00a0cm³/rev'])
    expect(texts['circuits.main.relief']).toEqual(['relief', '155\u00a0bar'])
    expect(texts['circuits.main.valve']).toEqual(['valve', '38\u00a0L/min'])
    expect(texts['circuits.main.lines.pressure']).toEqual(['-8'])
    expect(texts['travel.motor']).toEqual(['235\u00a0cm³/rev'])
  })
  test('US customary: 155 bar is 2248 psi, 38 L/min is 10.04 US gpm, 235 cm³ is 14.34 in³', () => {
    const texts = drawingTexts(diagram, 'us')
    expect(texts['circuits.main.relief']).toEqual(['relief', '2250\u00a0psi'])
    expect(texts['circuits.main.valve']).toEqual(['valve', '10\u00a0US gpm'])
    expect(texts['travel.motor']).toEqual(['14.3\u00a0in³/rev'])
  })
  test('both: the metric ones, as in the charts', () => {
    expect(drawingTexts(diagram, 'both')).toEqual(drawingTexts(diagram, 'metric'))
  })
  test('two speeds, a bore where no size is known, what is new, several circuits', () => {
    const machine = wren()
    const { motor, lines } = machine.travel
    const texts = drawingTexts(
      diagramOf({
        ...machine,
        circuits: [
          ...machine.circuits,
          ...machine.circuits.map((circuit) => ({ ...circuit, name: 'arms', drives: 'no track' as const })),
        ],
        travel: {
          ...machine.travel,
          motor: { ...motor, secondDisplacement: 118e-6 },
          lines: lines.map((line) => ({ ...line, dash: null })),
        },
      }),
      'metric',
    )
    expect(texts['travel.motor']).toEqual(['235/118\u00a0cm³/rev'])
    expect(texts['travel.lines.valve-to-swivel']).toEqual(['7.9\u00a0mm'])
    expect(texts.filter).toEqual(['new filter'])
    expect(texts['circuits.arms.pump']?.[0]).toBe('arms pump')
  })
})

describe('a screen reader', () => {
  test('is told what feeds what, and what changes', () => {
    const view = drawingView(resultOf('upgrade'), 'c', [{ number: '1', component: 'travel.motor' }], 'metric')
    expect(view?.circuitSvg).toContain(
      'The pump feeds the left and the right travel motors, the cylinders and the attachment.',
    )
    expect(view?.circuitSvg).toContain('Numbered, because it changes: 1 travel motors.')
    expect(view?.circuitSvg).toContain('The oil goes straight back to the tank.')
  })
  test('nothing is drawn where no row has a place in the circuit', () => {
    expect(drawingView(resultOf('upgrade'), 'c', [{ number: '1', component: 'lamp-set' }], 'metric')).toBeNull()
    expect(drawingView(resultOf('upgrade'), 'c', [], 'metric')).toBeNull()
  })
})
