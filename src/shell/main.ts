/** The real streams, clock and signals; everything else is in cli.ts. */
import { openPrinter } from './browser/printer.ts'
import { run } from './cli.ts'
import { makerOnThreads } from './making/maker.ts'
import { listenForStop } from './stop.ts'

const { argv, env, stdout, stderr } = process
const stop = listenForStop(process)
const now = () => performance.now()
const args = argv.slice(2)
// Built, every file ends in .js.
const openMaker = makerOnThreads(new URL('./making/thread.js', import.meta.url))
const interrupt = stop.signal
const code = await run({ args, cwd: process.cwd(), env, stdout, stderr, now, interrupt, openMaker, openPrinter })
// A write that fails is told after the call, so the last word is said when the process ends.
process.once('exit', () => {
  process.exitCode = stop.codeOf(code)
})
