/** The circuit drawing of one group of the third page: texts beside the symbols, numbers of the table's rows. */
import type { Diagram, DiagramCircuit, DiagramLine } from '../../diagram.ts'
import type { ResultDocument } from '../../evaluation.ts'
import { circuitDrawing } from '../drawing/drawing.ts'
import { type Mark, type Marks, placedMarks } from '../drawing/marks.ts'
import type { DrawingWords, Texts } from '../drawing/sheet.ts'
import { bare, quantity, type Units } from '../format.ts'
import { componentName } from '../names.ts'
import { en } from '../wording.ts'

export interface DrawingView {
  readonly circuitSvg: string
  readonly caption: string
  readonly besideHead: string
  readonly beside: readonly { readonly number: string; readonly name: string }[]
  readonly hasBeside: boolean
}

/** A drawing keeps to one unit, as the charts do. */
const first = (units: Units): Units => (units === 'us' ? 'us' : 'metric')

type Entry = readonly [id: string, lines: readonly string[]]

const hose = (line: DiagramLine | null, units: Units): readonly Entry[] =>
  line === null
    ? []
    : [[line.id, [line.dash === null ? quantity(line.boreMm, 'mm', units) : en.circuitDrawing.hose(String(line.dash))]]]

/** A figure beside a symbol: whole where it is whole. */
const figure = (value: number, unit: string, units: Units): string =>
  quantity(value, unit, units).replace(`${en.decimalMark}0\u00a0`, '\u00a0')

/** A name and a rating under it, where it has been read. */
const rated = (name: string, value: number | null, unit: string, units: Units): readonly string[] =>
  value === null ? [name] : [name, figure(value, unit, units)]

const circuitTexts = (circuit: DiagramCircuit, isOnly: boolean, units: Units): readonly Entry[] => {
  const { labels } = en.circuitDrawing
  const { pump, relief, valve, auxiliary } = circuit
  const coupler = auxiliary?.coupler ?? null
  return [
    [pump.id, rated(en.circuitDrawing.pump(circuit.name, isOnly), pump.displacementCm3, 'cm3/rev', units)],
    [relief.id, rated(labels.relief, relief.settingBar, 'bar', units)],
    ...(valve === null ? [] : [[valve.id, rated(labels.valve, valve.ratedFlowLpm, 'L/min', units)] as const]),
    ...[circuit.suction, circuit.pressure, circuit.return, auxiliary?.out ?? null, auxiliary?.back ?? null].flatMap(
      (line) => hose(line, units),
    ),
    ...(coupler === null ? [] : [[coupler.id, rated(labels.coupler, coupler.flowLpm, 'L/min', units)] as const]),
  ]
}

/** Ready lines of text by component id, what is to be added included. */
export const drawingTexts = (diagram: Diagram, units: Units): Texts => {
  const { labels, added, twoSpeeds } = en.circuitDrawing
  const { travel, filter, cooler, reservoir } = diagram
  const { motor } = travel
  const one = first(units)
  const second = motor.secondDisplacementCm3
  const large = figure(motor.displacementCm3, 'cm3/rev', one)
  const entries: readonly Entry[] = [
    ['engine', [labels.engine]],
    ['reservoir', rated(labels.reservoir, reservoir.volumeL, 'L', one)],
    ['filter', filter === null ? [added(labels.filter)] : rated(labels.filter, filter.ratedFlowLpm, 'L/min', one)],
    ['cooler', cooler === null ? [added(labels.cooler)] : rated(labels.cooler, cooler.capacityWK, 'W/K', one)],
    ['strainer', [diagram.strainer === null ? added(labels.strainer) : labels.strainer]],
    ['breather', [labels.breather]],
    ['travel.swivel', [labels.swivel]],
    ['travel.motor.block', [labels.block]],
    [
      motor.id,
      [
        second === null
          ? large
          : twoSpeeds(bare(motor.displacementCm3, 'cm3/rev', one), quantity(second, 'cm3/rev', one)),
      ],
    ],
    ...travel.lines.flatMap((line) => hose(line, one)),
    ...diagram.circuits.flatMap((circuit) => circuitTexts(circuit, diagram.circuits.length === 1, one)),
  ]
  return Object.fromEntries(entries)
}

/** Words of the drawing that belong to no component. */
export const drawingWords = (diagram: Diagram): DrawingWords => {
  const { cylinders, attachment, motors, valveUnread } = en.circuitDrawing
  return { cylinders, attachment, valveUnread, motors: diagram.travel.motors > 2 ? motors.several : motors.one }
}

const description = (diagram: Diagram, marks: readonly Mark[]): string => {
  const words = en.circuitDrawing
  const circuits = diagram.circuits.map((circuit) =>
    words.circuit(words.pump(circuit.name, diagram.circuits.length === 1), [
      ...(words.drives[circuit.drives] ?? []),
      ...circuit.works.flatMap((work) => words.works[work] ?? []),
    ]),
  )
  const shared = [
    ...(diagram.cooler === null ? [] : [words.labels.cooler]),
    ...(diagram.filter === null ? [] : [words.labels.filter]),
  ]
  const changes = marks.map(({ number, component }) => words.change(number, componentName(component)))
  return words.describe(circuits, shared, changes)
}

/**
 * The drawing of the machine as it stands with the numbers of a table in it.
 * @param id before every id in the drawing, one for each drawing of a page
 * @param rows number and component of each row of the table
 * @returns null where nothing of the table has a place in the circuit
 */
export const drawingView = (
  result: ResultDocument,
  id: string,
  rows: readonly Mark[],
  units: Units,
): DrawingView | null => {
  const { diagram } = result
  const marks: Marks = placedMarks(diagram, rows)
  if (marks.at.size === 0) return null
  const words = en.circuitDrawing
  return {
    circuitSvg: circuitDrawing({
      id,
      title: words.title(result.scenario.machine),
      description: description(diagram, rows),
      diagram,
      marks,
      texts: drawingTexts(diagram, units),
      words: drawingWords(diagram),
    }),
    caption: words.caption,
    besideHead: words.beside,
    beside: marks.beside.map(({ number, component }) => ({ number, name: componentName(component) })),
    hasBeside: marks.beside.length > 0,
  }
}
