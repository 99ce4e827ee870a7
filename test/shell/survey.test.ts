/** `feasibility survey` in process: what it writes, what it keeps, what it refuses. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { BrowserMissing } from '../../src/shell/browser/browser-missing.ts'
import { fakePrinter, runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'survey ü '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const FILES = ['machine.yaml', 'scenario.yaml', 'survey.html', 'survey.pdf']

test('where there is no shop yet, it is said that one is wanted', async () => {
  rmSync(join(folder, 'shop'), { recursive: true })
  const { code, stderr } = await runCommand(['survey', '--format', 'html'], folder)
  expect(code).toBe(0)
  expect(stderr).toContain('Take out/survey/survey.html')
  expect(stderr).toContain('no folder "shop"')
})

test('a scenario in place of a machine is told as one', async () => {
  const { code, stderr } = await runCommand(['survey', 'twice-as-fast.yaml'], folder)
  expect(code).toBe(3)
  expect(stderr).toContain('this looks like a scenario')
  expect(stderr).toContain('1 mistake')
})

test('a blank survey: sheet and files, the schema of the editor is there', async () => {
  const prints: { html: string; date: string }[] = []
  const { code, stdout, stderr } = await runCommand(['survey'], folder, fakePrinter(prints))
  expect({ code, stdout }).toEqual({ code: 0, stdout: 'out/survey\n' })
  // The way on.
  expect(stderr).toContain('Take out/survey/survey.pdf')
  expect(stderr).toContain('feasibility check out/survey/scenario.yaml')
  expect(stderr).not.toContain('no folder')
  const out = join(folder, 'out', 'survey')
  expect(readdirSync(out).sort()).toEqual(FILES)
  const html = readFileSync(join(out, 'survey.html'), 'utf8')
  expect(prints[0]?.html).toBe(html)
  expect(html).toContain('<svg')
  expect(html).toContain('Relief: setting by the book')
  expect(html).not.toMatch(/undefined|\[object|<script|\bsafe\b/u)
  for (const file of ['machine.yaml', 'scenario.yaml']) {
    const schema = /\$schema=(.*)/u.exec(readFileSync(join(out, file), 'utf8'))?.[1] ?? ''
    expect(JSON.parse(readFileSync(resolve(out, schema), 'utf8'))).toHaveProperty('properties.format')
    expect(dirname(schema).endsWith('scenarios/schema')).toBe(true)
  }
})

test('of a machine: what it says is filled in', async () => {
  const { code } = await runCommand(['survey', 'machines/wren-09.yaml', '--format', 'html'], folder)
  expect(code).toBe(0)
  const out = join(folder, 'out', 'survey', 'wren-09')
  expect(readdirSync(out).sort()).toEqual(FILES.filter((name) => !name.endsWith('.pdf')))
  const html = readFileSync(join(out, 'survey.html'), 'utf8')
  expect(html).toContain('<title>Survey of Wren 09</title>')
  expect(html).toContain('8.6\u00a0kW')
})

test('a file that somebody has filled in is kept, and said to be', async () => {
  await runCommand(['survey', '--format', 'html'], folder)
  const mine = join(folder, 'out', 'survey', 'machine.yaml')
  writeFileSync(mine, 'format: 1\n# my readings\n')
  const { code, stderr } = await runCommand(['survey', '--format', 'html'], folder)
  expect(code).toBe(0)
  expect(stderr).toContain('out/survey/machine.yaml is there already and was kept')
  expect(readFileSync(mine, 'utf8')).toContain('# my readings')
})

test('a machine that is written wrongly is exit code 3, one that is not there too', async () => {
  const path = join(folder, 'machines', 'wren-09.yaml')
  writeFileSync(path, readFileSync(path, 'utf8').replace('mass: 980 kg', 'mass: 980 bar'))
  const wrong = await runCommand(['survey', 'machines/wren-09.yaml'], folder)
  expect(wrong.code).toBe(3)
  expect(wrong.stderr).toContain('[unit-of-another-dimension]')
  const missing = await runCommand(['survey', 'machines/nothing.yaml'], folder)
  expect(missing.code).toBe(3)
  expect(missing.stderr).toContain('[file-missing]')
})

test('without a browser the sheet is there as HTML, exit code 4', async () => {
  const none = async () => {
    throw new BrowserMissing([{ place: 'chromium on PATH', outcome: 'not there' }], 'linux')
  }
  const { code, stderr } = await runCommand(['survey', '--format', 'pdf'], folder, none)
  expect(code).toBe(4)
  expect(stderr).toContain('the PDF is missing')
  expect(readdirSync(join(folder, 'out', 'survey')).sort()).toEqual(FILES.filter((name) => !name.endsWith('.pdf')))
})
