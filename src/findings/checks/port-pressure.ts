/**
 * Relief setting with its override against the ratings of the ports that it reaches: pump outlet, valve, swivel and motor.
 * Ports of a family without a rating are not judged. Where only the older edition of a standard rates a port too low, its
 * marking must be looked at (watch).
 */
import type { Connection } from '../../machine.ts'
import { fittingRating } from '../../tables/fitting-ratings.ts'
import type { Check, Judged } from '../check.ts'
import { circuitsOf, drivingPressureBar } from '../circuits.ts'
import { atMost } from '../judging.ts'

/** The weakest port of one component; `part` is null for what came with the machine, whose age nobody knows. */
const judgePorts = (
  component: string,
  part: string | null,
  ports: readonly (Connection | null)[],
  bar: number,
): readonly Judged[] => {
  const rows = ports.flatMap((port) => (port === null ? [] : (fittingRating(port) ?? [])))
  const rating = rows.toSorted((a, b) => a.bar - b.bar || a.olderBar - b.olderBar)[0]
  if (!rating) return []
  const held = { component, value: bar, unit: 'bar', source: rating.source }
  const now = atMost({ ...held, limit: rating.bar }, 'change')
  const older = Math.min(...rows.map(({ olderBar }) => olderBar))
  return [now.severity === 'change' || part !== null ? now : atMost({ ...held, limit: older }, 'watch')]
}

export const check: Check = {
  id: 'port-pressure',
  wording: {
    /** Heading of a component's row while its ports are rated for the pressure. */
    within: 'The ports are rated for the pressure',
    /** Heading where one is not, or is not if it is old. */
    over: 'A port may not be rated for the pressure',
    /** Below the heading. */
    why: 'A port is as much part of the line as its hose; above its rating it can let go.',
  },
  judge: (input) => {
    const { swivel, motor } = input.machine.travel
    const driving = drivingPressureBar(input)
    return [
      ...circuitsOf(input).flatMap(({ circuit: { pump, valve }, id, more }) => [
        ...judgePorts(`${id}.pump`, pump.part, [pump.ports.outlet], more.workingPressureBar),
        ...(valve
          ? judgePorts(`${id}.valve`, valve.part, [valve.ports.inlet, valve.ports.work], more.workingPressureBar)
          : []),
      ]),
      ...(swivel && driving !== null ? judgePorts('travel.swivel', swivel.part, [swivel.ports.work], driving) : []),
      ...(driving === null ? [] : judgePorts('travel.motor', motor.part, [motor.ports.work], driving)),
    ]
  },
}
