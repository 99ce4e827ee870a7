/**
 * A report against a bare puppeteer script that prints the same finished HTML with the same browser: the first of a process,
 * and the twentieth with the browser kept; and how many pages at once pay. In turns, medians.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test } from 'vitest'
import { normalisePdf } from '../../src/shell/browser/normalise-pdf.ts'
import { packPdf } from '../../src/shell/browser/pack-pdf.ts'
import { openPrinter } from '../../src/shell/browser/printer.ts'
import { openMaking } from '../../src/shell/making/make.ts'
import { browserSettings, FERNHILL, ROOT, runBare, runNode, TOOL } from './processes.ts'
import { median, record } from './record.ts'

const ROUNDS = Number(process.env.BENCH_ROUNDS ?? 7)
const SCENARIO = join(FERNHILL, 'twice-as-fast.yaml')
const asked = {
  scenario: SCENARIO,
  unit: null,
  cwd: ROOT,
  options: { copy: 'customer', units: null, paper: 'a4', everyOption: false },
  ranges: true,
  wants: 'copies',
} as const

const timed = async <T>(work: () => T | Promise<T>): Promise<readonly [number, T]> => {
  const began = performance.now()
  const made = await work()
  return [performance.now() - began, made]
}

test('report', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'feasibility-bench-'))
  try {
    const settings = await browserSettings()
    const out = join(folder, 'out')
    const page = join(out, 'twice-as-fast', 'customer.html')
    await runNode([TOOL, 'report', SCENARIO, '--out', out])
    const times: { [what: string]: number[] } = {}
    const note = (what: string, { ms, spent }: { readonly ms: number; readonly spent: number }) => {
      times[what] = [...(times[what] ?? []), ms]
      times[`${what}, spent`] = [...(times[`${what}, spent`] ?? []), spent]
    }
    const of = (what: string) => median(times[what] ?? [])
    for (let i = 0; i < ROUNDS; i++) {
      note('bare', await runBare(settings, [page], folder))
      note('ours', await runNode([TOOL, 'report', SCENARIO, '--out', out, '--force']))
      note('check', await runNode([TOOL, 'check', SCENARIO]))
      note('unchanged', await runNode([TOOL, 'report', SCENARIO, '--out', out]))
    }
    // With the browser kept: 14 prints to warm up, then the median of those around the twentieth.
    const kept = median(
      (
        await runBare(
          settings,
          Array.from({ length: 26 }, () => page),
          folder,
        )
      ).each.slice(14),
    )
    const making = openMaking()
    const printer = await openPrinter(process.env)
    const [made, printed] = [[], []] as [number[], number[]]
    let html = ''
    let pdf: Uint8Array = new Uint8Array()
    for (let i = 0; i < 26; i++) {
      const [ms, answer] = await timed(() => making({ ...asked, ranges: i < 8 }))
      if ('problems' in answer) throw new Error(answer.problems)
      if (i > 2 && i < 8) made.push(ms)
      html = answer.copies[0]?.html ?? ''
      const [print, bytes] = await timed(() => printer.print(html, '2026-01-01'))
      pdf = bytes
      if (i >= 14) printed.push(print)
    }
    await printer.close()
    const finishing = await Promise.all(
      Array.from({ length: 9 }, () => timed(() => packPdf(normalisePdf(pdf, '2026-01-01')))),
    )
    const [first, alone] = [of('ours'), of('bare')]
    record('report', {
      'bare print, a process of its own, ms': alone,
      'report --force, ms': first,
      'report against the bare print, first (aim 1.15)': first / alone,
      'an unchanged report, ms': of('unchanged'),
      'report against bare print and check one after the other': first / (alone + of('check')),
      'processor time of node, check, ms': of('check, spent'),
      'processor time of node, report, ms': of('ours, spent'),
      'bare print, browser kept, ms': kept,
      'print of the same page, browser kept, ms': median(printed),
      'print against the bare print, browser kept': median(printed) / kept,
      'read, evaluated and rendered, warm, ms': median(made),
      'report against the bare print, browser kept, one after the other': (median(made) + median(printed)) / kept,
      'dates and tags of the PDF, ms': median(finishing.map(([ms]) => ms)),
    })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})

test('pages at once', async () => {
  const making = openMaking()
  const answer = making({ ...asked, ranges: false })
  if ('problems' in answer) throw new Error(answer.problems)
  const html = answer.copies[0]?.html ?? ''
  const rates: { [pages: number]: number[] } = { 1: [], 2: [], 3: [], 4: [] }
  for (let round = 0; round < 3; round++)
    for (const pages of [1, 2, 3, 4]) {
      const printer = await openPrinter(process.env, pages)
      await Promise.all(Array.from({ length: pages }, () => printer.print(html, '2026-01-01')))
      const [ms] = await timed(() => Promise.all(Array.from({ length: 24 }, () => printer.print(html, '2026-01-01'))))
      await printer.close()
      rates[pages]?.push(24_000 / ms)
    }
  record(
    'pages at once',
    Object.fromEntries([1, 2, 3, 4].map((pages) => [`${pages} at once, prints a second`, median(rates[pages] ?? [])])),
  )
})
