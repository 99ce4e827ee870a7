#!/usr/bin/env node
/** Starts the tool; builds it first where dist/ is missing or older than src/. Nothing but results on stdout. */
import { build, isFresh } from './build.js'

const failure = isFresh() ? null : await build()
if (failure === null) {
  await import('../dist/shell/main.js')
} else {
  process.stderr.write(`feasibility: ${failure}\n`)
  process.exitCode = 1
}
