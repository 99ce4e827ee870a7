/**
 * Memory over a long run, where BENCH_LONG says how many reports (1,000 take some minutes): read, evaluated without ranges,
 * rendered and printed in one process. Prints what the process and its browser hold along the way; asserts nothing of it.
 */
import { join } from 'node:path'
import { test } from 'vitest'
import { openPrinter, PAGES_AT_ONCE } from '../../src/shell/browser/printer.ts'
import { openMaking } from '../../src/shell/making/make.ts'
import { memoryOf } from './process-memory.ts'
import { FERNHILL } from './processes.ts'
import { record } from './record.ts'

const SCENARIO = join(FERNHILL, 'twice-as-fast.yaml')
const COUNT = Number(process.env.BENCH_LONG ?? 0)
const options = { copy: 'customer', units: null, paper: 'a4', everyOption: false } as const

test.runIf(COUNT > 0 && process.platform === 'linux')(
  'memory',
  async () => {
    const making = openMaking()
    const printer = await openPrinter(process.env)
    const rows: { [what: string]: number } = {}
    const every = Math.max(1, Math.floor(COUNT / 10))
    let next = 0
    const one = async () => {
      while (next < COUNT) {
        const count = ++next
        const made = making({ scenario: SCENARIO, unit: null, cwd: '.', options, ranges: false, wants: 'copies' })
        if ('problems' in made) throw new Error(made.problems)
        await printer.print(made.copies[0]?.html ?? '', '2026-01-01')
        if (count % every !== 0) continue
        const { own, below } = memoryOf(process.pid)
        rows[`after ${count}, process, MB`] = own
        rows[`after ${count}, browser, MB`] = below
      }
    }
    await Promise.all(Array.from({ length: PAGES_AT_ONCE }, one))
    await printer.close()
    record('memory over a long run', rows)
  },
  3_600_000,
)
