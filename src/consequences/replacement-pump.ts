/** The pump of the list that takes the place of a worn one: same size and mount, and the nearest ports. */
import type { Circuit, Machine } from '../machine.ts'
import type { Part, Shop } from '../shop.ts'
import { atLeastStated, choose, type Requirement } from './choose.ts'
import { fits } from './connect.ts'
import { workingPressure } from './line-places.ts'
import { sameSize } from './pump-remedies.ts'
import { type PumpFigures, pumps, tandems } from './stock.ts'

/** The same word, or one that nobody has read. */
export const sameWords = (one: string | null, other: string | null): boolean =>
  one === null || other === null || one.toLowerCase() === other.toLowerCase()

/** What a pump must be to go on in place of the worn one without anything else changing. */
const replacementNeeds = (circuit: Circuit): readonly Requirement<PumpFigures>[] => {
  const { pump } = circuit
  const pressure = workingPressure(circuit)
  return [
    { what: 'displacement', met: ({ displacement }) => sameSize(displacement, pump.displacement) },
    { what: 'flange', met: ({ mount }) => sameWords(mount.flange, pump.mount.flange) },
    { what: 'shaft', met: ({ mount }) => sameWords(mount.shaft, pump.mount.shaft) },
    {
      what: 'rotation',
      met: ({ mount }) => mount.rotation === 'both' || sameWords(mount.rotation, pump.mount.rotation),
    },
    { what: 'pressure', met: ({ maxPressure }) => atLeastStated(maxPressure, pressure) },
    { what: 'speed', met: ({ maxSpeed }) => pump.maxSpeed === null || atLeastStated(maxSpeed, pump.maxSpeed * 0.9) },
  ]
}

/** How far a pump of the list is from the worn one: in displacement, then in ports that would need adapters. */
const distance = (figures: PumpFigures, { pump }: Circuit): number => {
  const size = figures.displacement === null ? 1 : Math.abs(figures.displacement / pump.displacement - 1)
  const other = (['inlet', 'outlet'] as const).filter((name) => {
    const [own, its] = [pump.ports[name], figures[name]]
    return own !== null && its !== null && !fits(own, its)
  })
  return Number(size.toPrecision(6)) + other.length
}

/** Sections of the tandem that the worn pump is part of; the circuit alone for a single pump. */
export const sectionsOf = (circuit: Circuit, machine: Machine): readonly Circuit[] =>
  circuit.pump.section === null
    ? [circuit]
    : machine.circuits
        .filter(({ pump }) => pump.section !== null && pump.part === circuit.pump.part)
        .toSorted((one, other) => (one.pump.section ?? 0) - (other.pump.section ?? 0))

/**
 * The very part where the machine came with one of the list, else the nearest that goes on; null where there is none.
 * @param sections of a tandem in order, or the one circuit
 */
export const replacementPump = (sections: readonly Circuit[], shop: Shop): Part | null => {
  const [first] = sections
  if (first === undefined) return null
  // The very part is the nearest, where the machine came with a part of the list.
  const own = shop.parts.find(({ id }) => id === first.pump.part)
  if (own !== undefined) return own
  if (first.pump.section === null)
    return (
      choose(pumps(shop), replacementNeeds(first), (figures) => distance(figures, first), shop).chosen?.part ?? null
    )
  const { chosen } = choose(
    tandems(shop),
    [
      { what: 'sections', met: (tandem) => tandem.sections.length === sections.length },
      ...sections.flatMap((circuit, i) =>
        replacementNeeds(circuit).map(({ what, met }) => ({
          what,
          met: (tandem: { readonly sections: readonly PumpFigures[] }) => {
            const section = tandem.sections[i]
            return section !== undefined && met(section)
          },
        })),
      ),
    ],
    (tandem) => tandem.sections.reduce((sum, section, i) => sum + distance(section, sections[i] ?? first), 0),
    shop,
  )
  return chosen?.part ?? null
}
