/** Archives are written here by hand, after the layout of a header block in IEEE Std 1003.1, "ustar interchange format". */
import { describe, expect, test } from 'vitest'
import { readTar } from '../../../src/shell/browser/tar.ts'

const entry = (name: string, content: string, { type = '0', mode = '0000644', prefix = '' } = {}): Buffer => {
  const header = Buffer.alloc(512)
  header.write(name, 0)
  header.write(mode, 100)
  header.write(Buffer.byteLength(content).toString(8).padStart(11, '0'), 124)
  header.write(type, 156)
  header.write('ustar\x0000', 257)
  header.write(prefix, 345)
  const body = Buffer.alloc(Math.ceil(Buffer.byteLength(content) / 512) * 512)
  body.write(content)
  return Buffer.concat([header, body])
}
const archive = (...entries: Buffer[]) => Buffer.concat([...entries, Buffer.alloc(1024)])
const contents = (bytes: Buffer) =>
  readTar(bytes).map(({ name, executable, content }) => [name, executable, Buffer.from(content).toString()])

describe('readTar', () => {
  test('names, contents of more than one block, who may run what; folders only give their name', () => {
    const long = 'x'.repeat(700)
    const bytes = archive(
      entry('lib/', '', { type: '5' }),
      entry('lib/a.so', long, { mode: '0000755' }),
      entry('b', 'short', { prefix: 'far/away' }),
    )
    expect(contents(bytes)).toEqual([
      ['lib/a.so', true, long],
      ['far/away/b', false, 'short'],
    ])
  })

  test('a name that leaves the folder is refused', () => {
    expect(() => readTar(archive(entry('../outside', 'x')))).toThrow('leaves its folder')
    expect(() => readTar(archive(entry('/etc/outside', 'x')))).toThrow('leaves its folder')
    expect(() => readTar(archive(entry('outside', 'x', { prefix: 'lib/..' })))).toThrow('leaves its folder')
  })

  test('links, a cut archive and a damaged header are refused', () => {
    expect(() => readTar(archive(entry('link', '', { type: '2' })))).toThrow('not expected')
    expect(() => readTar(entry('cut', 'y'.repeat(600)).subarray(0, 700))).toThrow('ends inside cut')
    const damaged = archive(entry('size', 'z'))
    damaged.write('zzz', 124)
    expect(() => readTar(damaged)).toThrow('damaged')
  })
})
