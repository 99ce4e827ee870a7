import { chmodSync, existsSync, lstatSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { cacheFolder, type FolderWorld } from '../../../src/shell/browser/cache-folder.ts'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'feasibility-cache-'))
  mkdirSync(join(folder, 'home'))
  mkdirSync(join(folder, 'temporary'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const uid = process.getuid?.() ?? null
const world = (over: Partial<FolderWorld> = {}): FolderWorld => ({
  env: {},
  home: join(folder, 'home'),
  temporary: join(folder, 'temporary'),
  uid,
  ...over,
})
/** A home in which nobody can make a folder, root included: a file stands where it would be. */
const closedHome = (): string => {
  writeFileSync(join(folder, 'closed'), '')
  return join(folder, 'closed')
}

describe('cacheFolder', () => {
  test('below the home, for this user alone', () => {
    const found = cacheFolder(world())
    expect(found).toBe(join(folder, 'home', '.cache', 'feasibility'))
    if (uid !== null) expect(lstatSync(found).mode & 0o077).toBe(0)
    expect(cacheFolder(world())).toBe(found)
  })

  test('where XDG_CACHE_HOME says, if it says a whole path', () => {
    expect(cacheFolder(world({ env: { XDG_CACHE_HOME: join(folder, 'xdg') } }))).toBe(
      join(folder, 'xdg', 'feasibility'),
    )
    expect(cacheFolder(world({ env: { XDG_CACHE_HOME: 'relative' } }))).toContain('.cache')
    expect(existsSync('relative')).toBe(false)
  })

  test('below the temporary folder where the home cannot be written, with the user in its name', () => {
    expect(cacheFolder(world({ home: closedHome() }))).toBe(join(folder, 'temporary', `feasibility-${uid ?? 'user'}`))
  })

  test.runIf(uid !== null)('what somebody else put there first is not used', () => {
    const home = closedHome()
    const planted = join(folder, 'temporary', `feasibility-${uid}`)
    mkdirSync(join(folder, 'elsewhere'))
    symlinkSync(join(folder, 'elsewhere'), planted)
    expect(() => cacheFolder(world({ home }))).toThrow('not a folder of this user alone')
    rmSync(planted)
    mkdirSync(planted)
    chmodSync(planted, 0o777)
    expect(() => cacheFolder(world({ home }))).toThrow('not a folder of this user alone')
    chmodSync(planted, 0o700)
    expect(cacheFolder(world({ home }))).toBe(planted)
    expect(() => cacheFolder({ ...world({ home }), uid: (uid ?? 0) + 1, temporary: foreignBelow(planted) })).toThrow(
      'not a folder of this user alone',
    )
  })
})

/** A folder named after another user, but made by this one. */
const foreignBelow = (planted: string): string => {
  const temporary = join(planted, 'deeper')
  mkdirSync(join(temporary, `feasibility-${(uid ?? 0) + 1}`), { recursive: true, mode: 0o700 })
  return temporary
}
