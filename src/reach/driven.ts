/** What candidates have in common that make the same choices of all that drives. */

import { Base } from './base.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, composed, type Ground, machinesOf } from './drive.ts'
import type { PriceTable } from './price-table.ts'

export interface Driven {
  readonly choices: Candidate
  /** Most that any of them scores; NaN where none can be built. */
  readonly high: number
  /** Price tables by step (from -1 on) and mode. */
  readonly tables: Map<number, PriceTable>
  /** Price tables where it is worked out what flows, by the code of what carries it and mode. */
  readonly exact: Map<number, PriceTable | null>
  /** Machines that may be there in the end, put together when first asked for. */
  bases: readonly Base[] | null
}

/** Every machine that the choices of what drives may come to, the chosen pieces first. */
export const basesOf = (ground: Ground, driven: Driven): readonly Base[] => {
  if (driven.bases !== null) return driven.bases
  const { driving, motor, sprocket, oil, question } = ground
  const [pumps = [], motors = [], ways, oils] = [driving, motor, sprocket, oil].map((known) =>
    machinesOf(ground, known, choiceOf(known, driven.choices) ?? KEEP),
  )
  const { machine } = question.start.before
  driven.bases = pumps.flatMap((pump) =>
    motors.map((one) => new Base(composed(machine, pump, one, oils?.[0], ways?.[0]))),
  )
  return driven.bases
}
