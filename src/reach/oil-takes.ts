/** What a wished oil temperature asks for that no cooler gives. */
import type { Site } from '../machine.ts'
import type { Wants } from '../question.ts'

/** A cooler in the air brings oil towards the air's temperature and never below it. */
export const oilTakes = ({ ambient }: Site, { oilBelow }: Wants): readonly string[] =>
  oilBelow === null || oilBelow > ambient
    ? []
    : [`air cooler than ${Math.floor(oilBelow + 1e-9)} °C, for no cooler brings oil below the air around it`]
