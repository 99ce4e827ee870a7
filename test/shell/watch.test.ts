/** --watch: the HTML follows what is saved, the last good one stays, and it ends when it is told to. */
import { type ChildProcess, spawn } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { fakePrinter, quickMaker, type Ran, runCommand } from './world.ts'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const FERNHILL = join(ROOT, 'test', 'fixtures', 'fernhill')
const SCENARIO = 'twice-as-fast.yaml'
const MACHINE = join('machines', readdirSync(join(FERNHILL, 'machines'))[0] ?? '')

let folder = ''
let stop: AbortController
let running: Promise<Ran> | null = null
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility watch '))
  cpSync(FERNHILL, folder, { recursive: true })
  stop = new AbortController()
  running = null
})
afterEach(async () => {
  stop.abort()
  await running
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
})

const pagePath = () => join(folder, 'out', 'twice-as-fast', 'customer.html')
const page = () => (existsSync(pagePath()) ? readFileSync(pagePath(), 'utf8') : '')
const textOf = (file: string) => readFileSync(join(folder, file), 'utf8')
const titled = (title: string) => textOf(SCENARIO).replace(/^title: .*$/mu, `title: ${title}`)
const watchIt = () => {
  running = runCommand(['report', '--watch', SCENARIO], folder, fakePrinter(), stop.signal, quickMaker)
  return until(() => page().includes('</html>'))
}

/** Waits until something is so; a test that waits in vain fails by what it expects next. */
const until = async (isSo: () => boolean): Promise<void> => {
  for (let i = 0; i < 600 && !isSo(); i++) await new Promise((done) => setTimeout(done, 25))
}

/** Longer than anything takes that was begun by a saving. */
const settled = () => new Promise((done) => setTimeout(done, 1500))

describe('in process', () => {
  test('the scenario is saved: the page says what it says', async () => {
    await watchIt()
    writeFileSync(join(folder, SCENARIO), titled('Now with a trailer'))
    await until(() => page().includes('Now with a trailer'))
    expect(page().includes('Now with a trailer')).toBe(true)
  })

  test('an editor that puts a new file in place of the old one is heard, time and again', async () => {
    await watchIt()
    for (const title of ['First saving', 'Second saving']) {
      writeFileSync(join(folder, '.swap'), titled(title))
      rmSync(join(folder, SCENARIO))
      renameSync(join(folder, '.swap'), join(folder, SCENARIO))
      await until(() => page().includes(title))
      expect(page().includes(title)).toBe(true)
    }
    stop.abort()
    expect((await running)?.stderr).not.toContain('not there')
  })

  test('its machine and the shop are heard too', async () => {
    await watchIt()
    writeFileSync(join(folder, MACHINE), textOf(MACHINE).replace(/^( +name:).*$/mu, '$1 Fieldfare 77'))
    await until(() => page().includes('Fieldfare'))
    expect(page()).toMatch(/Fieldfare\s77/u)
    const shop = textOf('shop/shop.yaml')
    const [name = ''] = /Fernhill[^,\n"]*/u.exec(shop.replace(/^#.*$/gmu, '')) ?? []
    expect(name).not.toBe('')
    writeFileSync(join(folder, 'shop', 'shop.yaml'), shop.replaceAll(name, 'Nettlebed Yard'))
    await until(() => page().includes('Nettlebed Yard'))
    expect(page().includes('Nettlebed Yard')).toBe(true)
  })

  test('a mistake is told, the last good page stays, and the next good one is written', async () => {
    await watchIt()
    await settled()
    const good = page()
    const right = textOf(SCENARIO)
    writeFileSync(join(folder, SCENARIO), right.replace(/^asked:.*$/mu, ''))
    await settled()
    expect(page() === good).toBe(true)
    writeFileSync(join(folder, SCENARIO), right.replace(/^title: .*$/mu, 'title: Right again'))
    await until(() => page().includes('Right again'))
    expect(page().includes('Right again')).toBe(true)
    stop.abort()
    const ran = await running
    expect(ran?.stderr).toMatch(/twice-as-fast\.yaml:\d+:\d+: .*asked/u)
  })

  test('ends with 130 and leaves nothing half written', async () => {
    await watchIt()
    stop.abort()
    expect((await running)?.code).toBe(130)
    expect(readdirSync(join(folder, 'out', 'twice-as-fast'))).toEqual(['customer.html'])
  })

  test('a page that could not be made at first is made once it can be', async () => {
    const right = textOf(SCENARIO)
    writeFileSync(join(folder, SCENARIO), 'format: 1\n')
    running = runCommand(['report', '--watch', SCENARIO], folder, fakePrinter(), stop.signal, quickMaker)
    await settled()
    expect(page()).toBe('')
    writeFileSync(join(folder, SCENARIO), right)
    await until(() => page() !== '')
    expect(page().includes('</html>')).toBe(true)
  })

  test('takes one file and no more', async () => {
    for (const args of [[SCENARIO, SCENARIO], ['.']])
      expect((await runCommand(['report', '--watch', ...args], folder)).code).toBe(2)
  })
})

describe('the process', () => {
  const ended = (child: ChildProcess) => new Promise<number | null>((done) => child.on('close', done))

  test('writes with ranges in the end, and Ctrl-C ends it with 130', async () => {
    const child = spawn(process.execPath, [join(ROOT, 'bin', 'feasibility.js'), 'report', '--watch', SCENARIO], {
      cwd: folder,
      timeout: 100_000,
      killSignal: 'SIGKILL',
    })
    let stdout = ''
    child.stdout.on('data', (chunk: Buffer) => {
      stdout += chunk
    })
    const code = ended(child)
    for (let i = 0; i < 1200 && stdout === ''; i++) await new Promise((done) => setTimeout(done, 50))
    expect(stdout).toContain('Twice as fast')
    expect(page().includes('</html>')).toBe(true)
    child.kill('SIGINT')
    expect(await code).toBe(130)
  }, 130_000)
})
