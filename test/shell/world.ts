/** A world for running the whole command in process: streams that remember, a clock that stands, a printer of one's own. */
import { Writable } from 'node:stream'
import type { Printer } from '../../src/shell/browser/printer.ts'
import { run } from '../../src/shell/cli.ts'
import type { ExitCode } from '../../src/shell/exit-codes.ts'
import { makerHere } from '../../src/shell/making/maker.ts'
import type { World } from '../../src/shell/world.ts'

class Memory extends Writable {
  text = ''
  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString()
    done()
  }
}

/** Prints nothing, remembers what it was given. */
export const fakePrinter = (prints: { html: string; date: string }[] = []): World['openPrinter'] => {
  const printer: Printer = {
    print: async (html, date) => {
      prints.push({ html, date })
      return new TextEncoder().encode('%PDF-fake')
    },
    close: async () => {},
  }
  return async () => printer
}

/** Makes reports without ranges, which take most of the time: for tests of what is done with a report, not of what is in it. */
export const quickMaker: World['openMaker'] = (threads) => {
  const maker = makerHere(threads)
  return { ...maker, make: (asked) => maker.make({ ...asked, ranges: false }) }
}

export interface Ran {
  readonly code: ExitCode
  readonly stdout: string
  readonly stderr: string
}

export const runCommand = async (
  args: readonly string[],
  cwd: string,
  openPrinter: World['openPrinter'] = fakePrinter(),
  interrupt: AbortSignal = new AbortController().signal,
  openMaker: World['openMaker'] = makerHere,
): Promise<Ran> => {
  const [stdout, stderr] = [new Memory(), new Memory()]
  const env = { NO_COLOR: '1' }
  const code = await run({ args, cwd, env, stdout, stderr, now: () => 0, interrupt, openMaker, openPrinter })
  return { code, stdout: stdout.text, stderr: stderr.text }
}
