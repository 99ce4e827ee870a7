/** A browser, or the process of one of its pages, killed in the middle of a print. Linux, where /proc tells whose is whose. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { openPrinter, type Printer } from '../../../src/shell/browser/printer.ts'

/** Long enough that a print of it can be caught in the middle. */
const page = (name: string) =>
  `<!doctype html><title>${name}</title><h1>${name}</h1>${Array.from({ length: 4000 }, (_, i) => `<p>${name} ${i}</p>`).join('')}`

let folder = ''
let before = ''
let printer: Printer | null = null
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility-crash-'))
  before = process.env.TMPDIR ?? ''
  mkdirSync(join(folder, 'tmp'))
  process.env.TMPDIR = join(folder, 'tmp')
})
afterEach(async () => {
  await printer?.close()
  if (before === '') delete process.env.TMPDIR
  else process.env.TMPDIR = before
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
})

const commandOf = (pid: string): string => {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'latin1')
  } catch {
    return '' // it has ended meanwhile
  }
}

const parentOf = (pid: string): string => {
  try {
    return /\) \S+ (\d+) /u.exec(readFileSync(`/proc/${pid}/stat`, 'latin1'))?.[1] ?? ''
  } catch {
    return ''
  }
}

const processes = () => readdirSync('/proc').filter((name) => /^\d+$/u.test(name))
/** Those of a browser with a profile of this test; its children carry no profile, and are found by their parents. */
const browsers = () => processes().filter((pid) => commandOf(pid).includes(join(folder, 'tmp', 'feasibility-browser-')))
const pagesOf = (roots: readonly string[]) => {
  const all = processes()
  const below = (pids: readonly string[]): readonly string[] => {
    const children = all.filter((pid) => pids.includes(parentOf(pid)))
    return children.length === 0 ? pids : [...pids, ...below(children)]
  }
  return below(roots).filter((pid) => commandOf(pid).includes('--type=renderer'))
}

const kill = (pids: readonly string[]): number => {
  let killed = 0
  for (const pid of pids) {
    try {
      process.kill(Number(pid), 'SIGKILL')
      killed++
    } catch {
      // ended by itself
    }
  }
  return killed
}

const soon = () => new Promise((done) => setTimeout(done, 30))

/** Kills what `which` names as soon as there is any of it, and says how many that were. */
const killWhen = async (which: () => readonly string[]): Promise<number> => {
  for (let i = 0; i < 200; i++) {
    const killed = kill(which())
    if (killed > 0) return killed
    await soon()
  }
  return 0
}

const isPdf = (bytes: Uint8Array) => /^%PDF-[\s\S]*%%EOF\s*$/u.test(Buffer.from(bytes).toString('latin1'))

describe.runIf(process.platform === 'linux')('in the middle of a print', () => {
  test.each([
    ['the browser', () => browsers()],
    ['the process of its pages', () => pagesOf(browsers())],
  ])('%s is killed: everything is printed all the same, and nothing is left', async (_, which) => {
    printer = await openPrinter(process.env)
    const prints = Promise.all(['one', 'two', 'three', 'four'].map((name) => printer?.print(page(name), '2026-01-01')))
    await soon()
    expect(await killWhen(which)).toBeGreaterThan(0)
    for (const bytes of await prints) expect(isPdf(bytes ?? new Uint8Array())).toBe(true)
    await printer.close()
    expect(browsers()).toEqual([])
    expect(readdirSync(join(folder, 'tmp'))).toEqual([])
  })

  test('where no other browser starts, the print fails with the reason', async () => {
    const env: { [name: string]: string | undefined } = { ...process.env }
    printer = await openPrinter(env)
    const print = printer.print(page('one'), '2026-01-01')
    const failed = expect(print).rejects.toThrow('no-such-browser')
    env.PUPPETEER_EXECUTABLE_PATH = '/no-such-browser'
    await soon()
    kill(browsers())
    await failed
    await printer.close()
    expect(readdirSync(join(folder, 'tmp'))).toEqual([])
  })
})
