/** How far a long run has come: a bar where the terminal has one, plain lines where it has none, on standard error. */
import type { World } from './world.ts'

export interface Progress {
  /** One piece of work is done. */
  readonly done: (what: string) => void
  /** Takes the bar away before anything else is written. */
  readonly clear: () => void
}

const WIDTH = 24

export const progressOf = (world: World, total: number, quiet: boolean): Progress => {
  if (quiet) return { done: () => {}, clear: () => {} }
  const bar = world.stderr.isTTY === true && !world.env.CI && total > 1
  let count = 0
  const began = world.now()
  return {
    done: (what) => {
      count++
      if (!bar) {
        world.stderr.write(`${count} of ${total}: ${what}\n`)
        return
      }
      const filled = Math.round((WIDTH * count) / total)
      const seconds = ((world.now() - began) / 1000).toFixed(0)
      world.stderr.write(
        `\r\x1b[2K[${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${count} of ${total}, ${seconds} s  ${what}`,
      )
    },
    clear: () => {
      if (bar) world.stderr.write('\r\x1b[2K')
    },
  }
}
