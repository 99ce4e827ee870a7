/** What candidates have in common that make the same choices of all that drives. */

import { Base } from './base.ts'
import { type Candidate, KEEP } from './candidate.ts'
import { choiceOf, composed, type Ground, machinesOf } from './drive.ts'
import type { Joined } from './joined-lines.ts'
import { knownIn } from './known-in.ts'
import type { PriceTable } from './price-table.ts'
import type { Mode, Sum } from './sums.ts'

export interface Driven {
  readonly choices: Candidate
  /** Most that any of them scores; NaN where none can be built. */
  readonly high: number
  /** Price tables by step (from -1 on) and mode. */
  readonly tables: Map<number, PriceTable>
  /** Least cost of the choices last asked of, with what flows there, by mode: several steps ask for it in turn. */
  last: { readonly key: string; readonly sums: Map<Mode, Sum | null>; readonly joined: Joined | null } | null
  /** With the motors that are there it would not move; null while nobody asked. */
  isStuck: boolean | null
}

/** Every machine that the choices of what drives may come to, the chosen pieces first. */
export const basesOf = (ground: Ground, { choices }: Driven): readonly Base[] =>
  knownIn(ground.bases, choices.join(), () => {
    const { driving, motor, sprocket, oil, question } = ground
    const [pumps = [], motors = [], ways, oils] = [driving, motor, sprocket, oil].map((known) =>
      machinesOf(ground, known, choiceOf(known, choices) ?? KEEP),
    )
    const { machine } = question.start.before
    return pumps.flatMap((pump) => motors.map((one) => new Base(composed(machine, pump, one, oils?.[0], ways?.[0]))))
  })
