/** Scenarios that no shop would wish for, each in a folder of its own made from the demo files. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Document, isScalar, parseDocument, visit } from 'yaml'
import { copiesOf, SCENARIOS, type WrittenCopy } from './written.ts'

export interface Stress {
  readonly scenario?: (document: Document) => void
  readonly machine?: (document: Document) => void
  readonly shop?: (document: Document) => void
  /** Of any file, `shop.yaml` included. */
  readonly everyText?: (text: string, key: string) => string
  /** Beside the shop file. */
  readonly files?: { readonly [name: string]: string | Uint8Array }
  readonly args?: readonly string[]
}

/** Keys whose text a person makes up; all others hold words, figures and names of the list. */
const FREE = new Set([
  ...['title', 'asked', 'why', 'name', 'place', 'number', 'address', 'phone', 'email', 'terms', 'open-defects'],
])

const edited = (path: string, edits: readonly ((document: Document) => void)[]): void => {
  const document = parseDocument(readFileSync(path, 'utf8'))
  for (const edit of edits) edit(document)
  writeFileSync(path, document.toString({ lineWidth: 0 }))
}

const rewriting = (everyText: (text: string, key: string) => string) => (document: Document) =>
  visit(document, {
    Scalar: (place, node, path) => {
      if (place === 'key') return
      const pair = path.findLast((member) => 'key' in member && isScalar(member.key))
      const key = pair !== undefined && 'key' in pair && isScalar(pair.key) ? String(pair.key.value) : ''
      // `place` of a cooler or a filter is a word of the format.
      if (FREE.has(key) && typeof node.value === 'string' && node.value !== 'return')
        node.value = everyText(node.value, key)
    },
  })

/** The three copies of a demo scenario after the edits. */
export const stressedCopies = async (
  base: string,
  machine: string,
  { scenario, machine: ofMachine, shop, everyText, files = {}, args = [] }: Stress,
): Promise<{ copies: readonly WrittenCopy[]; stderr: string }> => {
  const folder = mkdtempSync(join(tmpdir(), 'feasibility-stress-'))
  try {
    for (const part of ['machines', 'shop', `${base}.yaml`])
      cpSync(join(SCENARIOS, part), join(folder, part), { recursive: true })
    const all = everyText === undefined ? [] : [rewriting(everyText)]
    edited(join(folder, `${base}.yaml`), [...(scenario === undefined ? [] : [scenario]), ...all])
    edited(join(folder, 'machines', `${machine}.yaml`), [...(ofMachine === undefined ? [] : [ofMachine]), ...all])
    for (const file of readdirSync(join(folder, 'shop')).filter((name) => name.endsWith('.yaml')))
      edited(join(folder, 'shop', file), [...(file === 'shop.yaml' && shop !== undefined ? [shop] : []), ...all])
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, 'shop', name), content)
    return await copiesOf(base, { folder, args })
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
