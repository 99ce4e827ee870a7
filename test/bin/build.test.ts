/** The start script on a small project of its own: builds when it has to, many at once, and never half. */
import { type ChildProcess, spawn } from 'node:child_process'
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))

let project = ''
beforeEach(() => {
  project = mkdtempSync(join(tmpdir(), 'feasibility-build-'))
  for (const name of ['bin', 'package.json', 'tsconfig.json'])
    cpSync(join(ROOT, name), join(project, name), { recursive: true })
  symlinkSync(join(ROOT, 'node_modules'), join(project, 'node_modules'), 'junction')
  mkdirSync(join(project, 'src', 'shell'), { recursive: true })
  says('one')
  writeFileSync(join(project, 'src', 'shell', 'main.ts'), "import { word } from '../word.ts'\nconsole.log(word)\n")
})
afterEach(() => rmSync(project, { recursive: true, force: true }))

const says = (word: string) =>
  writeFileSync(join(project, 'src', 'word.ts'), `export const word: string = ${JSON.stringify(word)}\n`)

const start = async (script = 'feasibility.js') => {
  const child: ChildProcess = spawn(process.execPath, [join(project, 'bin', script)])
  let stdout = ''
  let stderr = ''
  child.stdout?.on('data', (chunk) => {
    stdout += chunk
  })
  child.stderr?.on('data', (chunk) => {
    stderr += chunk
  })
  const code = await new Promise<number | null>((done) => child.on('close', done))
  return { code, stdout, stderr }
}

const leftovers = () => readdirSync(project).filter((name) => name.startsWith('.build-'))

describe('start', () => {
  test('builds what is missing or changed, and says nothing of it', async () => {
    expect(await start()).toEqual({ code: 0, stdout: 'one\n', stderr: '' })
    says('two')
    expect(await start()).toEqual({ code: 0, stdout: 'two\n', stderr: '' })
    expect(leftovers()).toEqual([])
  })

  test('four at once on a fresh checkout all answer', async () => {
    const runs = await Promise.all([start(), start(), start(), start()])
    expect(runs).toEqual(Array(4).fill({ code: 0, stdout: 'one\n', stderr: '' }))
    expect(leftovers()).toEqual([])
  })

  test('what is gone from the source is gone from the build', async () => {
    const main = join(project, 'src', 'shell', 'main.ts')
    const before = readFileSync(main, 'utf8')
    const extra = join(project, 'src', 'extra.ts')
    writeFileSync(extra, 'export const extra = 1\n')
    writeFileSync(main, `${before}console.log((await import('../extra.ts')).extra)\n`)
    await start()
    expect(existsSync(join(project, 'dist', 'shell', 'extra.js'))).toBe(true)
    rmSync(extra)
    writeFileSync(main, before)
    expect((await start()).code).toBe(0)
    expect(existsSync(join(project, 'dist', 'shell', 'extra.js'))).toBe(false)
  })

  test('a source that does not compile: the reason on standard error, the old build whole, nothing on standard output', async () => {
    await start()
    writeFileSync(join(project, 'src', 'word.ts'), 'export const word = = 1\n')
    const { code, stdout, stderr } = await start()
    expect(code).toBe(1)
    expect(stdout).toBe('')
    expect(stderr).toContain('src/word.ts')
    expect(existsSync(join(project, 'dist', 'shell', 'main.js'))).toBe(true)
    expect(leftovers()).toEqual([])
  })

  test('an installed copy without its source is taken as it is', async () => {
    await start('build.js')
    rmSync(join(project, 'src'), { recursive: true })
    expect(await start()).toEqual({ code: 0, stdout: 'one\n', stderr: '' })
  })
})
