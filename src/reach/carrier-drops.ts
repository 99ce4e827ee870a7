/** What carries the flow at its narrowest, and what it may hold back: for the least that flows and the most behind a motor. */

import type { Conditions } from '../circuit/plant.ts'
import { dropOfLine, dropOfRestriction, dropOfSwivel } from '../circuit/way.ts'
import type { Filter } from '../machine.ts'
import { velocityLimits } from '../tables/velocity-limits.ts'
import type { CubicMetresPerSecond, Metres, Pascals } from '../units/si.ts'
import { type Carrier, steepness } from './carriers.ts'

/**
 * Most that a place which is still open may add behind a motor, at no more than these flows. What is chosen and too small for
 * the flow is found, so no more flows through it than its check allows; what is kept may have been too small before.
 */
export const mostBehind = (
  { place, pieces, bores }: Carrier,
  side: number,
  motorFlow: CubicMetresPerSecond,
  flow: CubicMetresPerSecond,
  at: Conditions,
): Pascals => {
  const within = (bore: Metres, role: 'return' | 'work', most: CubicMetresPerSecond, piece: number) =>
    piece === 0 ? most : Math.min(most, velocityLimits[role].change * (Math.PI / 4) * bore ** 2)
  const drops = Array.from({ length: place.options.length + 1 }, (_, piece): Pascals => {
    const own = pieces[piece]?.machine
    switch (place.kind) {
      case 'hose':
        return place.lines.reduce((sum, { line, role }, k) => {
          if (role !== 'return' && role !== 'work') return sum
          const bore = bores[k]?.[piece] ?? line.bore
          const most = within(bore, role, role === 'work' ? motorFlow : flow, piece)
          return sum + dropOfLine({ ...line, bore }, most, at)
        }, 0)
      case 'valve': {
        const circuit = own?.circuits.filter(({ name }) => place.circuits.includes(name))[side]
        const rated = piece === 0 ? null : (circuit?.valve?.ratedFlow ?? null)
        return 0.5 * dropOfRestriction(circuit?.valve?.restriction, Math.min(flow, rated ?? flow), at)
      }
      case 'swivel': {
        const swivel = own?.travel.swivel ?? null
        const bore = swivel?.bore ?? null
        return dropOfSwivel(swivel, bore === null ? motorFlow : within(bore, 'work', motorFlow, piece), at)
      }
      default:
        return 0
    }
  })
  return Math.max(...drops)
}

/**
 * Pieces of which one takes at least as much as any other of the place, at every flow.
 * @param mayStay whether an option may be there in the end; what is there always may
 */
export const narrowestOf = (
  { place, pieces, bores, widest }: Carrier,
  mayStay: (option: number) => boolean = () => true,
): readonly number[] => {
  const all = [0, ...place.options.flatMap((_, option) => (mayStay(option) ? [option + 1] : []))]
  const first = (list: readonly number[], size: (piece: number) => number): readonly number[] => {
    const least = Math.min(...list.map(size))
    return list.filter((piece) => size(piece) === least).slice(0, 1)
  }
  if (place.kind === 'hose') {
    // What is there may differ from line to line: then it stands beside the narrowest of the list.
    const chosen = first(all.slice(1), (piece) => bores[0]?.[piece] ?? 0)
    if (chosen.length === 0) return [0]
    const isOwn = widest.every((_, k) => (bores[k]?.[0] ?? 0) <= (bores[k]?.[chosen[0] ?? 0] ?? 0))
    const isChosen = widest.every((_, k) => (bores[k]?.[0] ?? 0) >= (bores[k]?.[chosen[0] ?? 0] ?? 0))
    return isOwn ? [0] : isChosen ? chosen : [0, ...chosen]
  }
  if (place.kind === 'valve') {
    const of = (piece: number) =>
      pieces[piece]?.machine.circuits.find(({ name }) => place.circuits.includes(name))?.valve?.restriction
    return first(all, (piece) => -steepness(of(piece)))
  }
  if (place.kind !== 'swivel') return [0]
  const swivelOf = (piece: number) => pieces[piece]?.machine.travel.swivel ?? null
  const stated = all.filter((piece) => (swivelOf(piece)?.restriction ?? null) !== null)
  const drilled = all.filter((piece) => !stated.includes(piece) && (swivelOf(piece)?.bore ?? null) !== null)
  const found = [
    ...first(stated, (piece) => -steepness(swivelOf(piece)?.restriction)),
    ...first(drilled, (piece) => swivelOf(piece)?.bore ?? 0),
  ]
  return found.length > 0 ? found : [0]
}

/** A filter that holds back so much at any flow: its bypass is always open. */
export const holdingBack = (pressure: Pascals): Filter | null =>
  pressure > 0
    ? {
        part: null,
        ratedFlow: null,
        drop: 1e12,
        // Any flow at all, of any oil, is far past it.
        reference: { flow: 1e-9, viscosity: 1e-9 },
        fineness: null,
        beta: null,
        bypass: pressure,
      }
    : null
