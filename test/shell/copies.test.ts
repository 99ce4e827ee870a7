/** Which copies the command writes, and what each carries. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility copies '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const report = (...args: readonly string[]) => runCommand(['report', SCENARIO, '--quiet', ...args], folder)
const written = () => readdirSync(join(folder, 'out', 'twice-as-fast')).sort()
const html = (copy: string) => readFileSync(join(folder, 'out', 'twice-as-fast', `${copy}.html`), 'utf8')

describe('--copy', () => {
  test('all writes three, each as HTML and PDF, and one line an answer', async () => {
    const { code, stdout } = await report('--copy', 'all')
    expect(code).toBe(0)
    expect(stdout.trim().split('\n')).toHaveLength(1)
    expect(written()).toEqual([
      'customer.html',
      'customer.pdf',
      'shop.html',
      'shop.pdf',
      'technician.html',
      'technician.pdf',
    ])
  })
  test.each(['customer', 'shop', 'technician'])('%s writes that one alone', async (copy) => {
    expect((await report('--copy', copy, '--format', 'html')).code).toBe(0)
    expect(written()).toEqual([`${copy}.html`])
  })
  test('only the shop’s shows cost and margin', async () => {
    await report('--copy', 'all', '--format', 'html')
    expect(html('shop')).toContain('Mark-up')
    for (const copy of ['customer', 'technician'])
      expect(html(copy)).not.toMatch(/Mark-up|Margin|not for the customer/u)
  })
  test('another word is refused with those that there are', async () => {
    const { code, stderr } = await report('--copy', 'insurer')
    expect(code).toBe(2)
    expect(stderr).toContain('customer, shop, technician, all')
  })
})

test('--every-option gives the technician a work order for each', async () => {
  await report('--copy', 'technician', '--format', 'html')
  const few = html('technician').match(/<section class="order/gu)?.length ?? 0
  await report('--copy', 'technician', '--format', 'html', '--every-option')
  const every = html('technician').match(/<section class="order/gu)?.length ?? 0
  const json = JSON.parse((await runCommand(['check', SCENARIO, '--json'], folder)).stdout) as { options: unknown[] }
  expect(every).toBeGreaterThanOrEqual(json.options.length)
  expect(every).toBeGreaterThan(few)
})

test('a page carries only the font files that it has a letter of', async () => {
  await report('--copy', 'technician', '--format', 'html')
  const faces = (text: string) => text.match(/@font-face/gu)?.length ?? 0
  // Three weights of Latin; "µ" and "·" are in Latin too.
  expect(faces(html('technician'))).toBe(3)
  const shop = join(folder, 'twice-as-fast.yaml')
  const { writeFileSync } = await import('node:fs')
  writeFileSync(shop, readFileSync(shop, 'utf8').replace(/^title:.*$/mu, 'title: Ładowarka'))
  await report('--copy', 'customer', '--format', 'html')
  expect(faces(html('customer'))).toBe(6)
})

test('letters that no font of the report has are told; those of other scripts that it has are not', async () => {
  const shop = join(folder, 'twice-as-fast.yaml')
  const { writeFileSync } = await import('node:fs')
  const titled = (title: string) =>
    writeFileSync(shop, readFileSync(shop, 'utf8').replace(/^title:.*$/mu, `title: ${title}`))
  titled('Ольха Ελιά דוד علي Nguyễn')
  expect((await report('--copy', 'customer', '--format', 'html')).stderr).not.toContain('fonts have no sign')
  titled('田中 farm')
  expect((await report('--copy', 'customer', '--format', 'html')).stderr).toContain('no sign for 田 中; such letters')
})
