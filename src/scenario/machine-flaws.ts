/** What one key of a machine alone cannot tell: circuits that make a drive, oil that is known, running gear that is whole. */
import { gradeNumber, oilGrades, viscositiesOf } from '../tables/oil-grades.ts'
import { lineFlaws } from './line-flaws.ts'
import type { MachineSpec } from './machine-schema.ts'
import type { Flaw } from './problems.ts'
import type { Unclear } from './sound.ts'
import { twiceStated } from './stated-twice.ts'
import { NAME } from './values.ts'

const flaw = (
  code: Flaw['code'],
  path: Flaw['path'],
  message: string,
  expected: string | null = null,
  remedy: string | null = null,
): Flaw => ({ code, path, message, expected, remedy })

const drivingFlaws = (spec: MachineSpec, unclear: Unclear): Flaw[] => {
  if (unclear('circuits', '*', 'drives')) return []
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

const oilFlaws = ({ fluid }: MachineSpec, unclear: Unclear): Flaw[] => {
  if (unclear('fluid')) return []
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

/** How far one turn goes, and the two figures that turning asks for. */
const trackFlaws = ({ machine, travel }: MachineSpec, unclear: Unclear): Flaw[] => {
  if (unclear('machine', 'type') || unclear('travel', 'wheel')) return []
  const { sprocket, wheel, track } = travel
  if (wheel != null || machine.type === 'wheeled loader') return []
  const byTeeth = sprocket?.pitch != null && (sprocket['links-per-turn'] ?? sprocket.teeth) != null
  const way =
    unclear('travel', 'sprocket') || sprocket?.['pitch-diameter'] != null || byTeeth
      ? []
      : [
          flaw(
            'running-gear-missing',
            ['travel', 'sprocket'],
            'nothing says how far one turn of the sprocket goes',
            'sprocket: {pitch-diameter: …}, or {teeth: …, pitch: …}; of a wheeled machine wheel: {rolling-radius: …}',
          ),
        ]
  const lacking = (['gauge', 'ground-contact-length'] as const)
    .filter((key) => !unclear('travel', 'track', key) && track?.[key] == null)
    .map((key) =>
      flaw(
        'key-missing',
        ['travel', 'track', key],
        `"${key}" is missing under "travel.track"`,
        'a length, such as "0.76 m"',
      ),
    )
  return [...way, ...lacking]
}

const motorFlaws = ({ travel }: MachineSpec, unclear: Unclear): Flaw[] => {
  const at = ['travel', 'motor', 'second-displacement']
  if (unclear(...at) || unclear('travel', 'motor', 'displacement')) return []
  const { displacement, 'second-displacement': second } = travel.motor
  if (second == null || second.si < displacement.si) return []
  const message = 'the second displacement is not smaller than the first'
  return [flaw('number-out-of-range', at, message, 'the smaller of the two')]
}

const bypassFlaws = (spec: MachineSpec, unclear: Unclear): Flaw[] =>
  !unclear('filter') && spec.filter?.drop != null && spec.filter.at?.flow == null && spec.filter['rated-flow'] == null
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
const gearFlaws = ({ machine, travel }: MachineSpec, unclear: Unclear): Flaw[] => {
  if (unclear('machine', 'type') || unclear('travel', 'wheel')) return []
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
const nameFlaws = (spec: Partial<MachineSpec>): Flaw[] => {
  const unusable = (names: object | null | undefined, path: Flaw['path']): Flaw[] =>
    Object.keys(names ?? {})
      .filter((name) => !NAME.test(name))
      .map((name) => ({
        ...flaw('name-unusable', [...path, name], `"${name}" cannot be a name`, 'letters, digits and hyphens'),
        atKey: true,
      }))
  return [...unusable(spec.circuits, ['circuits']), ...unusable(spec.travel?.lines, ['travel', 'lines'])]
}

/**
 * Across fields: what one key alone cannot tell.
 * @param spec what of the machine is sound
 * @param unclear where it is not: no check looks there, so that each finds whatever it reads
 */
export const crossFlaws = (spec: MachineSpec, unclear: Unclear): Flaw[] => [
  ...nameFlaws(spec),
  ...[gearFlaws, drivingFlaws, lineFlaws, oilFlaws, trackFlaws, motorFlaws, bypassFlaws, twiceStated].flatMap((check) =>
    check(spec, unclear),
  ),
]
