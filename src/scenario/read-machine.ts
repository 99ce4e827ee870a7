/**
 * A machine file with its parts and patches: merged, checked against the schema and across its fields, located problems
 * or a machine ready to be resolved.
 */
import type { Draw, PreparedMachine } from '../loaded.ts'
import type { Json } from '../question.ts'
import type { Part } from '../shop.ts'
import { gradeNumber, oilGrades, viscositiesOf } from '../tables/oil-grades.ts'
import { withoutBlanks } from './blanks.ts'
import { flawsOf, keysAt } from './flaws.ts'
import { lineFlaws } from './line-flaws.ts'
import { type MachineSpec, machineFile } from './machine-schema.ts'
import { applyPatch, type Patching } from './patch.ts'
import type { Flaw } from './problems.ts'
import { resolveMachine } from './resolve-machine.ts'
import { twiceStated } from './stated-twice.ts'
import { strayNames, strayRemovals } from './strays.ts'
import { NAME } from './values.ts'

export type MergedMachine =
  | { readonly spec: MachineSpec; readonly data: Json }
  | { readonly flaws: readonly Flaw[]; readonly data: Json }

const flaw = (
  code: Flaw['code'],
  path: Flaw['path'],
  message: string,
  expected: string | null = null,
  remedy: string | null = null,
): Flaw => ({ code, path, message, expected, remedy })

const drivingFlaws = (spec: MachineSpec): Flaw[] => {
  const driving = Object.entries(spec.circuits).filter(([, circuit]) => circuit.drives !== 'no track')
  if (driving.length === 0)
    return [
      flaw(
        'nothing-drives',
        ['circuits'],
        'no circuit drives the machine',
        'one circuit that "drives: both tracks", or one for each track',
      ),
    ]
  const count = (drives: string) => driving.filter(([, circuit]) => circuit.drives === drives).length
  const whole =
    (count('both tracks') === 1 && driving.length === 1) ||
    (count('left track') === 1 && count('right track') === 1 && driving.length === 2)
  if (whole) return []
  const [name] = driving[0] ?? ['']
  return [
    flaw(
      'drive-incomplete',
      ['circuits', name, 'drives'],
      'the circuits do not make one drive',
      'one circuit for both tracks, or one left and one right',
    ),
  ]
}

const oilFlaws = ({ fluid }: MachineSpec): Flaw[] => {
  const grade = fluid.grade ?? null
  const known = grade !== null && viscositiesOf(gradeNumber(grade) ?? Number.NaN) !== null
  const [at40, at100] = [fluid['viscosity-at-40C'], fluid['viscosity-at-100C'] ?? fluid['viscosity-index']]
  if (at40 == null && !known)
    return grade === null
      ? [
          flaw(
            'key-missing',
            ['fluid', 'grade'],
            'nothing says which oil it is',
            'a grade such as ISO VG 46, or the two viscosities of its data sheet',
          ),
        ]
      : [
          flaw(
            'oil-unknown',
            ['fluid', 'grade'],
            `"${grade}" is no grade that the table knows`,
            oilGrades.map((row) => `ISO VG ${row.grade}`).join(', '),
            'or state the two viscosities of its data sheet',
          ),
        ]
  if (at100 == null && !known)
    return [
      flaw(
        'key-missing',
        ['fluid', 'viscosity-at-100C'],
        '"viscosity-at-100C" is missing under "fluid"',
        'a viscosity, such as "6.8 cSt", or the viscosity index',
      ),
    ]
  const [nu40, nu100] = [at40?.si, fluid['viscosity-at-100C']?.si]
  return nu40 !== undefined && nu100 !== undefined && nu100 >= nu40
    ? [
        flaw(
          'number-out-of-range',
          ['fluid', 'viscosity-at-100C'],
          'the oil is not thinner at 100 °C than at 40 °C',
          'less than the viscosity at 40 °C',
        ),
      ]
    : []
}

const travelFlaws = ({ machine, travel }: MachineSpec): Flaw[] => {
  const flaws: Flaw[] = []
  const { sprocket, wheel, track, motor } = travel
  if (wheel == null && machine.type !== 'wheeled loader') {
    const byTeeth = sprocket?.pitch != null && (sprocket['links-per-turn'] ?? sprocket.teeth) != null
    if (sprocket?.['pitch-diameter'] == null && !byTeeth)
      flaws.push(
        flaw(
          'running-gear-missing',
          ['travel', 'sprocket'],
          'nothing says how far one turn of the sprocket goes',
          'sprocket: {pitch-diameter: …}, or {teeth: …, pitch: …}; of a wheeled machine wheel: {rolling-radius: …}',
        ),
      )
    for (const key of ['gauge', 'ground-contact-length'] as const)
      if (track?.[key] == null)
        flaws.push(
          flaw(
            'key-missing',
            ['travel', 'track', key],
            `"${key}" is missing under "track"`,
            'a length, such as "0.76 m"',
          ),
        )
  }
  const second = motor['second-displacement']
  if (second != null && second.si >= motor.displacement.si)
    flaws.push(
      flaw(
        'number-out-of-range',
        ['travel', 'motor', 'second-displacement'],
        'the second displacement is not smaller than the first',
        'the smaller of the two',
      ),
    )
  return flaws
}

const bypassFlaws = (spec: MachineSpec): Flaw[] =>
  spec.filter?.drop != null && spec.filter.at?.flow == null && spec.filter['rated-flow'] == null
    ? [
        flaw(
          'key-missing',
          ['filter', 'at'],
          'the drop of the filter is stated without its flow',
          'at: {flow: …, viscosity: …}',
        ),
      ]
    : []

/** Running gear that does not go with the type of machine. */
const gearFlaws = ({ machine, travel }: MachineSpec): Flaw[] => {
  const wheeled = machine.type === 'wheeled loader'
  if (wheeled === (travel.wheel != null)) return []
  return [
    flaw(
      'running-gear-missing',
      wheeled ? ['travel'] : ['travel', 'wheel'],
      wheeled ? `a ${machine.type} has wheels` : `a ${machine.type} has no wheels`,
      wheeled ? 'wheel: {rolling-radius: …}' : 'sprocket and track',
    ),
  ]
}

/** Names become part of component ids, so that a dot or a space in one would break them. */
const nameFlaws = (spec: MachineSpec): Flaw[] => {
  const unusable = (names: object | null | undefined, path: Flaw['path']): Flaw[] =>
    Object.keys(names ?? {})
      .filter((name) => !NAME.test(name))
      .map((name) => ({
        ...flaw('name-unusable', [...path, name], `"${name}" cannot be a name`, 'letters, digits and hyphens'),
        atKey: true,
      }))
  return [...unusable(spec.circuits, ['circuits']), ...unusable(spec.travel.lines, ['travel', 'lines'])]
}

/** Across fields: what one key alone cannot tell. */
const crossFlaws = (spec: MachineSpec): Flaw[] => [
  ...nameFlaws(spec),
  ...gearFlaws(spec),
  ...drivingFlaws(spec),
  ...lineFlaws(spec),
  ...oilFlaws(spec),
  ...travelFlaws(spec),
  ...bypassFlaws(spec),
  ...twiceStated(spec),
]

/**
 * Merges patches over a machine file and checks the result.
 * @param machine plain data of the machine file
 * @returns the checked file, or every flaw with its path in the machine
 */
export const mergeMachine = (machine: Json, patches: readonly Json[], parts: readonly Part[]): MergedMachine => {
  const into: Patching = { parts, flaws: [] }
  let data = applyPatch({}, withoutBlanks(machine, machineFile), into)
  const strays: Flaw[] = []
  for (const patch of patches) {
    strays.push(...strayNames(data, patch), ...strayRemovals(patch, (path) => keysAt(machineFile, path)))
    data = applyPatch(data, patch, into)
  }
  // What is wrong inside a misspelt name, or where a part could not be placed, says nothing that this does not.
  const unplaced = [...strays.map(({ path }) => path), ...into.flaws.map(({ path }) => path.slice(0, -1))]
  const inStray = (flaw: Flaw) => unplaced.some((path) => path.every((step, i) => flaw.path[i] === step))
  into.flaws.push(...strays)
  const read = machineFile.safeParse(data)
  if (!read.success) {
    const shape = flawsOf(read.error, data, machineFile).filter((flaw) => !inStray(flaw))
    return { flaws: [...into.flaws, ...shape], data }
  }
  const flaws = [...into.flaws, ...crossFlaws(read.data)]
  return flaws.length > 0 ? { flaws, data } : { spec: read.data, data }
}

/** A merged machine as a function of a draw. */
export const prepared = (spec: MachineSpec): PreparedMachine => ({
  resolve: (draw?: Draw) => resolveMachine(spec, draw ?? null),
})
