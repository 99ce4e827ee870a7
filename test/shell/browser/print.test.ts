/**
 * One real print with the browser that npm brings, unpacked into a fresh home, and read back with a PDF library: text, tags,
 * bookmarks, fonts. On systems other than Linux x64 whatever browser is found prints.
 */
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openPrinter, type Printer } from '../../../src/shell/browser/printer.ts'
import { unpackBrowser } from '../../../src/shell/browser/unpack.ts'
import { runCommand } from '../world.ts'

const FERNHILL = new URL('../../fixtures/fernhill/', import.meta.url)

let home = ''
let printer: Printer
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'feasibility-home-'))
  printer = await openPrinter({ ...process.env, HOME: home, XDG_CACHE_HOME: '' })
}, 120_000)
afterAll(async () => {
  await printer?.close()
  rmSync(home, { recursive: true, force: true })
})

const read = async (bytes: Uint8Array) => {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages = await Promise.all(
    Array.from({ length: document.numPages }, async (_, i) => {
      const content = await (await document.getPage(i + 1)).getTextContent()
      return content.items.map((item) => ('str' in item ? item.str : '')).join(' ')
    }),
  )
  const { info } = await document.getMetadata()
  const raw = Buffer.from(bytes).toString('latin1')
  return { pages, outline: await document.getOutline(), mark: await document.getMarkInfo(), info, raw }
}

describe('printing', () => {
  let html = ''
  let first = new Uint8Array()
  beforeAll(async () => {
    const prints: { html: string; date: string }[] = []
    const catching = async () => ({
      print: async (page: string, date: string) => {
        prints.push({ html: page, date })
        return new Uint8Array()
      },
      close: async () => {},
    })
    const out = mkdtempSync(join(tmpdir(), 'feasibility-out-'))
    await runCommand(
      ['report', 'twice-as-fast.yaml', '--quiet', '--out', out],
      new URL('.', FERNHILL).pathname,
      catching,
    )
    rmSync(out, { recursive: true, force: true })
    html = prints[0]?.html ?? ''
    first = new Uint8Array(await printer.print(html, '2026-03-02'))
  }, 120_000)

  test('text, page numbers, tags, bookmarks, fonts', async () => {
    const { pages, outline, mark, raw } = await read(first)
    expect(pages[0]).toContain('Twice as fast to the far paddock')
    expect(pages[0]).toContain(`Page 1 of ${pages.length}`)
    expect(mark).toMatchObject({ Marked: true })
    expect(outline[0]?.items.length).toBeGreaterThan(3)
    expect(raw).toMatch(/\/BaseFont \/[A-Z]{6}\+Inter-Regular/u)
    expect(raw).toMatch(/\/BaseFont \/[A-Z]{6}\+Inter-Bold/u)
    expect(raw).toContain('/Lang (en)')
    expect(raw).not.toMatch(/\/BaseFont \/[A-Z]{6}\+(?!Inter)/u)
  })

  test('the same page gives the same bytes, under 400 kB', async () => {
    const second = await printer.print(html, '2026-03-02')
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true)
    expect(first.length).toBeLessThan(400 * 1024)
  })

  test('letter paper is letter paper', async () => {
    const letter = html.replace(/size:\s*A4/iu, 'size: letter')
    expect(letter).not.toBe(html)
    const { raw } = await read(await printer.print(letter, '2026-03-02'))
    expect(raw).toMatch(/\/MediaBox \[0 0 612 792\]/u)
  })
})

describe.runIf(process.platform === 'linux' && process.arch === 'x64')('unpacking', () => {
  test('went into the home folder, once, with its mark, and leaves nothing beside it', () => {
    const cache = readdirSync(home, { recursive: true }).map(String)
    const marks = cache.filter((name) => name.endsWith('.ok'))
    expect(marks).toHaveLength(1)
    expect(existsSync(join(home, marks[0] ?? '', '..', 'headless-shell'))).toBe(true)
    expect(cache.filter((name) => /chromium-[\d.]+\.[A-Za-z0-9]{6}$/u.test(name))).toEqual([])
  })

  test('an unpacked browser is taken as it is', async () => {
    const marks = readdirSync(home, { recursive: true })
      .map(String)
      .filter((name) => name.endsWith('.ok'))
    const folder = join(home, marks[0] ?? '', '..')
    const version = folder.split('chromium-').at(-1) ?? ''
    const again = await unpackBrowser({ folder: '/nowhere', version }, join(folder, '..'))
    expect(again.executable).toBe(join(folder, 'headless-shell'))
  })
})
