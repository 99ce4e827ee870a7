/**
 * A batch of different scenarios against the bare loop that prints the same finished pages, and what the processors alone
 * would allow: evaluating takes many times as long as printing, and both have the same processors.
 */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { availableParallelism, tmpdir } from 'node:os'
import { join } from 'node:path'
import { test } from 'vitest'
import { browserSettings, FERNHILL, runBare, runNode, TOOL } from './processes.ts'
import { record } from './record.ts'

const COUNT = Number(process.env.BENCH_BATCH ?? 100)

/** The same machine in so many places: another trip, another summer, another customer. */
const scenarios = (folder: string): readonly string[] => {
  for (const name of ['machines', 'shop']) cpSync(join(FERNHILL, name), join(folder, name), { recursive: true })
  const text = readFileSync(join(FERNHILL, 'twice-as-fast.yaml'), 'utf8')
  return Array.from({ length: COUNT }, (_, i) => {
    const name = `place-${String(i).padStart(4, '0')}`
    const own = text
      .replace(/^title:.*$/mu, `title: Place ${i}`)
      .replace(/ambient: [\d.]+ °C/u, `ambient: ${(22 + (15 * i) / COUNT).toFixed(1)} °C`)
      .replace(/trip: \d+ m/u, `trip: ${100 + 3 * i} m`)
    if (own === text) throw new Error('the scenario has another form than this bench changes')
    writeFileSync(join(folder, `${name}.yaml`), own)
    return name
  })
}

test('batch', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'feasibility-bench-'))
  try {
    const settings = await browserSettings()
    const names = scenarios(folder)
    const out = join(folder, 'out')
    const printed = join(folder, 'bare')
    mkdirSync(printed)
    const whole = await runNode([TOOL, 'report', folder, '--out', out, '--quiet'])
    const again = await runNode([TOOL, 'report', folder, '--out', out, '--quiet'])
    const answers = await runNode([
      TOOL,
      'report',
      folder,
      '--out',
      join(folder, 'html'),
      '--quiet',
      '--format',
      'html',
    ])
    const pages = names.map((name) => join(out, name, 'customer.html'))
    const bare = await runBare(settings, pages, printed)
    record(`batch of ${COUNT}`, {
      processors: availableParallelism(),
      'bare loop over the finished pages, s': bare.ms / 1000,
      'report of all, s': whole.ms / 1000,
      'report of all against the bare loop (aim 1.05)': whole.ms / bare.ms,
      'HTML alone, s': answers.ms / 1000,
      'report of all against its HTML alone: what printing adds': whole.ms / answers.ms,
      'report of all against HTML alone and bare loop one after the other': whole.ms / (answers.ms + bare.ms),
      'processor time of node, HTML alone, s': answers.spent / 1000,
      'processor time of node, report of all, s': whole.spent / 1000,
      'bound: that of HTML alone over all processors, against the bare loop':
        answers.spent / availableParallelism() / bare.ms,
      'unchanged, s': again.ms / 1000,
      'peak memory of the tool, MB': whole.memory.own,
      'peak memory of its browser, MB': whole.memory.below,
    })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
