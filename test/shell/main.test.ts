/** The real process: what a pipe, a full disk and a caller see of it. */
import { spawn } from 'node:child_process'
import { mkdtempSync, openSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const SCENARIO = 'test/fixtures/fernhill/twice-as-fast.yaml'

interface Ended {
  readonly code: number | null
  readonly stdout: string
  readonly stderr: string
}

interface Around {
  readonly out?: number
  /** Closes the reading end after the first bytes. */
  readonly readLittle?: boolean
  readonly env?: NodeJS.ProcessEnv
}

const start = async (args: readonly string[], { out, readLittle, env }: Around = {}): Promise<Ended> => {
  const child = spawn(process.execPath, [join(ROOT, 'bin', 'feasibility.js'), ...args], {
    cwd: ROOT,
    stdio: ['ignore', out ?? 'pipe', 'pipe'],
    env: { ...process.env, ...env },
    timeout: 120_000,
    killSignal: 'SIGKILL',
  })
  let stdout = ''
  let stderr = ''
  child.stdout?.on('data', (chunk: Buffer) => {
    stdout += chunk
    if (readLittle) child.stdout?.destroy()
  })
  child.stderr?.on('data', (chunk: Buffer) => {
    stderr += chunk
  })
  const code = await new Promise<number | null>((done) => child.on('close', done))
  return { code, stdout, stderr }
}

describe('the process', () => {
  test('--json: one document on standard output, nothing on standard error', async () => {
    const { code, stdout, stderr } = await start(['check', SCENARIO, '--json'])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(JSON.parse(stdout)).toMatchObject({ format: 1, scenario: { file: SCENARIO } })
  }, 130_000)

  test('a reader that closes early is no fault', async () => {
    const { code, stderr } = await start(['check', SCENARIO, SCENARIO, '--json', '--quiet'], { readLittle: true })
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  }, 130_000)

  test.runIf(process.platform === 'linux')(
    'an output that takes no more is a fault, in words',
    async () => {
      const { code, stderr } = await start(['check', SCENARIO, '--json'], { out: openSync('/dev/full', 'w') })
      expect(code).toBe(1)
      expect(stderr).toMatch(/^feasibility: the answer could not be written: .*no space left/u)
      expect(stderr).not.toMatch(/\n\s+at /u)
    },
    130_000,
  )

  test.runIf(process.platform === 'linux')(
    'a folder that can never be made is a fault, not a wait without end',
    async () => {
      const { code, stderr } = await start(['report', SCENARIO, '--format', 'html', '--out', '/proc/nowhere/out'])
      expect(code).toBe(1)
      expect(stderr).toContain('/proc/nowhere')
    },
    130_000,
  )

  test('a named browser that is none: HTML, exit code 4, the name in the message', async () => {
    const out = mkdtempSync(join(tmpdir(), 'feasibility-main-'))
    const env = { PUPPETEER_EXECUTABLE_PATH: join(out, 'none') }
    try {
      const { code, stderr } = await start(['report', SCENARIO, '--quiet', '--out', out], { env })
      expect(code).toBe(4)
      expect(stderr).toContain(join(out, 'none'))
      expect(stderr).toContain('The HTML is written')
    } finally {
      rmSync(out, { recursive: true, force: true })
    }
  }, 130_000)
})
