/** How long the command takes to start: --help and check against a node that does nothing, in turns. */
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { rolldown } from 'rolldown'
import { test } from 'vitest'
import { FERNHILL, ROOT, runNode, TOOL } from './processes.ts'
import { median, record } from './record.ts'

const ROUNDS = Number(process.env.BENCH_ROUNDS ?? 9)
const SCENARIO = join(FERNHILL, 'twice-as-fast.yaml')

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
  const times: { [what: string]: number[] } = {}
  const note = (what: string, value: number) => {
    times[what] = [...(times[what] ?? []), value]
  }
  const run = async (what: string, args: readonly string[]) => {
    const { ms, spent } = await runNode(args)
    note(what, ms)
    note(`${what}, spent`, spent)
  }
  const of = (what: string) => median(times[what] ?? [])
  try {
    const only = await evaluationOnly(folder)
    for (let i = 0; i < ROUNDS; i++) {
      await run('nothing', ['-e', '0'])
      await run('help', [TOOL, '--help'])
      await run('check', [TOOL, 'check', SCENARIO])
      const inside = JSON.parse((await runNode([only, SCENARIO])).stdout) as { readonly [what: string]: number }
      for (const [what, value] of Object.entries(inside)) note(what, value)
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
    'node -e 0, processor time, ms': of('nothing, spent'),
    '--help against node -e 0, processor time': of('help, spent') / of('nothing, spent'),
    'check less reading and evaluation, against node -e 0, processor time':
      (of('check, spent') - of('worked')) / of('nothing, spent'),
  })
})
