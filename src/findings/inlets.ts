/** Inlet pressures against what the pumps need, by suction line; the two checks of it differ only in the temperature. */
import { INLET_SOURCE, thinAir } from '../tables/limits.ts'
import { barFromPascals } from '../units/shop-units.ts'
import type { CheckInput, Judged } from './check.ts'
import type { CircuitWithFigures } from './circuits.ts'
import { atLeast, isBelow } from './judging.ts'

interface Inlet extends CircuitWithFigures {
  readonly pressureBar: number
}

/** Component id of the line that feeds a circuit's pump: its owner's where it is shared. */
export const suctionLineOf = ({ circuit }: CircuitWithFigures): string =>
  circuit.lines.suction?.id ?? `circuits.${circuit.suctionSharedWith ?? circuit.name}.lines.suction`

/** How much an inlet is short of [bar]; below zero where it has more than it needs. */
const shortage = (judged: Judged): number => Number(judged.limit) - Number(judged.value)

/** One judgement a suction line: of the pumps on it, the one that is worst off. */
export const judgeInlets = ({ more }: CheckInput, inlets: readonly Inlet[]): readonly Judged[] => {
  const byLine = new Map<string, Judged>()
  for (const inlet of inlets) {
    const component = suctionLineOf(inlet)
    const limit = barFromPascals(inlet.circuit.pump.minInletPressure)
    const judged = atLeast(
      { component, value: inlet.pressureBar, limit, unit: 'bar abs', source: INLET_SOURCE },
      isBelow(more.atmosphereBar - limit, thinAir.value) ? 'watch' : 'change',
    )
    const other = byLine.get(component)
    if (!other || shortage(judged) > shortage(other)) byLine.set(component, judged)
  }
  return [...byLine.values()]
}

/** Whether a pump on that line gets less than it needs, warm or at the coldest start. */
export const isStarved = (circuits: readonly CircuitWithFigures[], line: string): boolean =>
  circuits.some((one) => {
    const limit = barFromPascals(one.circuit.pump.minInletPressure)
    const lowest = Math.min(one.figures.inletPressureBarAbs, one.more.coldInletBarAbs)
    return suctionLineOf(one) === line && isBelow(lowest, limit)
  })
