/** What the README prints is what happens: its smallest files answer, its mistake is shown as it stands there. */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
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
