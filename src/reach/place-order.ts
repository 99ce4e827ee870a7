/** Which places a search has, and the order in which it goes through them. */
import type { LineRole } from '../tables/velocity-limits.ts'
import type { Place, PlaceKind } from './places.ts'

/** Each place once: the circuit that drives may work the attachment as well. */
export const once = (places: readonly Place[]): readonly Place[] => {
  const seen = new Set<string>()
  return places.filter(({ kind, circuits, lines, options }) => {
    const key = lines.length > 0 ? lines.map(({ line }) => line.id).join() : `${kind} ${circuits.join()}`
    const isNew = !seen.has(key) && options.length > 0
    seen.add(key)
    return isNew
  })
}

/** What decides how far a way reaches comes first, what only carries it last: so a search knows early how far it gets. */
const ORDER: readonly PlaceKind[] = ['motor', 'sprocket', 'pump', 'oil', 'cooler', 'filter', 'valve', 'swivel', 'hose']
/** Hoses to the motors take most, for they are narrow and passed twice; a suction takes nothing from the pressure. */
const ROLES: readonly LineRole[] = ['work', 'pressure', 'return', 'auxiliary', 'suction']
export const rankOf = ({ kind, lines }: Place): number =>
  ORDER.indexOf(kind) + ROLES.indexOf(lines[0]?.role ?? 'work') / ROLES.length
