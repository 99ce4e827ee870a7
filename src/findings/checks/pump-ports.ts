/**
 * Ports of a new pump against those of the one that it replaces. A watch and no more: ends and adapters follow from the
 * connections themselves. Unknown ports are not judged.
 */
import type { Connection, Pump } from '../../machine.ts'
import type { Check } from '../check.ts'
import { changedPumps } from '../circuits.ts'

const inWords = ({ ports: { inlet, outlet } }: Pump): string => `in ${wordsOf(inlet)}, out ${wordsOf(outlet)}`
const wordsOf = (connection: Connection | null): string => connection?.text ?? 'not read'
const differ = (one: Connection | null, other: Connection | null): boolean =>
  one !== null && other !== null && one.text !== other.text
const known = (pump: Pump): boolean => pump.ports.inlet !== null || pump.ports.outlet !== null

export const check: Check = {
  id: 'pump-ports',
  wording: {
    /** Heading of a new pump's row where its ports are those of the old one. */
    within: 'The new pump has the same ports',
    /** Heading where they differ. */
    over: 'The new pump has other ports',
    /** Below the heading. */
    why: 'Other ports need other hose ends or adapters, and each adapter is one more place that can leak.',
  },
  judge: (input) =>
    changedPumps(input).flatMap(({ circuit, before, id }) => {
      if (!known(circuit.pump) || !known(before.pump)) return []
      const now = circuit.pump.ports
      const there = before.pump.ports
      const other = differ(now.inlet, there.inlet) || differ(now.outlet, there.outlet)
      return [
        {
          component: `${id}.pump.ports`,
          value: inWords(circuit.pump),
          limit: inWords(before.pump),
          unit: '',
          severity: other ? 'watch' : 'ok',
          source: 'the pump that it replaces',
          worseWhenHigher: null,
        },
      ]
    }),
}
