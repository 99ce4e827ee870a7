/** From the asked change to each consequence, with the findings that asked for it. */
import type { Consequence, ResultDocument } from '../../evaluation.ts'
import { count, typeset } from '../format.ts'
import { componentName } from '../names.ts'
import { changesNothing } from '../view-model/subject.ts'
import { en } from '../wording.ts'
import { shop } from '../wording-shop.ts'

export interface ChainRow {
  readonly component: string
  readonly action: string
  readonly chain: string
  readonly part: string
  readonly notes: readonly string[]
  /** Ids of the findings, in their two halves. */
  readonly because: readonly { readonly check: string; readonly of: string }[]
}

export interface ChainWay {
  readonly heading: string
  readonly changes: readonly string[]
  readonly hasChanges: boolean
  readonly rows: readonly ChainRow[]
  readonly hasRows: boolean
}

export interface ChainsView {
  readonly words: typeof shop.chains
  readonly ways: readonly ChainWay[]
  readonly hasWays: boolean
}

const words = shop.chains

const chainRow = (consequence: Consequence): ChainRow => {
  const { component, action, chain, part, quantity, available, specialOrder, connections, because } = consequence
  const had = available ? words.available : specialOrder ? words.special : words.missing
  return {
    component: en.capital(componentName(component)),
    action: words.action[action],
    chain: typeset(chain.join(words.step)),
    part: part === null ? had : en.parts.times(count(quantity), part),
    notes: [
      ...(part === null ? [] : [had]),
      ...connections.map(({ from, to, adapter }) =>
        typeset(adapter === null ? words.joint(from, to) : words.adapter(from, to, adapter)),
      ),
    ],
    because: because.map((id) => {
      const colon = id.indexOf(':')
      return { check: id.slice(0, colon + 1), of: id.slice(colon + 1) }
    }),
  }
}

const NOTHING: ReadonlySet<string> = new Set(['', 'none'])

export const chainsView = (result: ResultDocument): ChainsView => {
  const { restoration, options } = result
  const repair: readonly ChainWay[] =
    restoration === null
      ? []
      : [
          {
            heading: shop.money.restore,
            changes: [],
            hasChanges: false,
            rows: restoration.consequences.map(chainRow),
            hasRows: restoration.consequences.length > 0,
          },
        ]
  const ways = [
    ...repair,
    ...options
      .filter((option) => !changesNothing(option))
      .map(({ name, changes, consequences }) => ({
        heading: en.quoted(name),
        changes: changes.map(({ component, from, to }) => {
          const [what, now] = [en.capital(componentName(component)), typeset(to)]
          return NOTHING.has(from) ? `${what}: ${now}` : words.change(what, typeset(from), now)
        }),
        hasChanges: changes.length > 0,
        rows: consequences.map(chainRow),
        hasRows: consequences.length > 0,
      })),
  ]
  return { words, ways, hasWays: ways.length > 0 }
}
