/** The record after the work on the terminal and in the customer's copy. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'
const HEADING = 'What was promised, what was measured'
let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'acceptance '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

test('is there once something was measured, and only then', async () => {
  const before = await runCommand(['check', SCENARIO], folder)
  expect(before.stdout).not.toContain(HEADING)
  const path = join(folder, SCENARIO)
  const after = 'after: {option: Bigger pump, relief-pressure: 130 bar}\nstatus:'
  writeFileSync(path, readFileSync(path, 'utf8').replace('status:', after))
  const { code, stdout } = await runCommand(['check', SCENARIO], folder)
  expect(code).toBe(0)
  expect(stdout).toContain(`${HEADING}:`)
  // 155 bar by the book, 3 % either way
  expect(stdout).toMatch(/not kept Relief pressure: promised 150 bar to 160 bar, measured 130 bar/u)
  await runCommand(['report', SCENARIO, '--format', 'html', '--quiet'], folder)
  const html = readFileSync(join(folder, 'out', 'twice-as-fast', 'customer.html'), 'utf8')
  expect(html).toContain(`<h2 id="h-acceptance">${HEADING}</h2>`)
})
