/**
 * Flow of each circuit that works implements or an attachment against what it was before the option, all levers in
 * neutral: what is bought for the tracks makes the boom drop faster as well.
 */
import { noticeable } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { circuitsOf } from '../circuits.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'everything-faster',
  wording: {
    /** Heading of a circuit's row where boom, swing and attachment stay as they were. */
    within: 'Boom, swing and attachment stay as fast as they were',
    /** Heading where they get faster. */
    over: 'Boom, swing or attachment get faster too',
    /** Below the heading. */
    why: 'A boom that drops or swings faster than it was cushioned for hits its stops, tips loads and catches people unaware.',
  },
  judge: (input) =>
    circuitsOf(input).flatMap(({ circuit, id, more }) => {
      const was = input.before?.more.circuits[circuit.name]?.neutralFlowLpm
      if (was === undefined || circuit.works.length === 0) return []
      return [
        atMost(
          {
            component: id,
            value: more.neutralFlowLpm,
            limit: was * (1 + noticeable.value),
            unit: 'L/min',
            source: `the machine before the change, and 2 %: ${noticeable.source}`,
          },
          'watch',
        ),
      ]
    }),
}
