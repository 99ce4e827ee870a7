/** From saving a scenario to the page that says so, with --watch: the real process, the time as a reader of the page sees it. */
import { spawn } from 'node:child_process'
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test } from 'vitest'
import { FERNHILL, TOOL } from './processes.ts'
import { median, record } from './record.ts'

const ROUNDS = Number(process.env.BENCH_ROUNDS ?? 9)
const pause = (ms: number) => new Promise((done) => setTimeout(done, ms))

test('watch', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'feasibility-bench-'))
  for (const name of ['machines', 'shop', 'twice-as-fast.yaml'])
    cpSync(join(FERNHILL, name), join(folder, name), { recursive: true })
  const page = join(folder, 'out', 'twice-as-fast', 'customer.html')
  const says = (text: string) => existsSync(page) && readFileSync(page, 'utf8').includes(text)
  const scenario = join(folder, 'twice-as-fast.yaml')
  const text = readFileSync(scenario, 'utf8')
  const child = spawn(process.execPath, [TOOL, 'report', '--watch', 'twice-as-fast.yaml', '--quiet'], { cwd: folder })
  let answers = 0
  child.stdout.on('data', () => {
    answers++
  })
  const ended = new Promise((done) => child.on('close', done))
  try {
    while (answers === 0) await pause(20)
    const times: number[] = []
    for (let i = 0; i < ROUNDS; i++) {
      const before = answers
      writeFileSync(scenario, text.replace(/^title:.*$/mu, `title: Saving number ${i} of it`))
      const began = performance.now()
      while (!says(`Saving number ${i} of it`)) await pause(2)
      times.push(performance.now() - began)
      while (answers === before) await pause(20) // the ranges
    }
    record('watch', { 'from saving to the page, ms, median (aim 150)': median(times) })
  } finally {
    child.kill('SIGINT')
    await ended
    rmSync(folder, { recursive: true, force: true })
  }
})
