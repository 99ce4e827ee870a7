/** Length of each pump against the room from the coupling's face to the first obstacle; judged where both are known. */
import { mmFromMetres } from '../../units/shop-units.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'pump-room',
  wording: {
    /** Heading of a pump's row where it goes in. */
    within: 'There is room for the pump',
    /** Heading where it does not: no other part of that length cures it. */
    over: 'There is no room for the pump',
    /** Below the heading. */
    why: 'A pump that does not go in between engine and frame cannot be fitted, whatever else fits.',
  },
  judge: ({ machine }) =>
    machine.circuits.flatMap(({ name, pump, room }) =>
      pump.mount.length === null || room === null
        ? []
        : [
            atMost(
              {
                component: `circuits.${name}.pump`,
                value: mmFromMetres(pump.mount.length),
                limit: mmFromMetres(room.length),
                unit: 'mm',
                source: 'room stated for this machine',
              },
              'stop',
            ),
          ],
    ),
}
