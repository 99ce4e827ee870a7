/** The real streams, clock and signals; everything else is in cli.ts. */

import { run } from './cli.ts'
import { makerOnThreads } from './making/maker.ts'
import { listenForStop } from './stop.ts'
import { typedIn } from './typed-command.ts'
import type { World } from './world.ts'

const { argv, env, stdout, stderr } = process
const stop = listenForStop(process)
const openPrinter: World['openPrinter'] = async (env) => (await import('./browser/printer.ts')).openPrinter(env)
const now = () => performance.now()
const args = argv.slice(2)
// The name that the build gives to it.
const openMaker = makerOnThreads(new URL('./thread.js', import.meta.url))
const interrupt = stop.signal
const cwd = typedIn(env, process.cwd())
const code = await run({ args, cwd, env, stdout, stderr, now, interrupt, openMaker, openPrinter })
// A write that fails is told after the call, so the last word is said when the process ends.
process.once('exit', () => {
  process.exitCode = stop.codeOf(code)
})
