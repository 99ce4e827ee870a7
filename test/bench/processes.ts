/** Starts the tool and what it is held against, and takes the time. */
import { spawn } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { launchBrowser } from '../../src/shell/browser/launch.ts'
import { type Memory, watchMemory } from './process-memory.ts'

export const ROOT = fileURLToPath(new URL('../../', import.meta.url))
/** A scenario that no demo changes: three options, nothing to be searched for. */
export const FERNHILL = join(ROOT, 'test', 'fixtures', 'fernhill')
export const TOOL = join(ROOT, 'bin', 'feasibility.js')

export interface Ran {
  readonly ms: number
  /**
   * Processor time of node with all its threads [ms], its own and the system's: on a machine that does other things
   * meanwhile the one clock that can be trusted. Of a browser next to nothing is in it: its processes end by themselves.
   */
  readonly spent: number
  readonly stdout: string
  readonly memory: Memory
}

/** By bash, which tells the processor time of what it ran. */
const TIMED = ['-c', 'TIMEFORMAT="%3U %3S"; time "$@"', 'bash', process.execPath]

/** Runs node and waits; a run that fails fails the bench. */
export const runNode = async (args: readonly string[], cwd: string = ROOT): Promise<Ran> => {
  const began = performance.now()
  const child = spawn('bash', [...TIMED, ...args], { cwd, stdio: ['ignore', 'pipe', 'pipe'] })
  const stop = process.platform === 'linux' ? watchMemory(child.pid ?? 0) : () => ({ own: 0, below: 0 })
  let stdout = ''
  let stderr = ''
  child.stdout.on('data', (chunk: Buffer) => {
    stdout += chunk
  })
  child.stderr.on('data', (chunk: Buffer) => {
    stderr += chunk
  })
  const code = await new Promise<number | null>((done) => child.on('close', done))
  const ms = performance.now() - began
  const memory = stop()
  if (code !== 0) throw new Error(`${args.join(' ')}: exit code ${code}\n${stderr}`)
  const [, user, system] = /([\d.]+) ([\d.]+)\s*$/u.exec(stderr) ?? []
  return { ms, spent: 1000 * (Number(user) + Number(system)), stdout, memory }
}

export interface BareSettings {
  readonly executablePath: string
  readonly args: readonly string[]
  readonly headless: 'shell' | true
  readonly env: { readonly [name: string]: string }
}

/** The very browser that the tool prints with, and how it is started. */
export const browserSettings = async (): Promise<BareSettings> => {
  const { browser, close } = await launchBrowser(process.env)
  try {
    const process_ = browser.process()
    const executablePath = process_?.spawnfile ?? ''
    const own = process_?.spawnargs ?? []
    const around =
      process.platform === 'linux' ? readFileSync(`/proc/${process_?.pid}/environ`, 'utf8').split('\0') : []
    const env = Object.fromEntries(
      around
        .map((entry) => entry.split(/=(.*)/su))
        .filter(([name]) => name === 'LD_LIBRARY_PATH' || name === 'FONTCONFIG_FILE')
        .map(([name = '', value = '']) => [name, value]),
    )
    return {
      executablePath,
      args: own.filter((arg) => arg === '--no-sandbox' || arg.startsWith('--host-resolver-rules')),
      headless: /headless[-_]shell/u.test(basename(executablePath)) ? 'shell' : true,
      env,
    }
  } finally {
    await close()
  }
}

/** Prints finished pages with the bare script. @returns its whole time, and that of each print */
export const runBare = async (
  settings: BareSettings,
  pages: readonly string[],
  folder: string,
): Promise<{ readonly ms: number; readonly spent: number; readonly each: readonly number[] }> => {
  const file = join(folder, 'bare.json')
  writeFileSync(file, JSON.stringify({ ...settings, pages, out: folder }))
  const { ms, spent, stdout } = await runNode([join(ROOT, 'test', 'bench', 'bare-print.mjs'), file])
  return { ms, spent, each: JSON.parse(stdout) as number[] }
}
