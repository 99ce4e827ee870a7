/** What is worth reading next: assumed figures under the name of the reading that replaces or calibrates them. */
import type { Reading } from '../evaluation.ts'
import type { Readings } from '../question.ts'
import type { Sensitivity } from '../ranges/sensitivity.ts'
import { percentFromShare } from '../units/shop-units.ts'
import { entryFor } from './entries.ts'
import type { SurveyGroup } from './entry.ts'

interface Instead {
  readonly figure: RegExp
  /** Entry of the scenario whose reading calibrates that figure. */
  readonly reading: string
  readonly isThere: (readings: Readings) => boolean
}

/** Figures that nobody measures by themselves: a reading of the whole machine tells more, and calibrates them. */
const INSTEAD: readonly Instead[] = [
  {
    figure: /^(?:reservoir\.heat-transfer|other-heat-transfer|other-cooling-surface|reservoir\.cooling-surface)$/u,
    reading: 'measured.oil-temperature.reading',
    isThere: ({ oilTemperature }) => oilTemperature !== null,
  },
  {
    figure: /^circuits\.[^.]+\.pump\.efficiency\.volumetric$/u,
    reading: 'measured.flows',
    isThere: ({ flows }) => flows.length > 0,
  },
  {
    figure: /^(?:travel\.motor\.efficiency\.|travel\.(?:track|wheel)\.efficiency$|site\.ground\.rolling-resistance$)/u,
    reading: 'measured.travel.time',
    isThere: ({ travel }) => travel !== null,
  },
]

interface Named {
  readonly path: string
  readonly file: SurveyGroup['file']
}

/** Under which entry a figure is read; null where no reading that is not there yet would tell. */
const readAs = (path: string, readings: Readings): Named | null => {
  const instead = INSTEAD.find(({ figure }) => figure.test(path))
  if (instead !== undefined && !instead.isThere(readings)) return { path: instead.reading, file: 'scenario' }
  const named: Named = { path, file: entryFor(path, 'machine') === null ? 'scenario' : 'machine' }
  return entryFor(named.path, named.file) === null ? null : named
}

/** One per cent of speed weighs as much as one kelvin of oil. */
const weight = ({ effectOnSpeedPercent, effectOnOilK }: Reading): number =>
  Math.max(effectOnSpeedPercent ?? 0, effectOnOilK)

const circuitOf = (path: string): string => {
  const [first, name] = path.split('.')
  return first === 'circuits' && name !== undefined && name !== 'main' ? ` (${name})` : ''
}

/** Below this [% of speed, K of oil] nobody could tell, nor could the solver. */
const LEAST = 0.05

/** Figures err independently of each other: squares add. */
const together = (values: readonly number[]): number => Math.hypot(...values)

/** Every reading that is not there yet, that which matters most first. */
export const readingsWorth = (found: readonly Sensitivity[], readings: Readings): readonly Reading[] => {
  const groups = new Map<string, { named: Named; of: Sensitivity[] }>()
  for (const sensitivity of found) {
    const named = readAs(sensitivity.path, readings)
    if (named === null) continue
    const group = groups.get(named.path) ?? { named, of: [] }
    group.of.push(sensitivity)
    groups.set(named.path, group)
  }
  return [...groups.values()]
    .map(({ named, of }): Reading => {
      const entry = entryFor(named.path, named.file)
      const speeds = of.flatMap(({ speed }) => (speed === null ? [] : [speed]))
      return {
        path: named.path,
        label: `${entry?.label ?? named.path}${circuitOf(named.path)}`,
        how: entry?.how ?? '',
        effectOnSpeedPercent: speeds.length === 0 ? null : percentFromShare(together(speeds)),
        effectOnOilK: together(of.map(({ oil }) => oil)),
      }
    })
    .filter((reading) => weight(reading) >= LEAST)
    .sort((a, b) => weight(b) - weight(a) || (a.path < b.path ? -1 : 1))
}
