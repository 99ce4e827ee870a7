/** The shop from all files of its folder: one letterhead, rates, parts, labour, special orders. */
import type { Json } from '../question.ts'
import type { Part, Shop, SpecialOrder } from '../shop.ts'
import type { Quantity } from '../units/quantity.ts'
import type { SourceDocument } from './document.ts'
import { fileProblem, locate } from './document.ts'
import { flawsOf } from './flaws.ts'
import { oneOf, type Problem } from './problems.ts'
import { rememberedByItems } from './remembered.ts'
import { PART_FIGURES, type PartSpec, type ShopSpec, shopFile } from './shop-schema.ts'

export type ShopResult = { readonly shop: Shop } | { readonly problems: readonly Problem[] }

/** Rates where the shop states none: nothing is added that it does not ask for. */
const NOT_STATED = { units: 'metric', currency: 'USD', quoteValidDays: 30 } as const
/** Thresholds of the answer (method). */
const LIMITS = { shareOfValue: 0.4, paybackYears: 2, leastGain: 0.1 } as const

type Lead = Quantity<'time'> | number | null | undefined

const daysOf = (lead: Lead): number | null => {
  if (lead === null || lead === undefined) return null
  return typeof lead === 'number' ? lead : lead.si / 86_400
}

const partOf = (spec: PartSpec): Part => ({
  id: spec.id,
  kind: spec.kind,
  name: spec.name,
  figures: (spec.figures ?? {}) as Part['figures'],
  cost: spec.cost ?? null,
  price: spec.price ?? null,
  leadDays: daysOf(spec['lead-time']),
  stock: spec.stock ?? null,
  labour: spec.labour ?? [],
  holds: (spec.holds ?? []).map(({ part, quantity }) => ({ part, quantity: quantity ?? 1 })),
  coreDeposit: spec['core-deposit'] ?? null,
})

/** Figures of each part against the schema of its kind. */
const figureProblems = (document: SourceDocument, parts: readonly PartSpec[]): Problem[] =>
  parts.flatMap((part, i) => {
    const schema = PART_FIGURES[part.kind]
    const figures = (part.figures ?? {}) as Json
    const read = schema.safeParse(figures)
    if (read.success) return []
    const base = ['parts', i, 'figures']
    return flawsOf(read.error, figures, schema).map((flaw) =>
      locate(document, { ...flaw, path: [...base, ...flaw.path] }),
    )
  })

const twiceProblems = (files: readonly { document: SourceDocument; spec: ShopSpec }[]): Problem[] => {
  const seen = new Map<string, string>()
  return files.flatMap(({ document, spec }) =>
    (spec.parts ?? []).flatMap((part, i) => {
      const before = seen.get(part.id)
      seen.set(part.id, document.file)
      return before === undefined
        ? []
        : [
            locate(document, {
              code: 'part-twice',
              path: ['parts', i, 'id'],
              message: `the part "${part.id}" is on the list twice`,
              expected: `an id of its own (the other is in ${before})`,
              remedy: null,
            }),
          ]
    }),
  )
}

const heldProblems = (files: readonly { document: SourceDocument; spec: ShopSpec }[]): Problem[] => {
  const ids = new Set(files.flatMap(({ spec }) => (spec.parts ?? []).map((part) => part.id)))
  return files.flatMap(({ document, spec }) =>
    (spec.parts ?? []).flatMap((part, i) =>
      (part.holds ?? []).flatMap((held, j) =>
        ids.has(held.part)
          ? []
          : [
              locate(document, {
                code: 'part-unknown',
                path: ['parts', i, 'holds', j, 'part'],
                message: `the kit holds "${held.part}", which is not on the list`,
                expected: 'the id of a part on the list',
                remedy: null,
              }),
            ],
      ),
    ),
  )
}

/** A price made from a cost goes by a mark-up or by a margin, never by both. */
const pricingProblems = (files: readonly { document: SourceDocument; spec: ShopSpec }[]): Problem[] => {
  const withMargin = files.find(({ spec }) => spec.margin != null)
  if (withMargin === undefined || files.every(({ spec }) => spec['mark-up'] == null)) return []
  return [
    locate(withMargin.document, {
      code: 'one-of-two',
      path: ['margin'],
      atKey: true,
      message: '"mark-up" and "margin" are both written',
      expected: 'one of the two',
      remedy: 'mark-up is a share of the cost, margin a share of the price',
    }),
  ]
}

/** First stated value over all files. */
const first = <K extends keyof ShopSpec>(specs: readonly ShopSpec[], key: K): ShopSpec[K] | undefined =>
  specs.map((spec) => spec[key]).find((value) => value !== undefined && value !== null)

const addressOf = (address: string | string[] | null | undefined): readonly string[] => {
  if (address === null || address === undefined) return []
  return Array.isArray(address) ? address : [address]
}

const assemble = (specs: readonly ShopSpec[]): Shop => {
  const letterhead = first(specs, 'shop')
  const supplies = first(specs, 'supplies')
  const limits = first(specs, 'limits')
  const orders: SpecialOrder[] = specs.flatMap((spec) =>
    (spec['special-order'] ?? []).map((order) => ({
      kind: order.kind,
      allow: order.allow,
      leadDays: daysOf(order['lead-time']),
    })),
  )
  return {
    name: letterhead?.name ?? '',
    address: addressOf(letterhead?.address),
    phone: letterhead?.phone ?? null,
    email: letterhead?.email ?? null,
    mark: letterhead?.mark ?? null,
    accent: letterhead?.accent ?? null,
    units: first(specs, 'units') ?? NOT_STATED.units,
    currency: first(specs, 'currency') ?? NOT_STATED.currency,
    labourRate: first(specs, 'labour-rate') ?? 0,
    markUp: first(specs, 'mark-up')?.si ?? null,
    marginStated: first(specs, 'margin')?.si ?? null,
    tax: first(specs, 'tax')?.si ?? 0,
    supplies: { shareOfLabour: supplies?.['share-of-labour'].si ?? 0, atMost: supplies?.['at-most'] ?? null },
    freight: first(specs, 'freight') ?? 0,
    contingency: first(specs, 'contingency')?.si ?? 0,
    quoteValidDays: daysOf(first(specs, 'quote-valid')) ?? NOT_STATED.quoteValidDays,
    terms: first(specs, 'terms') ?? [],
    disposal: first(specs, 'disposal') ?? 0,
    limits: {
      shareOfValue: limits?.['share-of-value']?.si ?? LIMITS.shareOfValue,
      paybackYears: limits?.payback ?? LIMITS.paybackYears,
      leastGain: limits?.['least-gain']?.si ?? LIMITS.leastGain,
    },
    parts: specs.flatMap((spec) => (spec.parts ?? []).map(partOf)),
    specialOrder: orders,
    labour: specs.flatMap((spec) => spec.labour ?? []),
  }
}

const readAfresh = (documents: readonly SourceDocument[], folder: string, whole: boolean): ShopResult => {
  const files: { document: SourceDocument; spec: ShopSpec }[] = []
  const problems: Problem[] = []
  for (const document of documents) {
    const read = shopFile.safeParse(document.data)
    if (read.success) files.push({ document, spec: read.data })
    else problems.push(...flawsOf(read.error, document.data, shopFile).map((flaw) => locate(document, flaw)))
  }
  for (const { document, spec } of files) problems.push(...figureProblems(document, spec.parts ?? []))
  if (!whole) return { problems }
  if (problems.length === 0) problems.push(...twiceProblems(files), ...heldProblems(files), ...pricingProblems(files))
  if (
    problems.length === 0 &&
    first(
      files.map((f) => f.spec),
      'shop',
    ) === undefined
  )
    problems.push(
      fileProblem(folder, {
        code: 'shop-missing',
        path: [],
        message: 'no file of this folder names the shop',
        expected: `a file with ${oneOf(['shop'])}: {name: …}`,
        remedy: null,
      }),
    )
  return problems.length > 0 ? { problems } : { shop: assemble(files.map((f) => f.spec)) }
}

/**
 * Reads the shop.
 * @param documents every YAML file of the shop's folder, in the order of their names
 * @param whole false where one of the files could not be read at all: what may be missing is then no problem of its own
 */
export const readShop = rememberedByItems(readAfresh)
