/** What the README prints is what happens: its smallest files answer, its mistake is shown as it stands there. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { ResultDocument } from '../../src/evaluation.ts'
import { runCommand } from './world.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const README = readFileSync(join(ROOT, 'README.md'), 'utf8')
const blocks = [...README.matchAll(/^```(\w*)\n([\s\S]*?)^```$/gmu)].map(([, kind = '', text = '']) => ({ kind, text }))
const yaml = (begins: string): string =>
  blocks.find(({ kind, text }) => kind === 'yaml' && text.includes(begins))?.text ?? 'not in the README'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'readme '))
  cpSync(join(ROOT, 'scenarios', 'shop'), join(folder, 'shop'), { recursive: true })
  mkdirSync(join(folder, 'machines'))
  writeFileSync(join(folder, 'machines', 'my-machine.yaml'), yaml('Barrow 7'))
  writeFileSync(join(folder, 'my-question.yaml'), yaml('title: Faster'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

test('the smallest machine and question are answered, on the terminal and as a report', async () => {
  const check = await runCommand(['check', 'my-question.yaml'], folder)
  expect([check.code, check.stderr]).toEqual([0, ''])
  expect(check.stdout).toContain('Read the temperature of the tank after an hour of work')
  const report = await runCommand(['report', 'my-question.yaml', '--quiet'], folder)
  expect(report.code).toBe(0)
})

test('the test after the work goes into the same file', async () => {
  writeFileSync(join(folder, 'my-question.yaml'), `${yaml('title: Faster')}${yaml('after:')}`)
  const { code, stdout } = await runCommand(['check', 'my-question.yaml'], folder)
  expect(code).toBe(0)
  expect(stdout).toMatch(/promised .*, measured /u)
})

test('what is wanted goes into the same file, and is searched for', async () => {
  const wants = /`(wants: \{travel-speed: [^`]*\})`/u.exec(README)?.[1] ?? 'not in the README'
  writeFileSync(join(folder, 'my-question.yaml'), `${yaml('title: Faster')}${wants}\n`)
  const { code, stdout } = await runCommand(['reach', 'my-question.yaml', '--budget', '1800'], folder)
  expect(code).toBe(0)
  expect(stdout).toContain('Wanted: 2.2 km/h on the level')
})

test('the survey is where it says, and its files go the way that it says', async () => {
  const machine = 'scenarios/machines/alder-10.yaml'
  expect(README).toContain(`-- survey ${machine}\``)
  const survey = await runCommand(['survey', join(ROOT, machine)], folder)
  expect([survey.code, survey.stdout]).toEqual([0, 'out/survey/alder-10\n'])
  for (const file of ['survey.pdf', 'survey.html', 'machine.yaml', 'scenario.yaml'])
    expect(existsSync(join(folder, 'out/survey/alder-10', file))).toBe(true)
  expect((await runCommand(['survey'], folder)).stdout).toBe('out/survey\n')
  expect(README).toContain('with `out/survey/my-question.yaml`')
  cpSync(join(folder, 'my-question.yaml'), join(folder, 'out/survey/my-question.yaml'))
  cpSync(join(folder, 'machines'), join(folder, 'out/survey/machines'), { recursive: true })
  expect((await runCommand(['check', 'out/survey/my-question.yaml'], folder)).code).toBe(0)
})

test('a hose end that is not on the list is named without a price', async () => {
  const list = join(folder, 'shop', 'parts-hoses.yaml')
  const machine = join(folder, 'machines', 'my-machine.yaml')
  const lines = '  lines: {valve-to-motor: {hose: -4, kind: 2-wire hose, length: 1 m, ends: [G 1/4, G 1/4]}}\n'
  writeFileSync(machine, `${readFileSync(machine, 'utf8')}${lines}`)
  const question = yaml('title: Faster').replace(
    /circuits: .*$/mu,
    'travel: {lines: {valve-to-motor: {part: hose-2w-6}}}',
  )
  writeFileSync(join(folder, 'my-question.yaml'), question)
  const cost = async () => {
    const { stdout } = await runCommand(['check', 'my-question.yaml', '--json'], folder)
    return (JSON.parse(stdout) as ResultDocument).options[0]?.cost.unpriced
  }
  expect(await cost()).toEqual([])
  writeFileSync(list, readFileSync(list, 'utf8').replace(/^.*kind: fitting.*figures: .hose: -6.*$\n/gmu, ''))
  expect(await cost()).toEqual([expect.stringMatching(/^Hose end -6/u)])
})

test('the mistake that it shows', async () => {
  writeFileSync(join(folder, 'my-question.yaml'), yaml('title: Faster').replace('28 °C', '28'))
  const { code, stderr } = await runCommand(['check', 'my-question.yaml'], folder)
  expect(code).toBe(3)
  expect(stderr).toBe(blocks.find(({ text }) => text.startsWith('my-question.yaml:6:'))?.text)
})

test('the search that it shows', async () => {
  const { code, stdout } = await runCommand(['reach', join('scenarios', 'too-hot-to-touch.yaml')], ROOT)
  expect(code).toBe(0)
  const shown =
    blocks
      .find(({ text }) => text.startsWith('Too hot to touch'))
      ?.text.trim()
      .split('\n\n') ?? []
  expect(shown.length).toBeGreaterThan(2)
  for (const paragraph of shown) expect(stdout).toContain(paragraph)
})

test('it stays short', () => expect(README.split('\n').length).toBeLessThan(250))
