/** The circuit that works the attachment. */
import type { CheckInput } from './check.ts'
import type { CircuitWithFigures } from './circuits.ts'
import { circuitsOf } from './circuits.ts'

/** The first circuit that names the attachment; null where none does. */
export const attachmentCircuit = (input: CheckInput): CircuitWithFigures | null =>
  circuitsOf(input).find(({ circuit }) => circuit.works.includes('attachment')) ?? null
