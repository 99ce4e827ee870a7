/** The real process with a real browser: interrupted, doubled, robbed of its browser. Linux, where a browser starts. */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const SCENARIO = 'test/fixtures/fernhill/twice-as-fast.yaml'
const WAIT = 170_000

let folder = ''
/** Where profiles go: whatever is left there, and whatever still runs with it, is this run's. */
let temporary = ''
let out = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility-interrupted-'))
  temporary = join(folder, 'tmp')
  out = join(folder, 'out')
  mkdirSync(temporary)
})
afterEach(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }))

interface Ended {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

const start = (args: readonly string[], onOutput: (child: ChildProcess) => void = () => {}): Promise<Ended> => {
  const child = spawn(process.execPath, [join(ROOT, 'bin', 'feasibility.js'), ...args], {
    cwd: ROOT,
    env: { ...process.env, TMPDIR: temporary },
    timeout: 160_000,
    killSignal: 'SIGKILL',
  })
  const ended = { stdout: '', stderr: '' }
  let heard = false
  child.stdout.on('data', (chunk: Buffer) => {
    ended.stdout += chunk
    if (!heard) onOutput(child)
    heard = true
  })
  child.stderr.on('data', (chunk: Buffer) => {
    ended.stderr += chunk
  })
  return new Promise((done) => child.on('close', (code) => done({ code, ...ended })))
}

/** Processes that were started with a profile of this run. */
const browsers = (): readonly number[] =>
  readdirSync('/proc')
    .filter((name) => /^\d+$/u.test(name))
    .filter((pid) => {
      try {
        return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(join(temporary, 'feasibility-browser-'))
      } catch {
        return false // it has ended meanwhile
      }
    })
    .map(Number)

/** A process that was killed needs a moment to be gone. */
const gone = async (): Promise<readonly number[]> => {
  for (let i = 0; i < 50 && browsers().length > 0; i++) await new Promise((done) => setTimeout(done, 100))
  return browsers()
}

const files = (): readonly string[] => (existsSync(out) ? readdirSync(out, { recursive: true }).map(String).sort() : [])
const parts = (): readonly string[] => files().filter((name) => name.endsWith('.part'))
const profiles = (): readonly string[] =>
  readdirSync(temporary).filter((name) => name.startsWith('feasibility-browser-'))
const isPdf = (path: string): boolean => /^%PDF-[\s\S]*%%EOF\s*$/u.test(readFileSync(path, 'latin1'))

describe.runIf(process.platform === 'linux')('the process', () => {
  const batch = (count: number) => ['report', ...Array.from({ length: count }, () => SCENARIO), '--quiet', '--out', out]

  test(
    'Ctrl-C in a batch: 130, what was written is whole, no browser and no profile is left',
    async ({ skip }) => {
      const { code, stdout, stderr } = await start(batch(12), (child) => child.kill('SIGINT'))
      if (code === 4) return skip('no browser starts here')
      expect(code).toBe(130)
      expect(stderr).not.toMatch(/\n\s+at /u)
      expect(stdout.trim().split('\n').length).toBeLessThan(12)
      expect(parts()).toEqual([])
      for (const name of files().filter((file) => file.endsWith('.pdf'))) expect(isPdf(join(out, name))).toBe(true)
      expect(files()).toContain(join('twice-as-fast', 'customer.pdf'))
      expect(await gone()).toEqual([])
      expect(profiles()).toEqual([])
    },
    WAIT,
  )

  test(
    'two runs at once into one folder: both answer, each file is whole',
    async ({ skip }) => {
      const both = await Promise.all([start(batch(2)), start(batch(2))])
      if (both.some(({ code }) => code === 4)) return skip('no browser starts here')
      expect(both.map(({ code }) => code)).toEqual([0, 0])
      for (const { stderr } of both) expect(stderr).not.toMatch(/\n\s+at |failed/u)
      expect(parts()).toEqual([])
      const [first, second] = ['twice-as-fast', 'twice-as-fast-2'].map((name) =>
        readFileSync(join(out, name, 'customer.html'), 'utf8'),
      )
      expect(first).toBe(second)
      expect(first).toMatch(/<\/html>\s*$/u)
      for (const name of files().filter((file) => file.endsWith('.pdf'))) expect(isPdf(join(out, name))).toBe(true)
      expect(await gone()).toEqual([])
      expect(profiles()).toEqual([])
    },
    WAIT,
  )

  test(
    'a browser that dies in the middle: what it was at is printed by another, the rest goes on',
    async ({ skip }) => {
      let killed = 0
      const { code, stderr } = await start(batch(6), () => {
        for (const pid of browsers()) {
          try {
            process.kill(pid, 'SIGKILL')
            killed++
          } catch {
            // a child of one that was just ended
          }
        }
      })
      if (killed === 0) return skip('no browser starts here')
      // The sample shop names a mark that does not lie beside it; nothing else is said.
      expect({ code, stderr: stderr.replace(/^the mark .*\n/gmu, '') }).toEqual({ code: 0, stderr: '' })
      expect(parts()).toEqual([])
      const pdfs = files().filter((file) => file.endsWith('.pdf'))
      expect(pdfs).toHaveLength(6)
      for (const name of pdfs) expect(isPdf(join(out, name))).toBe(true)
      expect(await gone()).toEqual([])
      expect(profiles()).toEqual([])
    },
    WAIT,
  )
})
