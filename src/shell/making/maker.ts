/** Who makes reports: this thread, or threads beside it, so that printing goes on while the next report is evaluated. */
import { setImmediate } from 'node:timers/promises'
import { Worker } from 'node:worker_threads'
import type { Asked, Made } from './make.ts'

export interface Maker {
  /** Rejects where the tool itself fails. Taken up in the order in which they were asked for. */
  readonly make: (asked: Asked) => Promise<Made>
  readonly close: () => Promise<void>
}

/** @param threads how many reports are made at once, at most */
export type OpenMaker = (threads: number) => Maker

/** In this thread, one after the other. */
export const makerHere: OpenMaker = () => {
  let making: Promise<(asked: Asked) => Made> | null = null
  let last: Promise<unknown> = Promise.resolve()
  return {
    make: (asked) => {
      const made = last.then(async () => {
        await setImmediate() // an evaluation leaves no room for a signal to be heard
        making ??= import('./make.ts').then(({ openMaking }) => openMaking())
        return (await making)(asked)
      })
      last = made.catch(() => {})
      return made
    },
    close: async () => {},
  }
}

interface Job {
  readonly asked: Asked
  readonly done: (made: Made) => void
  readonly failed: (error: Error) => void
}

/** What a thread answers. */
export type Reply = { readonly made: Made } | { readonly fault: string }

/** On threads that run `entry`; each is started when there is work for it. */
export const makerOnThreads =
  (entry: URL): OpenMaker =>
  (threads) => {
    const waiting: Job[] = []
    const idle: Worker[] = []
    const all = new Map<Worker, Job | null>()
    let closed = false

    const give = (worker: Worker): void => {
      const job = waiting.shift() ?? null
      all.set(worker, job)
      if (job === null) idle.push(worker)
      else worker.postMessage(job.asked)
    }
    const lost = (worker: Worker, error: Error): void => {
      const job = all.get(worker)
      all.delete(worker)
      if (idle.includes(worker)) idle.splice(idle.indexOf(worker), 1)
      job?.failed(error)
      if (!closed && waiting.length > 0) start()
    }
    const start = (): void => {
      const worker = new Worker(entry)
      all.set(worker, null)
      worker.on('message', (reply: Reply) => {
        const job = all.get(worker)
        if ('made' in reply) job?.done(reply.made)
        else job?.failed(new Error(reply.fault))
        give(worker)
      })
      worker.on('error', (error) => lost(worker, error))
      worker.on('exit', () => lost(worker, new Error('the thread that made the report ended')))
      give(worker)
    }
    return {
      make: (asked) =>
        new Promise((done, failed) => {
          if (closed) return failed(new Error('the run is over'))
          waiting.push({ asked, done, failed })
          const free = idle.shift()
          if (free !== undefined) give(free)
          else if (all.size < threads) start()
        }),
      close: async () => {
        closed = true
        await Promise.all([...all.keys()].map((worker) => worker.terminate()))
      },
    }
  }
