/** Lines of a machine: how wide they are, hoses that the tables know, and which of them are shared. */
import { hoseKinds } from '../tables/hose-ratings.ts'
import type { MachineSpec } from './machine-schema.ts'
import { didYouMean, type Flaw } from './problems.ts'
import type { Unclear } from './sound.ts'

const flaw = (
  code: Flaw['code'],
  path: Flaw['path'],
  message: string,
  expected: string | null = null,
  remedy: string | null = null,
): Flaw => ({ code, path, message, expected, remedy })

/** Flaws of every line, each with its path in the machine. */
export const lineFlaws = (spec: Partial<MachineSpec>, unclear: Unclear): Flaw[] => {
  const flaws: Flaw[] = []
  const circuits = spec.circuits ?? {}
  const check = (
    path: Flaw['path'],
    line:
      | {
          hose?: number | null | undefined
          bore?: unknown
          kind?: string | null | undefined
          'max-pressure'?: unknown
          length?: unknown
        }
      | null
      | undefined,
  ) => {
    if (line == null) return
    if (line.hose == null && line.bore == null && !unclear(...path, 'hose') && !unclear(...path, 'bore'))
      flaws.push(
        flaw(
          'key-missing',
          [...path, 'hose'],
          `"hose" is missing under "${path.join('.')}"`,
          'a dash size such as -8, or a bore',
        ),
      )
    const rated = line['max-pressure'] != null || unclear(...path, 'max-pressure')
    if (line.kind != null && !rated && !hoseKinds.includes(line.kind))
      flaws.push(
        flaw(
          'hose-kind-unknown',
          [...path, 'kind'],
          `"${line.kind}" is no hose that the tables know`,
          hoseKinds.map((k) => `"${k}"`).join(', '),
          didYouMean(line.kind, hoseKinds) ?? 'or state its max-pressure',
        ),
      )
  }
  for (const [name, circuit] of Object.entries(circuits)) {
    const base = ['circuits', name, 'lines']
    const shared = circuit.lines?.suction?.['same-as'] ?? null
    const owner = shared === null || !Object.hasOwn(circuits, shared) ? null : circuits[shared]?.lines?.suction
    if (shared === null) {
      check([...base, 'suction'], circuit.lines?.suction)
      const suction = circuit.lines?.suction
      if (suction != null && suction.length == null && !unclear(...base, 'suction', 'length'))
        flaws.push(
          flaw(
            'key-missing',
            [...base, 'suction', 'length'],
            `"length" is missing under "${[...base, 'suction'].join('.')}"`,
            'a length, such as "0.6 m"',
          ),
        )
    } else if (
      !unclear('circuits', shared, 'lines', 'suction') &&
      (owner == null || shared === name || owner['same-as'] != null)
    )
      flaws.push(
        flaw(
          'circuit-unknown',
          [...base, 'suction', 'same-as'],
          `there is no circuit "${shared}" with a suction line of its own`,
          Object.keys(circuits)
            .filter((n) => n !== name)
            .map((n) => `"${n}"`)
            .join(', ') || null,
          didYouMean(shared, Object.keys(circuits)),
        ),
      )
    const beside = Object.entries(circuit.lines?.suction ?? {}).find(([key, v]) => key !== 'same-as' && v != null)?.[0]
    if (shared !== null && beside !== undefined)
      flaws.push({
        ...flaw(
          'one-of-two',
          [...base, 'suction', beside],
          `"${beside}" stands beside "same-as", and a line that is shared has no figures of its own`,
          `figures under "${shared}", or "same-as: null" with a line of its own`,
        ),
        atKey: true,
      })
    check([...base, 'pressure'], circuit.lines?.pressure)
    check([...base, 'return'], circuit.lines?.return)
    check(['circuits', name, 'auxiliary', 'lines', 'out'], circuit.auxiliary?.lines?.out)
    check(['circuits', name, 'auxiliary', 'lines', 'back'], circuit.auxiliary?.lines?.back)
  }
  for (const [name, line] of Object.entries(spec.travel?.lines ?? {})) check(['travel', 'lines', name], line)
  return flaws
}
