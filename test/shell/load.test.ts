/** Finding the files of a scenario on a disk: machine beside it, shop in the nearest folder above. */
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { load } from '../../src/shell/load.ts'

const SAMPLE = fileURLToPath(new URL('../fixtures/fernhill', import.meta.url))
let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'load-'))
  cpSync(SAMPLE, folder, { recursive: true })
})
afterEach(() => rmSync(folder, { recursive: true }))

const result = (path: string) => {
  const read = load(path, folder)
  return 'problems' in read ? read.problems.map(({ file, code }) => `${file} ${code}`) : read.loaded.scenario.file
}

const remedies = (path: string) => {
  const read = load(path, folder)
  return 'problems' in read ? read.problems.map(({ remedy }) => remedy) : []
}

describe('load', () => {
  test('a scenario beside its shop', () => expect(result('twice-as-fast.yaml')).toBe('twice-as-fast.yaml'))
  test('a scenario in a folder below its shop', () => {
    mkdirSync(join(folder, 'customers', 'marlowe'), { recursive: true })
    renameSync(join(folder, 'twice-as-fast.yaml'), join(folder, 'customers/marlowe/far.yaml'))
    renameSync(join(folder, 'machines'), join(folder, 'customers/marlowe/machines'))
    expect(result('customers/marlowe/far.yaml')).toBe('customers/marlowe/far.yaml')
  })
  test('a path from the root', () => {
    const read = load(join(folder, 'twice-as-fast.yaml'), '/')
    expect('loaded' in read).toBe(true)
  })
  test('a scenario that is not there', () => expect(result('nowhere.yaml')).toEqual(['nowhere.yaml file-missing']))
  test('a scenario that is not there, where there is no shop either: one mistake, and what was probably meant', () => {
    rmSync(join(folder, 'shop'), { recursive: true })
    expect(result('twice-fast.yaml')).toEqual(['twice-fast.yaml file-missing'])
    expect(remedies('twice-as-fst.yaml')).toEqual(['did you mean "twice-as-fast.yaml"?'])
    expect(remedies('twice-as-fast.yml')).toEqual(['did you mean "twice-as-fast.yaml"?'])
    expect(remedies('something-else.yaml')).toEqual([null])
    expect(remedies('no-such-folder/far.yaml')).toEqual(['its folder is not there either'])
    expect(result('no-such-folder/')).toEqual(['no-such-folder file-missing'])
    expect(result('machines')).toEqual(['machines file-missing'])
    expect(remedies('machines')).toEqual(['name a file in it'])
  })
  test('a machine in place of a scenario, where there is no shop: one mistake', () => {
    rmSync(join(folder, 'shop'), { recursive: true })
    expect(result('machines/wren-09.yaml')).toEqual(['machines/wren-09.yaml file-of-another-kind'])
  })
  test('a machine that is not there, and one that is near by name', () => {
    renameSync(join(folder, 'machines/wren-09.yaml'), join(folder, 'machines/wren-90.yaml'))
    expect(remedies('twice-as-fast.yaml')).toEqual(['did you mean "wren-90.yaml"?'])
  })
  test('a machine that is not there', () => {
    rmSync(join(folder, 'machines'), { recursive: true })
    expect(result('twice-as-fast.yaml')).toEqual(['twice-as-fast.yaml file-missing'])
  })
  test('no shop anywhere', () => {
    rmSync(join(folder, 'shop'), { recursive: true })
    expect(result('twice-as-fast.yaml')).toEqual(['twice-as-fast.yaml shop-missing'])
  })
  test('a folder of that name that holds nothing', () => {
    rmSync(join(folder, 'shop'), { recursive: true })
    mkdirSync(join(folder, 'shop'))
    expect(result('twice-as-fast.yaml')).toEqual(['shop shop-missing'])
  })
  test('a shop over more files, and one that is none of its own', () => {
    writeFileSync(
      join(folder, 'shop', 'more.yml'),
      'format: 1\nlabour: [{job: wash, hours: {low: 1, likely: 1, high: 1}}]\n',
    )
    writeFileSync(join(folder, 'shop', 'notes.txt'), 'not: [yaml')
    const read = load('twice-as-fast.yaml', folder)
    expect('loaded' in read && read.loaded.shop.labour.map(({ job }) => job)).toEqual(['wash', 'replace pump'])
  })
  test('a folder in place of a file', () => {
    mkdirSync(join(folder, 'folder.yaml'))
    expect(result('folder.yaml')).toEqual(['folder.yaml file-missing'])
  })
})
