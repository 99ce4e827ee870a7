/** How far a long run has come: a bar where the terminal has one, plain lines where it has none, on standard error. */
import type { World } from './world.ts'

export interface Progress {
  /** One piece of work is done. */
  readonly done: (what: string) => void
  /** Takes the bar away before anything else is written. */
  readonly clear: () => void
}

const WIDTH = 24

/** "40 s", "6 min". */
const about = (seconds: number): string =>
  seconds < 90 ? `${Math.ceil(seconds)} s` : `${Math.round(seconds / 60)} min`

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
      const left = total - count
      const toGo = (((world.now() - began) / 1000) * left) / count
      const rest = left === 0 ? '' : `, ${left} left, about ${about(toGo)}`
      const text = `[${'#'.repeat(filled)}${'.'.repeat(WIDTH - filled)}] ${count} of ${total}${rest}  ${what}`
      // A line that wraps could not be taken away again.
      world.stderr.write(`\r\x1b[2K${text.slice(0, (world.stderr.columns ?? 80) - 1)}`)
    },
    clear: () => {
      if (bar) world.stderr.write('\r\x1b[2K')
    },
  }
}
