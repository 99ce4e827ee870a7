/** How long the command takes to start: --help and check against a node that does nothing, in turns. */
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { rolldown } from 'rolldown'
import { test } from 'vitest'
import { processorTime, ROOT, runNode, TOOL } from './processes.ts'
import { median, record } from './record.ts'

const ROUNDS = Number(process.env.BENCH_ROUNDS ?? 9)
const SCENARIO = join(ROOT, 'scenarios', 'twice-as-fast.yaml')

/** What check has to work out in any case, as a bundle made like the tool itself. */
const evaluationOnly = async (folder: string): Promise<string> => {
  const made = await rolldown({ cwd: ROOT, input: join(ROOT, 'test', 'bench', 'evaluate-once.ts'), platform: 'node' })
  await made.write({ dir: folder, format: 'esm' })
  await made.close()
  return join(folder, 'evaluate-once.js')
}

test('start', async () => {
  await runNode([TOOL, '--help']) // builds, where it has to
  const folder = mkdtempSync(join(ROOT, 'out', '.bench-'))
  const times: { readonly [what: string]: number[] } = {
    nothing: [],
    help: [],
    check: [],
    reading: [],
    evaluation: [],
    worked: [],
    nothingSpent: [],
    helpSpent: [],
    checkSpent: [],
  }
  const note = (what: string, value: number | null) => {
    if (value !== null) times[what]?.push(value)
  }
  const of = (what: string) => median(times[what] ?? [])
  try {
    const only = await evaluationOnly(folder)
    for (let i = 0; i < ROUNDS; i++) {
      note('nothing', (await runNode(['-e', '0'])).ms)
      note('nothingSpent', processorTime(['-e', '0']))
      note('help', (await runNode([TOOL, '--help'])).ms)
      note('helpSpent', processorTime([TOOL, '--help']))
      note('check', (await runNode([TOOL, 'check', SCENARIO])).ms)
      note('checkSpent', processorTime([TOOL, 'check', SCENARIO]))
      const inside = JSON.parse((await runNode([only, SCENARIO])).stdout) as { readonly [what: string]: number }
      for (const what of ['reading', 'evaluation', 'worked']) note(what, inside[what] ?? null)
    }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
  record('start', {
    'node -e 0, ms': of('nothing'),
    '--help, ms': of('help'),
    '--help against node -e 0': of('help') / of('nothing'),
    'check, ms': of('check'),
    'of it reading the files, ms': of('reading'),
    'of it the evaluation with its ranges, ms': of('evaluation'),
    'check less reading and evaluation, against node -e 0 (aim 2.5)':
      (of('check') - of('reading') - of('evaluation')) / of('nothing'),
    'node -e 0, processor time, ms': of('nothingSpent'),
    '--help against node -e 0, processor time': of('helpSpent') / of('nothingSpent'),
    'check less reading and evaluation, against node -e 0, processor time':
      (of('checkSpent') - of('worked')) / of('nothingSpent'),
  })
})
