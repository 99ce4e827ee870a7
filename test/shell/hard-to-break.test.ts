/** Disks, folders and names as they are out there: nothing that was there is lost, nothing half-written is left. */
import { execFileSync } from 'node:child_process'
import {
  chmodSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { runCommand } from './world.ts'

const FERNHILL = fileURLToPath(new URL('../fixtures/fernhill/', import.meta.url))
const SCENARIO = 'twice-as-fast.yaml'
const HTML = ['report', SCENARIO, '--format', 'html', '--quiet'] as const

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'hard to break '))
  cpSync(FERNHILL, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const edit = (file: string, find: string, put: string): void => {
  const path = join(folder, file)
  const text = readFileSync(path, 'utf8')
  expect(text).toContain(find)
  writeFileSync(
    path,
    text.replace(find, () => put),
  )
}
const everything = (below: string): readonly string[] => readdirSync(below, { recursive: true }).map(String)
const parts = (below: string): readonly string[] => everything(below).filter((name) => name.endsWith('.part'))

describe('links', () => {
  test('a mark that leads out of the shop’s folder is left out, and said to be', async () => {
    const outside = mkdtempSync(join(tmpdir(), 'elsewhere '))
    try {
      writeFileSync(join(outside, 'secret.svg'), '<svg xmlns="http://www.w3.org/2000/svg"><text>secret</text></svg>')
      symlinkSync(join(outside, 'secret.svg'), join(folder, 'shop', 'linked.svg'))
      edit('shop/shop.yaml', 'mark: logo.svg', 'mark: linked.svg')
      const { code, stderr } = await runCommand(HTML, folder)
      expect(code).toBe(0)
      expect(stderr).toContain('leads out of the shop')
      const html = readFileSync(join(folder, 'out', 'twice-as-fast', 'customer.html'), 'utf8')
      expect(html).not.toContain('<img')
    } finally {
      rmSync(outside, { recursive: true })
    }
  })

  test('a parts list that leads nowhere, or is a folder, is named as missing', async () => {
    symlinkSync(join(folder, 'gone.yaml'), join(folder, 'shop', 'more.yaml'))
    mkdirSync(join(folder, 'shop', 'folder.yaml'))
    const { code, stdout, stderr } = await runCommand(['check', SCENARIO], folder)
    expect([code, stdout]).toEqual([3, ''])
    expect(stderr).toContain('shop/more.yaml:1:1')
    expect(stderr).toContain('shop/folder.yaml:1:1')
    expect(stderr).not.toMatch(/\n\s+at /u)
  })

  test('a link in a circle is a file that cannot be read', async () => {
    rmSync(join(folder, 'machines', 'wren-09.yaml'))
    symlinkSync(join(folder, 'machines', 'wren-09.yaml'), join(folder, 'machines', 'wren-09.yaml'))
    const { code, stderr } = await runCommand(['check', SCENARIO], folder)
    expect(code).toBe(3)
    expect(stderr).toContain('[file-missing]')
  })
})

describe('names', () => {
  test('spaces, umlauts and signs of the shell, in every file', async () => {
    renameSync(join(folder, 'machines'), join(folder, "Größe & 'Co'"))
    renameSync(join(folder, "Größe & 'Co'", 'wren-09.yaml'), join(folder, "Größe & 'Co'", 'wren $9; (alt).yaml'))
    edit(SCENARIO, 'machine: machines/wren-09.yaml', `machine: "Größe & 'Co'/wren $9; (alt).yaml"`)
    renameSync(join(folder, SCENARIO), join(folder, 'schneller – für Tromsø.yaml'))
    const { code, stderr } = await runCommand(['report', 'schneller – für Tromsø.yaml', '--quiet'], folder)
    expect(code).toBe(0)
    expect(stderr).not.toMatch(/\n\s+at |not there/u)
    expect(readdirSync(join(folder, 'out', 'schneller – für Tromsø')).sort()).toEqual(['customer.html', 'customer.pdf'])
  })
})

describe('what is no file of ours', () => {
  const refused = async (file: string, words: string, code: string) => {
    const { code: exit, stdout, stderr } = await runCommand(['check', file], folder)
    expect([exit, stdout]).toEqual([3, ''])
    expect(stderr).toContain(words)
    expect(stderr).toContain(`[${code}]`)
    expect(stderr).not.toMatch(/\n\s+at /u)
    const survey = await runCommand(['survey', file, '--format', 'html'], folder)
    expect(survey.code).toBe(3)
    expect(survey.stderr).toContain(`[${code}]`)
  }

  test('a folder', async () => {
    mkdirSync(join(folder, 'folder.yaml'))
    await refused('folder.yaml', 'this file is a folder', 'file-missing')
  })

  test('ten megabytes, and three hundred, of which nothing is read', async () => {
    for (const megabytes of [10, 300]) {
      writeFileSync(join(folder, 'huge.yaml'), 'format: 1\n')
      truncateSync(join(folder, 'huge.yaml'), megabytes * 1024 * 1024)
      await refused('huge.yaml', 'at most 256 kB', 'file-too-large')
    }
  })

  test('a device that never ends, and a pipe that nobody writes to', async ({ skip }) => {
    if (process.platform === 'win32') return skip('there are no such files here')
    await refused('/dev/zero', 'a device or a pipe', 'file-missing')
    execFileSync('mkfifo', [join(folder, 'pipe.yaml')])
    await refused('pipe.yaml', 'a device or a pipe', 'file-missing')
  })

  test('the same in place of a machine, and among the files of the shop', async ({ skip }) => {
    if (process.platform === 'win32') return skip('there are no such files here')
    execFileSync('mkfifo', [join(folder, 'shop', 'pipe.yaml')])
    edit(SCENARIO, 'machine: machines/wren-09.yaml', 'machine: /dev/zero')
    const { code, stderr } = await runCommand(['check', SCENARIO], folder)
    expect(code).toBe(3)
    expect(stderr).toContain('"/dev/zero" is a device or a pipe')
    expect(stderr).toContain('shop/pipe.yaml:1:1: this file is a device or a pipe')
  })

  test('NUL bytes: in a text, and nothing else', async () => {
    edit(SCENARIO, 'T. Marlowe', 'T. \u0000Marlowe')
    const text = await runCommand(['check', SCENARIO], folder)
    expect(text.code).toBe(3)
    expect(text.stderr).toContain('[control-character]')
    expect(text.stderr).not.toContain('\u0000')
    writeFileSync(join(folder, 'nothing.yaml'), '\u0000'.repeat(5000))
    expect((await runCommand(['check', 'nothing.yaml'], folder)).code).toBe(3)
  })

  test('an alias bomb, and a key that other languages stumble over', async () => {
    const bomb = ['a: &a [x, x, x, x, x, x, x, x, x]']
    for (let i = 1; i < 12; i++) {
      const [before, name] = ['abcdefghijkl'[i - 1], 'abcdefghijkl'[i]]
      bomb.push(`${name}: &${name} [${Array.from({ length: 9 }, () => `*${before}`).join(', ')}]`)
    }
    writeFileSync(join(folder, 'bomb.yaml'), bomb.join('\n'))
    await refused('bomb.yaml', 'anchors and aliases', 'alias-refused')
    edit('machines/wren-09.yaml', 'format: 1', 'format: 1\n__proto__: { polluted: yes }')
    await runCommand(['check', SCENARIO], folder)
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
  })

  test('brackets without end', async () => {
    writeFileSync(join(folder, 'deep.yaml'), `a: ${'['.repeat(100_000)}`)
    await refused('deep.yaml', 'nested too deeply', 'too-deep')
  })

  test('a name of dots and an ending gets a folder of its own, and stays inside the output', async () => {
    renameSync(join(folder, SCENARIO), join(folder, '..yaml'))
    expect((await runCommand(['report', '..yaml', '--format', 'html', '--quiet'], folder)).code).toBe(0)
    expect(readdirSync(join(folder, 'out')).filter((name) => name !== '.made-from')).toEqual(['scenario'])
  })
})

/** A small disk of its own; null where this machine does not let us. */
const smallDisk = (at: string, options: string): (() => void) | null => {
  try {
    mkdirSync(at, { recursive: true })
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', at], { stdio: 'ignore' })
    return () => execFileSync('umount', ['-l', at], { stdio: 'ignore' })
  } catch {
    return null
  }
}

describe('disks', () => {
  test('a full one: exit code 1 in words, the earlier report whole, nothing half-written', async ({ skip }) => {
    const out = join(folder, 'out')
    const unmount = smallDisk(out, 'size=4m')
    if (unmount === null) return skip('no small disk can be mounted here')
    try {
      expect((await runCommand(HTML, folder)).code).toBe(0)
      const path = join(out, 'twice-as-fast', 'customer.html')
      const before = readFileSync(path)
      // Room for less than half a report.
      const room = 4 * 1024 * 1024 - before.length
      writeFileSync(join(out, 'filler'), Buffer.alloc(room - Math.floor(before.length / 2)))
      edit(SCENARIO, 'ambient: 31 °C', 'ambient: 12 °C')
      const { code, stderr } = await runCommand(HTML, folder)
      expect(code).toBe(1)
      expect(stderr).toMatch(/no space left/iu)
      expect(stderr).not.toMatch(/\n\s+at /u)
      expect(readFileSync(path).equals(before)).toBe(true)
      expect(parts(out)).toEqual([])
    } finally {
      unmount()
    }
  })

  test('one that may not be written: exit code 1 with the folder, the earlier report whole', async ({ skip }) => {
    const out = join(folder, 'out')
    const unmount = smallDisk(out, 'size=4m')
    const isRoot = process.getuid?.() === 0
    if (unmount === null && isRoot) return skip('nothing is read-only for this user')
    try {
      expect((await runCommand(HTML, folder)).code).toBe(0)
      const before = everything(out)
      if (unmount === null) chmodSync(join(out, 'twice-as-fast'), 0o555)
      else execFileSync('mount', ['-o', 'remount,ro', out])
      const { code, stderr } = await runCommand([...HTML, '--force'], folder)
      expect(code).toBe(1)
      expect(stderr).toMatch(/read-only|permission denied/iu)
      expect(stderr).toContain('twice-as-fast')
      expect(everything(out)).toEqual(before)
      const survey = await runCommand(['survey', '--format', 'html'], folder)
      if (unmount !== null) expect(survey.code).toBe(1)
    } finally {
      if (unmount === null) chmodSync(join(out, 'twice-as-fast'), 0o755)
      else unmount()
    }
  })
})
