/**
 * Shaft power at the relief setting against what the engine can give: the circuits that drive together, or another one
 * alone, whichever is worse. It is the corner that a bigger pump runs into first.
 */
import { ENGINE_SOURCE } from '../../tables/limits.ts'
import type { Check } from '../check.ts'
import { atMost } from '../judging.ts'

export const check: Check = {
  id: 'engine-power',
  wording: {
    /** Heading of the engine's row while there is power to spare at full pressure. */
    within: 'The engine has the power at full pressure',
    /** Heading where it is short for all day (watch) or short altogether (stop). */
    over: 'The engine has little or nothing to spare at full pressure',
    /** Below the heading; also says what a stall in the travel figures means. */
    why: 'With the levers fully over and the machine held, the pumps ask for this power; where the engine has less, it stalls at full lever, and the operator has to ease off.',
  },
  judge: ({ machine, more }) => {
    const held = { component: 'engine', value: more.reliefPowerKw, unit: 'kW', source: ENGINE_SOURCE }
    const whole = atMost({ ...held, limit: more.deratedPowerKw }, 'stop')
    const allDay = atMost({ ...held, limit: more.deratedPowerKw * machine.engine.continuousFraction }, 'watch')
    return [whole.severity === 'stop' ? whole : allDay]
  },
}
