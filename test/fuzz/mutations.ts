/** Damages texts the way hands, editors and file systems do: lines lost, doubled, swapped, values replaced, bytes thrown in. */
import { seeded } from '../fixtures/random-machine.ts'

const VALUES = [
  '',
  '0',
  '-1',
  '1e308',
  '-1e308 bar',
  '.nan',
  '.inf bar',
  '1e-300 mm',
  '0 bar',
  '99999999999 bar',
  '2,300 psi',
  'null',
  '~',
  '[]',
  '{}',
  '[1, 2, [3]]',
  '{a: {b: {c: 1}}}',
  'yes',
  '-8',
  '"-8"',
  '180 °F',
  '5/8 in',
  '1/0 in',
  'G 1/2',
  '24° 99L',
  '100 %',
  '101 %',
  '0 %',
  '0.001 %',
  '1 km/h',
  '1 cm3/rev',
  '1e6 cm3/rev',
  '50 °C',
  '-273.15 °C',
  '__proto__',
  '{__proto__: {x: 1}}',
  '&a [*a, *a]',
  '!!js/function "x"',
  '\u0000',
  '\u202eright to left',
  '💥'.repeat(20),
  'x'.repeat(1000),
  '|\n  text',
  '2026-02-30',
]

const pick = <T>(next: () => number, list: readonly T[]): T => list[Math.floor(next() * list.length)] as T

type Damage = (lines: string[], next: () => number) => void

const at = (lines: readonly string[], next: () => number): number => Math.floor(next() * lines.length)

const DAMAGES: readonly Damage[] = [
  (lines, next) => void lines.splice(at(lines, next), 1),
  (lines, next) => {
    const i = at(lines, next)
    lines.splice(i, 0, lines[i] ?? '')
  },
  (lines, next) => {
    const [i, j] = [at(lines, next), at(lines, next)]
    const kept = lines[i] ?? ''
    lines[i] = lines[j] ?? ''
    lines[j] = kept
  },
  (lines, next) => {
    const i = at(lines, next)
    lines[i] = (lines[i] ?? '').replace(/: .*$/u, `: ${pick(next, VALUES)}`)
  },
  (lines, next) => {
    const i = at(lines, next)
    lines[i] = (lines[i] ?? '').replace(/[\d.]+(?= [a-zA-Z%°])/u, () => String(10 ** (next() * 12 - 6)))
  },
  (lines, next) => {
    const i = at(lines, next)
    lines[i] = `${'  '.repeat(Math.floor(next() * 4))}${(lines[i] ?? '').trim()}`
  },
  (lines, next) => {
    const i = at(lines, next)
    const line = lines[i] ?? ''
    const cut = Math.floor(next() * line.length)
    lines[i] =
      line.slice(0, cut) +
      pick(next, ['\t', '"', '{', '}', ':', '#', '\u0000', ',', '-', '\r', '[', '%', '@']) +
      line.slice(cut)
  },
  (lines, next) => {
    const i = at(lines, next)
    lines[i] = (lines[i] ?? '').replace(
      /[a-z-]+(?=:)/u,
      pick(next, ['__proto__', 'constructor', 'toString', 'part', 'pump', 'lines', '']),
    )
  },
  (lines, next) => void lines.splice(at(lines, next)),
]

/** A text damaged a few times, the same way for the same seed. */
export const damaged = (text: string, seed: number): string => {
  const next = seeded(seed)
  const lines = text.split('\n')
  const times = 1 + Math.floor(next() * 3)
  for (let i = 0; i < times; i++) pick(next, DAMAGES)(lines, next)
  return lines.join('\n')
}
