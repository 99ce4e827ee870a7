/** What one key of a scenario alone cannot tell: shares that make a whole, circuits and options that are there. */
import { didYouMean, type Flaw, oneOf } from './problems.ts'
import { wholeOf } from './read-scenario.ts'
import type { ScenarioSpec } from './scenario-schema.ts'
import type { Unclear } from './sound.ts'

/** A scenario as far as it is sound, and what it is held against. */
export interface Known {
  readonly spec: Partial<ScenarioSpec>
  readonly unclear: Unclear
  /** Names of the machine's circuits; null where they could not be read. */
  readonly circuits: readonly string[] | null
  /** What its circuits work beside the tracks; null where that could not be read. */
  readonly works: readonly string[] | null
}

const flaw = (
  code: Flaw['code'],
  path: Flaw['path'],
  message: string,
  expected: string | null,
  remedy: string | null = null,
): Flaw => ({ code, path, message, expected, remedy })

/** Of every option; undefined where it could not be read. */
const namesOf = ({ options }: Partial<ScenarioSpec>): readonly string[] => (options ?? []).map((option) => option?.name)

const dutyFlaws = ({ spec, unclear }: Known): Flaw[] => {
  if (spec.duty == null || unclear('duty')) return []
  const whole = wholeOf(spec.duty)
  if (Math.abs(whole - 1) <= 0.005) return []
  const remedy = spec.duty.idle == null ? null : 'leave out idle, and it is filled up'
  const message = `the shares of the duty make ${Number((whole * 100).toFixed(1))} %`
  return [flaw('shares-not-whole', ['duty'], message, '100 %', remedy)]
}

/** Circuits that readings name. */
const nameFlaws = ({ spec, circuits }: Known): Flaw[] => {
  if (circuits === null) return []
  const known = circuits
  const unknown = (name: string | null | undefined, path: Flaw['path']): Flaw[] =>
    name == null || known.includes(name)
      ? []
      : [flaw('circuit-unknown', path, `the machine has no circuit "${name}"`, known.map((k) => `"${k}"`).join(', '))]
  const { measured } = spec
  const pressures = (block: 'measured' | 'after', key: 'relief-pressure' | 'inlet-pressure') => {
    const list = spec[block]?.[key]
    return Array.isArray(list)
      ? list.flatMap((reading, i) => unknown(reading?.circuit, [block, key, i, 'circuit']))
      : []
  }
  return [
    ...(measured?.flows ?? []).flatMap((flow, i) => unknown(flow?.circuit, ['measured', 'flows', i, 'circuit'])),
    ...(['measured', 'after'] as const).flatMap((block) => [
      ...pressures(block, 'relief-pressure'),
      ...pressures(block, 'inlet-pressure'),
    ]),
  ]
}

/** What was carried out is one of the options. */
const afterFlaws = ({ spec, unclear }: Known): Flaw[] => {
  if (unclear('options', '*', 'name')) return []
  const option = spec.after?.option ?? null
  const names = namesOf(spec)
  if (option === null || names.includes(option)) return []
  const expected = names.length === 0 ? 'an option of this scenario' : oneOf([...new Set(names)])
  return [
    flaw('word-unknown', ['after', 'option'], `no option is called "${option}"`, expected, didYouMean(option, names)),
  ]
}

/** The recommendation goes by an option's name. */
const optionNameFlaws = ({ spec }: Known): Flaw[] =>
  namesOf(spec).flatMap((name, i, all) =>
    name === undefined || all.indexOf(name) === i
      ? []
      : [flaw('name-twice', ['options', i, 'name'], `two options are called "${name}"`, 'a name of its own for each')],
  )

/** An option says what is changed, or what is to be reached. */
const optionWayFlaws = ({ spec, unclear }: Known): Flaw[] => {
  if (unclear('options', '*', 'changes') || unclear('options', '*', 'reach')) return []
  return (spec.options ?? []).flatMap((option, i) => {
    if (option == null) return []
    const { changes, reach } = option
    if (changes == null && reach == null)
      return [
        flaw('key-missing', ['options', i, 'changes'], '"changes" is missing', 'changes, or reach: {travel-speed: …}'),
      ]
    if (changes != null && reach != null) {
      const message = 'the option says what is changed and what is to be reached'
      return [{ ...flaw('one-of-two', ['options', i, 'reach'], message, 'one of "changes" and "reach"'), atKey: true }]
    }
    const wanted = [reach?.['travel-speed'], reach?.attachment, reach?.['oil-below']]
    return reach == null || wanted.some((figure) => figure != null)
      ? []
      : [
          flaw(
            'key-missing',
            ['options', i, 'reach', 'travel-speed'],
            'nothing is to be reached',
            'travel-speed, attachment or oil-below',
          ),
        ]
  })
}

const attachmentFlaws = ({ spec, works, unclear }: Known): Flaw[] => {
  const wanted = (spec.duty?.attachment?.si ?? 0) > 0
  if (!wanted || unclear('attachment')) return []
  if (spec.attachment == null)
    return [
      flaw(
        'attachment-missing',
        ['duty', 'attachment'],
        'the duty has an attachment, and the scenario none',
        'attachment: {name: …, flow: …, pressure: …}',
      ),
    ]
  return works === null || works.includes('attachment')
    ? []
    : [
        flaw(
          'attachment-missing',
          ['duty', 'attachment'],
          'no circuit of the machine works an attachment',
          'a circuit with "works: [attachment]"',
        ),
      ]
}

/** Flaws across fields, as far as there is something to hold each against. */
export const scenarioFlaws = (known: Known): Flaw[] =>
  [dutyFlaws, nameFlaws, attachmentFlaws, optionNameFlaws, optionWayFlaws, afterFlaws].flatMap((check) => check(known))
