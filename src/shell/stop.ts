/** What ends a run from outside: Ctrl-C, the system going down, an output that takes no more. */
import { EXIT, type ExitCode } from './exit-codes.ts'

export interface Stop {
  readonly signal: AbortSignal
  /** The exit code of the run, or that of a fault where the answer could not be written. */
  readonly codeOf: (code: ExitCode) => ExitCode
}

/** Listens once: a second Ctrl-C ends the process at once. */
export const listenForStop = ({ stdout, stderr }: Pick<NodeJS.Process, 'stdout' | 'stderr'>): Stop => {
  const controller = new AbortController()
  let lost = false
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => controller.abort())
  stderr.on('error', () => {}) // nobody is left to tell
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE' || lost) return // a reader that has seen enough is no fault of ours
    lost = true
    stderr.write(`feasibility: the answer could not be written: ${error.message}\n`)
    controller.abort()
  })
  return { signal: controller.signal, codeOf: (code) => (lost ? EXIT.fault : code) }
}
