/**
 * Where the numbers of the table go in the drawing: onto the component itself, onto the one that it is a part of, or, for
 * what has no place in an oil circuit (lamps, alternator), beside the drawing.
 */
import type { Diagram } from '../../diagram.ts'

/** One row of the table. */
export interface Mark {
  readonly number: string
  readonly component: string
}

export interface Marks {
  /** Numbers by the id that is drawn. */
  readonly at: ReadonlyMap<string, readonly string[]>
  readonly beside: readonly Mark[]
}

/** Drawn under another name. */
const ALIASES: ReadonlyMap<string, string> = new Map([
  ['fluid', 'reservoir'],
  ['oil', 'reservoir'],
])

/** Ids that have a place in the drawing, whether the machine has the component yet or not. */
export const drawableIds = (diagram: Diagram): readonly string[] => {
  const { travel } = diagram
  const circuits = diagram.circuits.flatMap((circuit) => {
    const id = (part: string) => `circuits.${circuit.name}.${part}`
    const auxiliary = ['auxiliary.lines.out', 'auxiliary.lines.back', 'auxiliary.coupler'].map(id)
    return [
      ...['pump', 'coupling', 'relief', 'valve', 'lines.pressure', 'lines.return'].map(id),
      ...(isShared(diagram, circuit.suctionSharedWith) ? [] : [id('lines.suction')]),
      ...(circuit.works.includes('attachment') ? auxiliary : []),
    ]
  })
  const drives = diagram.circuits.some(({ drives: what }) =>
    ['both tracks', 'left track', 'right track'].includes(what),
  )
  const ofTravel = [
    travel.motor.id,
    ...(travel.block === null ? [] : [travel.block.id]),
    ...(travel.swivel === null ? [] : [travel.swivel.id]),
    ...travel.lines.map(({ id }) => id),
  ]
  return [
    'engine',
    ...circuits,
    ...(drives ? ofTravel : []),
    ...['filter', 'cooler', 'cooler-bypass', 'strainer', 'breather', 'reservoir'],
  ]
}

/** The circuit whose suction line is meant is there. */
export const isShared = (diagram: Diagram, name: string | null): boolean =>
  name !== null && diagram.circuits.some((circuit) => circuit.name === name && circuit.suctionSharedWith === null)

/** The drawn id that a component's number belongs to: its own, that of the whole it is a part of, or its first part's. */
const placeOf = (component: string, diagram: Diagram, ids: readonly string[]): string | null => {
  const alias = ALIASES.get(component) ?? component
  if (ids.includes(alias)) return alias
  const shared = diagram.circuits.find(({ name }) => component === `circuits.${name}.lines.suction`)?.suctionSharedWith
  if (shared != null && ids.includes(`circuits.${shared}.lines.suction`)) return `circuits.${shared}.lines.suction`
  const segments = alias.split('.')
  for (let used = segments.length - 1; used > 0; used -= 1) {
    const whole = segments.slice(0, used).join('.')
    if (ids.includes(whole)) return whole
  }
  return ids.find((id) => id.startsWith(`${alias}.`) && segments.length > 2) ?? null
}

/** Sorts the rows of a table into those that are drawn and those that are told beside the drawing. */
export const placedMarks = (diagram: Diagram, marks: readonly Mark[]): Marks => {
  const ids = drawableIds(diagram)
  const hasCooler = diagram.cooler !== null || marks.some(({ component }) => component === 'cooler')
  const places = marks.map((mark) => {
    const place = placeOf(mark.component, diagram, ids)
    return { mark, place: place === 'cooler-bypass' && !hasCooler ? null : place }
  })
  const at = new Map<string, readonly string[]>()
  for (const { mark, place } of places) if (place !== null) at.set(place, [...(at.get(place) ?? []), mark.number])
  return { at, beside: places.flatMap(({ mark, place }) => (place === null ? [mark] : [])) }
}
