/** The whole command in process: exit codes and streams as the contract of the command says. */
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { BrowserMissing } from '../../src/shell/browser/browser-missing.ts'
import { TOOL } from '../../src/tool.ts'
import { fakePrinter, runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility test ü '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const edit = (file: string, find: string, put: string): void => {
  const path = join(folder, file)
  const text = readFileSync(path, 'utf8')
  expect(text).toContain(find)
  writeFileSync(path, text.replace(find, put))
}

describe('check', () => {
  test('--json prints one document and nothing else, twice the same bytes', async () => {
    const first = await runCommand(['check', SCENARIO, '--json'], folder)
    const second = await runCommand(['check', SCENARIO, '--json'], folder)
    expect(first.code).toBe(0)
    expect(first.stderr).toBe('')
    expect(JSON.parse(first.stdout)).toMatchObject({ format: 1, tool: TOOL, scenario: { file: SCENARIO } })
    expect(second.stdout).toBe(first.stdout)
  })

  test('the same document from another folder, but for the name of the file', async () => {
    const here = JSON.parse((await runCommand(['check', SCENARIO, '--json'], folder)).stdout)
    const there = JSON.parse((await runCommand(['check', join(folder, SCENARIO), '--json'], tmpdir())).stdout)
    expect({ ...there, scenario: here.scenario }).toEqual(here)
  })

  test('of several scenarios a list; a wrong one does not stop the others', async () => {
    writeFileSync(join(folder, 'wrong.yaml'), 'format: 1\ntitle: no more\n')
    const { code, stdout, stderr } = await runCommand(['check', 'wrong.yaml', SCENARIO, '--json'], folder)
    expect(code).toBe(3)
    expect(JSON.parse(stdout)).toHaveLength(1)
    expect(stderr).toMatch(/^wrong\.yaml:\d+:\d+: /u)
    expect(stderr).toContain(`1 of 2: ${SCENARIO}`)
  })

  test('of several, --quiet leaves out how far it is and nothing else', async () => {
    const { code, stdout, stderr } = await runCommand(['check', SCENARIO, SCENARIO, '--quiet'], folder)
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    const { stdout: loud, stderr: said } = await runCommand(['check', SCENARIO, SCENARIO], folder)
    expect(loud).toBe(stdout)
    expect(said).toBe(`1 of 2: ${SCENARIO}\n2 of 2: ${SCENARIO}\n`)
  })

  test('a wrong input prints nothing on standard output', async () => {
    edit(SCENARIO, 'ambient: 31 °C', 'ambient: 31')
    const { code, stdout, stderr } = await runCommand(['check', SCENARIO, '--json'], folder)
    expect(code).toBe(3)
    expect(stdout).toBe('')
    expect(stderr).toContain('[unit-missing]')
  })

  test('without --json it answers in words', async () => {
    const { code, stdout } = await runCommand(['check', SCENARIO], folder)
    expect(code).toBe(0)
    expect(stdout).toContain('Twice as fast to the far paddock')
    expect(stdout).not.toContain('\u001b[')
  })
})

describe('report', () => {
  test('writes HTML and PDF into a folder of the scenario, one line an answer', async () => {
    const prints: { html: string; date: string }[] = []
    const { code, stdout } = await runCommand(['report', SCENARIO, '--quiet'], folder, fakePrinter(prints))
    expect(code).toBe(0)
    expect(stdout.trim().split('\n')).toHaveLength(1)
    expect(readdirSync(join(folder, 'out', 'twice-as-fast')).sort()).toEqual(['customer.html', 'customer.pdf'])
    expect(prints).toHaveLength(1)
    expect(prints[0]?.date).toBe('2026-03-02')
    expect(prints[0]?.html).toBe(readFileSync(join(folder, 'out', 'twice-as-fast', 'customer.html'), 'utf8'))
  })

  test('without a browser the HTML is written, the PDF is named as missing, exit code 4', async () => {
    const none = async () => {
      throw new BrowserMissing([{ place: 'chromium on PATH', outcome: 'not there' }], 'linux')
    }
    const { code, stderr } = await runCommand(['report', SCENARIO, '--quiet'], folder, none)
    expect(code).toBe(4)
    expect(readdirSync(join(folder, 'out', 'twice-as-fast'))).toEqual(['customer.html'])
    expect(stderr).toContain('chromium on PATH')
    expect(stderr).toContain('Install')
    expect(stderr).toContain('the PDF is missing')
  })

  test('--format html asks for no browser', async () => {
    const never = async () => {
      throw new Error('asked for a browser')
    }
    expect((await runCommand(['report', SCENARIO, '--format', 'html', '--quiet'], folder, never)).code).toBe(0)
  })

  test('a print that fails leaves what was there before whole', async () => {
    await runCommand(['report', SCENARIO, '--quiet'], folder)
    const pdf = join(folder, 'out', 'twice-as-fast', 'customer.pdf')
    const before = readFileSync(pdf)
    const dying: Parameters<typeof runCommand>[2] = async () => ({
      print: async () => {
        throw new Error('the page crashed')
      },
      close: async () => {},
    })
    const { code, stderr } = await runCommand(['report', SCENARIO, '--quiet', '--force'], folder, dying)
    expect(code).toBe(4)
    expect(stderr).toContain('the page crashed')
    expect(stderr).toContain('of an earlier run')
    expect(readFileSync(pdf).equals(before)).toBe(true)
    expect(readdirSync(join(folder, 'out', 'twice-as-fast')).sort()).toEqual(['customer.html', 'customer.pdf'])
  })

  test('a folder that cannot be written is exit code 1 with the reason', async () => {
    writeFileSync(join(folder, 'out'), 'a file where a folder should be')
    const { code, stderr } = await runCommand(['report', SCENARIO, '--format', 'html', '--quiet'], folder)
    expect(code).toBe(1)
    expect(stderr).toContain('out')
    expect(stderr).not.toMatch(/\n\s+at /u)
  })

  test('interrupted: exit code 130, nothing half-written', async () => {
    const stop = new AbortController()
    stop.abort()
    const { code } = await runCommand(['report', SCENARIO, '--quiet'], folder, fakePrinter(), stop.signal)
    expect(code).toBe(130)
    const left = existsSync(join(folder, 'out')) ? readdirSync(join(folder, 'out'), { recursive: true }) : []
    expect(left.filter((name) => String(name).endsWith('.part'))).toEqual([])
  })

  test('interrupted while it prints: 130, and no word of a PDF that failed', async () => {
    const stop = new AbortController()
    const taken: Parameters<typeof runCommand>[2] = async () => ({
      print: async () => {
        stop.abort()
        throw new Error('the browser is gone')
      },
      close: async () => {},
    })
    const { code, stdout, stderr } = await runCommand(['report', SCENARIO, '--quiet'], folder, taken, stop.signal)
    expect({ code, stdout }).toEqual({ code: 130, stdout: '' })
    expect(stderr).not.toMatch(/PDF|the browser is gone/u)
  })

  test('plain lines of progress where there is no terminal', async () => {
    const { stderr } = await runCommand(['report', SCENARIO], folder)
    expect(stderr.split('\n')).toContain('1 of 1: twice-as-fast')
    expect(stderr).not.toContain('\r')
  })
})

describe('usage', () => {
  test('mistakes of usage are exit code 2, with what was probably meant', async () => {
    const unknown = await runCommand(['chek', SCENARIO], folder)
    expect(unknown.code).toBe(2)
    expect(unknown.stderr).toContain('check')
    expect((await runCommand(['report', SCENARIO, '--formt', 'html'], folder)).code).toBe(2)
    expect((await runCommand(['report'], folder)).code).toBe(2)
    expect((await runCommand(['report', SCENARIO, '--units', 'imperial'], folder)).code).toBe(2)
  })

  test('--help and --version are answers', async () => {
    const help = await runCommand(['--help'], folder)
    expect(help.code).toBe(0)
    expect(help.stdout).toContain('Example: feasibility report')
    expect(await runCommand(['--version'], folder)).toMatchObject({ code: 0, stdout: `${TOOL.version}\n` })
  })

  test('the version is that of the package', () => {
    const path = fileURLToPath(new URL('../../package.json', import.meta.url))
    const { name, version } = JSON.parse(readFileSync(path, 'utf8'))
    expect(TOOL).toEqual({ name, version })
  })
})
