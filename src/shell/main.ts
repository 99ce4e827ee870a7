/** The real streams, clock and signals; everything else is in cli.ts. */
import { openPrinter } from './browser/printer.ts'
import { run } from './cli.ts'

const stop = new AbortController()
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => stop.abort())
const { argv, env, stdout, stderr } = process
for (const stream of [stdout, stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error // a reader that has seen enough is no fault of ours
  })
}
const now = () => performance.now()
process.exitCode = await run({
  args: argv.slice(2),
  cwd: process.cwd(),
  env,
  stdout,
  stderr,
  now,
  interrupt: stop.signal,
  openPrinter,
})
