import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'
import type { Diagram } from '../../../src/diagram.ts'
import { diagramOf } from '../../../src/diagram-of.ts'
import type { Machine } from '../../../src/machine.ts'
import { circuitDrawing } from '../../../src/report/drawing/drawing.ts'
import { layoutOf } from '../../../src/report/drawing/layout.ts'
import { type Mark, placedMarks } from '../../../src/report/drawing/marks.ts'
import type { Units } from '../../../src/report/format.ts'
import { drawingTexts, drawingWords } from '../../../src/report/view-model/drawing.ts'
import { loadQuestions } from '../../../src/shell/load.ts'
import { wren } from '../../fixtures/machine.ts'
import { hidden, meetings, slanting } from './meetings.ts'
import { randomDiagram } from './random-diagram.ts'
import { componentsOf, inkOf, numberRooms, numbersOf, sizeOf } from './read-svg.ts'

const SCENARIOS = fileURLToPath(new URL('../../../scenarios/', import.meta.url))

const drawn = (diagram: Diagram, rows: readonly Mark[], units: Units = 'metric') => {
  const marks = placedMarks(diagram, rows)
  const [texts, words] = [drawingTexts(diagram, units), drawingWords(diagram)]
  const svg = circuitDrawing({
    id: 'c',
    title: 'A circuit',
    description: 'What is in it',
    diagram,
    marks,
    texts,
    words,
  })
  return { svg, scene: layoutOf(diagram, marks, texts, words), marks }
}

/** What keeps a drawing from being read; nothing where all is well. */
const faults = (diagram: Diagram, rows: readonly Mark[], units: Units = 'metric'): readonly string[] => {
  const { svg, scene } = drawn(diagram, rows, units)
  const { text, width } = sizeOf(svg)
  // 7 pt of 25.4 mm / 72 each, on a page that gives the drawing 170 mm.
  const points = ((text * 170) / width / 25.4) * 72
  return [
    ...meetings(scene, inkOf(svg)),
    ...hidden(scene),
    ...slanting(scene),
    ...numberRooms(svg).flatMap(({ width: wide, room }) => (wide > room ? ['a number wider than its disc'] : [])),
    ...(points < 7 && diagram.circuits.length < 5 ? [`text of ${points.toFixed(2)} pt`] : []),
  ]
}

const demoMachines: readonly (readonly [string, Machine])[] = readdirSync(SCENARIOS)
  .filter((file) => file.endsWith('.yaml'))
  .flatMap((file) =>
    loadQuestions(file, SCENARIOS).map(({ unit, read }) => {
      if ('problems' in read) throw new Error(`${file} is not read without a mistake`)
      return [unit === null ? file : `${file}, ${unit}`, read.loaded.prepare([]).resolve().machine] as const
    }),
  )

/** Every component of a machine that has a place in an oil circuit, by the names that findings use. */
const componentsIn = (machine: Machine): readonly string[] => {
  const { travel } = machine
  const there = (isThere: unknown, id: string) => (isThere === null ? [] : [id])
  const circuits = machine.circuits.flatMap((circuit) => {
    const { lines, auxiliary } = circuit
    const id = (part: string) => `circuits.${circuit.name}.${part}`
    return [
      id('pump'),
      id('relief'),
      ...there(circuit.coupling, id('coupling')),
      ...there(circuit.valve, id('valve')),
      ...[lines.suction, lines.pressure, lines.return, auxiliary?.out, auxiliary?.back].flatMap(
        (line) => line?.id ?? [],
      ),
      ...there(auxiliary?.coupler ?? null, id('auxiliary.coupler')),
    ]
  })
  return [
    'engine',
    'reservoir',
    'travel.motor',
    ...new Set(circuits),
    ...there(travel.motor.block, 'travel.motor.block'),
    ...there(travel.swivel, 'travel.swivel'),
    ...travel.lines.map(({ id }) => id),
    ...there(machine.filter, 'filter'),
    ...there(machine.cooler, 'cooler'),
    ...there(machine.strainer, 'strainer'),
  ]
}

describe.each(demoMachines)('the machine of %s', (_, machine) => {
  const diagram = diagramOf(machine)
  const all = componentsIn(machine).map((component, index): Mark => ({ number: String(index + 1), component }))
  test('shows every component once', () => {
    expect([...componentsOf(drawn(diagram, []).svg)].sort()).toEqual([...componentsIn(machine)].sort())
  })
  test.each(['metric', 'us', 'both'] as const)('nothing meets, in %s units', (units) => {
    expect(faults(diagram, [], units)).toEqual([])
    expect(faults(diagram, all, units)).toEqual([])
  })
  test('carries each number that it is given, and no other', () => {
    const { svg, marks } = drawn(diagram, all)
    expect(marks.beside).toEqual([])
    expect([...numbersOf(svg)].sort()).toEqual(all.map(({ number }) => number).sort())
    expect(numbersOf(drawn(diagram, []).svg)).toEqual([])
  })
})

/** Every `id` of a diagram. */
const idsIn = (value: unknown): readonly string[] => {
  if (typeof value !== 'object' || value === null) return []
  const own = 'id' in value && typeof value.id === 'string' ? [value.id] : []
  return [...own, ...Object.values(value).flatMap(idsIn)]
}

describe('two hundred random circuits', () => {
  const cases = Array.from({ length: 200 }, (_, seed) => ({ seed, ...randomDiagram(seed) }))
  test('differ', () => {
    const kinds = new Set(
      cases.map(({ diagram }) => `${diagram.circuits.length} ${diagram.travel.motors} ${diagram.travel.lines.length}`),
    )
    expect(kinds.size).toBeGreaterThan(20)
  })
  test('nothing meets', () => {
    const wrong = cases.flatMap(({ seed, diagram, marks }) =>
      faults(diagram, marks).map((fault) => `${seed}: ${fault}`),
    )
    expect(wrong).toEqual([])
  })
  test('every component once, and what is to be added', () => {
    for (const { seed, diagram, marks } of cases) {
      const { svg, marks: placed } = drawn(diagram, marks)
      const expected = new Set([...idsIn(diagram), ...placed.at.keys()])
      expect([seed, ...[...componentsOf(svg)].sort()]).toEqual([seed, ...[...expected].sort()])
    }
  })
  test('every number is in the drawing or beside it', () => {
    for (const { seed, diagram, marks } of cases) {
      const { svg, marks: placed } = drawn(diagram, marks)
      const told = [...numbersOf(svg), ...placed.beside.map(({ number }) => number)]
      expect([seed, ...told.sort()]).toEqual([seed, ...marks.map(({ number }) => number).sort()])
    }
  })
})

describe('the picture', () => {
  const diagram = diagramOf(wren())
  const { svg } = drawn(diagram, [{ number: '1', component: 'circuits.main.pump' }])
  test('is one picture with a title and a description', () => {
    expect(svg).toContain('role="img" aria-labelledby="c-t c-d"')
    expect(svg).toContain('<title id="c-t">A circuit</title><desc id="c-d">What is in it</desc>')
    expect(svg).toMatch(/^<svg [^>]*width="100%"[^>]*>.*<\/svg>$/s)
  })
  test('tells what changes by its class, and only that', () => {
    expect([...svg.matchAll(/<g class="part marked" data-component="([^"]*)"/g)].map(([, id]) => id)).toEqual([
      'circuits.main.pump',
    ])
  })
  test('has no figure with more than two decimals, none that is no number', () => {
    expect(svg).not.toMatch(/\d\.\d{3}/)
    expect(svg).not.toMatch(/NaN|Infinity|undefined/)
  })
  test('closes every element that it opens', () => {
    const open: string[] = []
    for (const [, slash, name = '', own] of svg.matchAll(/<(\/?)(\w+)[^>]*?(\/?)>/g)) {
      if (slash === '/') expect(open.pop()).toBe(name)
      else if (own !== '/') open.push(name)
    }
    expect(open).toEqual([])
  })
  test('a line that crosses another has no junction there; one that ends on it has', () => {
    const two: Diagram = {
      ...diagram,
      circuits: diagram.circuits.flatMap((circuit) =>
        ['left', 'right'].map((name) => ({
          ...circuit,
          name,
          drives: `${name} track` as 'left track',
        })),
      ),
    }
    const { scene } = drawn(two, [])
    const header = scene.items.flatMap((item) =>
      item.kind === 'line' && item.of === null && item.points.length === 3 ? [item.points] : [],
    )
    const level = header.find(
      ([a, b]) => a !== undefined && b !== undefined && a[1] === b[1] && b[0] - a[0] > 150,
    )?.[0]?.[1]
    const onHeader = scene.items.filter((item) => item.kind === 'junction' && item.at[1] === level)
    // The first return line turns into it, the second ends on it, the second pump's line crosses it.
    expect(level).toBeDefined()
    expect(onHeader).toHaveLength(1)
  })
})

describe('hostile text', () => {
  const hostile = `"><script>alert('x')</script><g onload=1 & \u0007`
  const diagram = diagramOf(wren())
  const poisoned: Diagram = {
    ...diagram,
    circuits: diagram.circuits.map((circuit) => ({
      ...circuit,
      name: hostile,
      pump: { ...circuit.pump, id: hostile },
    })),
    travel: { ...diagram.travel, lines: diagram.travel.lines.map((line) => ({ ...line, id: `${hostile}${line.id}` })) },
  }
  const svg = circuitDrawing({
    id: hostile,
    title: hostile,
    description: hostile,
    diagram: poisoned,
    marks: placedMarks(poisoned, [{ number: hostile, component: 'filter' }]),
    texts: { filter: [hostile], [hostile]: [hostile] },
    words: {
      cylinders: hostile,
      attachment: hostile,
      motors: { left: hostile, right: hostile },
      valveUnread: [hostile],
    },
  })
  test('stays text', () => {
    const elements = new Set([...svg.matchAll(/<\/?([a-zA-Z]+)/g)].map(([, name]) => name))
    expect([...elements].sort()).toEqual(['circle', 'desc', 'g', 'polygon', 'polyline', 'rect', 'svg', 'text', 'title'])
    expect(svg.replace(/="[^"]*"/g, '')).not.toMatch(/<[^>]*\sonload/)
    expect(svg).not.toContain('\u0007')
    expect(svg).toContain('&lt;script&gt;')
  })
})
