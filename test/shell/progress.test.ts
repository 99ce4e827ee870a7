/** The bar of a long run: what is done and what is left, on a terminal and nowhere else. */
import { Writable } from 'node:stream'
import { describe, expect, test } from 'vitest'
import { makerHere } from '../../src/shell/making/maker.ts'
import { progressOf } from '../../src/shell/progress.ts'
import type { World } from '../../src/shell/world.ts'

const worldWith = (terminal: { isTTY?: boolean; columns?: number }, env: World['env'] = {}) => {
  let text = ''
  let now = 0
  const stderr = Object.assign(
    new Writable({
      write: (chunk: Buffer, _, done) => {
        text += chunk.toString()
        done()
      },
    }),
    terminal,
  )
  const world: World = {
    args: [],
    cwd: '.',
    env,
    stdout: stderr,
    stderr,
    now: () => now,
    interrupt: new AbortController().signal,
    openMaker: makerHere,
    openPrinter: () => Promise.reject(new Error('not asked for')),
  }
  return { world, written: () => text, pass: (ms: number) => (now += ms) }
}

describe('the bar', () => {
  test('says what is done, what is left and about how long that takes', () => {
    const { world, written, pass } = worldWith({ isTTY: true, columns: 200 })
    const progress = progressOf(world, 4, false)
    pass(3000)
    progress.done('first')
    // One in 3 s: three more take 9 s.
    expect(written()).toBe('\r\x1b[2K[######..................] 1 of 4, 3 left, about 9 s  first')
    for (const name of ['second', 'third', 'last']) progress.done(name)
    expect(written()).toMatch(/\[#{24}\] 4 of 4 {2}last$/u)
  })

  test('never wraps, or it could not be taken away again', () => {
    const { world, written } = worldWith({ isTTY: true, columns: 40 })
    progressOf(world, 2, false).done('a very long name of a scenario that nobody would give')
    expect(written().replace('\r\x1b[2K', '').length).toBeLessThan(40)
  })

  test.each([
    ['in a pipe', {}, {}],
    ['where a build runs it', { isTTY: true }, { CI: 'true' }],
  ])('%s there are plain lines', (_, terminal, env) => {
    const { world, written } = worldWith(terminal, env)
    progressOf(world, 2, false).done('first')
    expect(written()).toBe('1 of 2: first\n')
  })

  test('with --quiet there is nothing', () => {
    const { world, written } = worldWith({ isTTY: true })
    progressOf(world, 2, true).done('first')
    expect(written()).toBe('')
  })
})
