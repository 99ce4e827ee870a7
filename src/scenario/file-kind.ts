/** Which kind of file a text is, by its keys: so that a machine given in place of a scenario is told as one mistake. */
import type { Json } from '../question.ts'
import { locate, readDocument, type SourceDocument } from './document.ts'
import { machineFile } from './machine-schema.ts'
import { isMapping } from './patch.ts'
import type { Problem } from './problems.ts'
import { scenarioFile } from './scenario-schema.ts'
import { keysAt } from './schema-walk.ts'
import { shopFile } from './shop-schema.ts'

type FileKind = 'machine' | 'scenario' | 'shop'

const KINDS = ['machine', 'scenario', 'shop'] as const
const KEYS = { machine: keysAt(machineFile, []), scenario: keysAt(scenarioFile, []), shop: keysAt(shopFile, []) }

/** Keys that no other kind of file has. */
const own = (kind: FileKind): readonly string[] =>
  KEYS[kind].filter((key) => KINDS.every((other) => other === kind || !KEYS[other].includes(key)))

const WORDS = {
  machine: { it: 'a machine file', instead: 'name the scenario that uses it (its "machine:" names this file)' },
  scenario: { it: 'a scenario', instead: 'name the machine file, which the scenario names under "machine"' },
  shop: { it: 'a file of the shop', instead: 'it belongs into the folder "shop"' },
} as const

/** Named in place of what was wanted, where that is another file than the one on the command line. */
const REMEDY: { readonly [wanted in FileKind]: { readonly [found in FileKind]?: string } } = {
  scenario: { machine: WORDS.machine.instead, shop: 'name a scenario; the shop is found beside it' },
  machine: { scenario: WORDS.scenario.instead, shop: 'name a file such as machines/NAME.yaml' },
  shop: { machine: 'move it to "machines"', scenario: 'move it out of the folder "shop"' },
}

const kindOf = (data: Json): FileKind | null => {
  if (!isMapping(data)) return null
  const counts = KINDS.map((kind) => own(kind).filter((key) => Object.hasOwn(data, key)).length)
  const found = KINDS.filter((_, i) => (counts[i] ?? 0) > 0)
  // Keys of two kinds: a file with stray keys, each of which is told.
  return found.length === 1 ? (found[0] ?? null) : null
}

/** The one mistake of a file that is whole, but of another kind than the one that is wanted here; null where it is not. */
export const strangerIn = (document: SourceDocument, wanted: FileKind): Problem | null => {
  const found = kindOf(document.data)
  if (found === null || found === wanted || !isMapping(document.data)) return null
  const key = own(found).find((name) => isMapping(document.data) && Object.hasOwn(document.data, name)) ?? ''
  return locate(document, {
    code: 'file-of-another-kind',
    path: [key],
    atKey: true,
    message: `this looks like ${WORDS[found].it}`,
    expected: WORDS[wanted].it,
    remedy: REMEDY[wanted][found] ?? null,
  })
}

/**
 * Whether a YAML file of a folder is meant as a scenario. One that cannot be read, or that is nothing of the three, may be:
 * its mistakes are better told than passed over.
 */
export const mayBeScenario = (file: string, text: string): boolean => {
  const read = readDocument(file, text)
  const found = 'document' in read ? kindOf(read.document.data) : null
  return found === null || found === 'scenario'
}
