/** A thread that makes reports: a question comes in, its copies go out. */
import { parentPort } from 'node:worker_threads'
import { type Asked, openMaking } from './make.ts'
import type { Reply } from './maker.ts'

const making = openMaking()

parentPort?.on('message', (asked: Asked) => {
  let reply: Reply
  try {
    reply = { made: making(asked) }
  } catch (error) {
    reply = { fault: error instanceof Error ? error.message : String(error) }
  }
  parentPort?.postMessage(reply)
})
