/** What an attachment asks for that no part of the list changes: a pressure that the relief does not let stand. */
import type { Machine } from '../machine.ts'
import type { Wants } from '../question.ts'
import { barFromPascals } from '../units/shop-units.ts'

/**
 * Oil reaches a tool only while its pressure is below the relief setting of the circuit that works it.
 * @param machine as every way finds it
 * @returns in plain words what would have to be true; empty where the relief lets the pressure stand
 */
export const attachmentTakes = ({ circuits }: Machine, { attachment }: Wants): readonly string[] => {
  if (attachment === null) return []
  const working = circuits.filter(({ works }) => works.includes('attachment'))
  if (working.length === 0) return ['a circuit that works an attachment']
  if (working.some(({ relief }) => relief.setting > attachment.pressure)) return []
  const bar = Math.ceil(barFromPascals(attachment.pressure) - 1e-9)
  return [`a relief valve set above ${bar} bar, with a pump, a valve and hoses that bear it`]
}
