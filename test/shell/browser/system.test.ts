/** What a bare system lacks, on systems made up from folders. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { BrowserMissing } from '../../../src/shell/browser/browser-missing.ts'
import { fontSettingsNeeded, librariesNeeded } from '../../../src/shell/browser/system.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility-system-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const put = (...path: string[]) => {
  mkdirSync(join(folder, ...path.slice(0, -1)), { recursive: true })
  writeFileSync(join(folder, ...path), '')
}

test('libraries: needed as long as one of them is missing, wherever the rest lie', () => {
  const needed = (env = {}) => librariesNeeded(env, [join(folder, 'lib')])
  for (const name of ['libnspr4.so', 'libnss3.so', 'libnssutil3.so']) put('lib', name)
  expect(needed()).toBe(true)
  put('own', 'libexpat.so.1')
  expect(needed()).toBe(true)
  expect(needed({ LD_LIBRARY_PATH: join(folder, 'own') })).toBe(false)
  put('lib', 'libexpat.so.1')
  expect(needed()).toBe(false)
})

describe('fonts', () => {
  const needed = (env = {}) =>
    fontSettingsNeeded(env, join(folder, 'home'), {
      settings: join(folder, 'fonts.conf'),
      folders: [join(folder, 'fonts')],
    })

  test('settings and one font, of the system or of the user, are enough', () => {
    put('fonts', 'truetype', 'plain', 'Plain.ttf')
    expect(needed()).toBe(true)
    put('fonts.conf')
    expect(needed()).toBe(false)
    rmSync(join(folder, 'fonts'), { recursive: true })
    expect(needed()).toBe(true)
    put('fonts', 'README.txt')
    expect(needed()).toBe(true)
    put('home', '.fonts', 'Own.otf')
    expect(needed()).toBe(false)
  })

  test('settings that the user names are left as they are', () => {
    expect(needed({ FONTCONFIG_FILE: '/somewhere/fonts.conf' })).toBe(false)
  })
})

describe('what is said where no browser starts', () => {
  test('each place with its outcome, and what to install', () => {
    const { message } = new BrowserMissing(
      [
        { place: 'npm package', outcome: 'not there' },
        { place: '/usr/bin/chromium', outcome: 'cannot open shared object' },
      ],
      'linux',
    )
    expect(message).toContain('npm package: not there')
    expect(message).toContain('/usr/bin/chromium: cannot open shared object')
    expect(message).toContain('apt-get install chromium')
    expect(message).not.toContain('FEASIBILITY_BROWSER_SANDBOX')
  })

  test('a browser that was named and fails is not replaced by advice to install another', () => {
    const tried = [{ place: 'PUPPETEER_EXECUTABLE_PATH (/opt/none)', outcome: 'is not a program that can be run' }]
    const { message } = new BrowserMissing(tried, 'linux')
    expect(message).toContain('unset it')
    expect(message).not.toContain('apt-get')
  })

  test('a sandbox that is refused brings the way round', () => {
    const { message } = new BrowserMissing([{ place: 'npm package', outcome: 'No usable sandbox!' }], 'linux')
    expect(message).toContain('FEASIBILITY_BROWSER_SANDBOX=off')
  })
})
