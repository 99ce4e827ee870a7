/** The shop from all files of its folder: one letterhead, rates, parts, labour, special orders. */
import type { Json } from '../question.ts'
import type { Part, Shop, SpecialOrder } from '../shop.ts'
import type { Quantity } from '../units/quantity.ts'
import type { SourceDocument } from './document.ts'
import { fileProblem, locate } from './document.ts'
import { strangerIn } from './file-kind.ts'
import { flawsOf } from './flaws.ts'
import { isMapping } from './patch.ts'
import { didYouMean, type Flaw, oneOf, type Problem } from './problems.ts'
import { rememberedByItems } from './remembered.ts'
import { PART_FIGURES, type PartSpec, type ShopSpec, shopFile } from './shop-schema.ts'
import { soundPart } from './sound.ts'

export type ShopResult =
  | { readonly shop: Shop }
  | {
      readonly problems: readonly Problem[]
      /** Parts that could be read. */
      readonly parts: readonly Part[]
      /** Ids that stand on the list, those of parts with a mistake too; every id where a file could not be read at all. */
      readonly isListed: (id: string) => boolean
    }

/** A file of the shop as far as it is sound. */
interface ShopDocument {
  readonly document: SourceDocument
  readonly spec: Partial<ShopSpec>
}

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

/** Parts that could be read, with their number; an entry with a mistake leaves a gap. */
const partsIn = ({ spec }: ShopDocument): readonly (readonly [number, PartSpec])[] =>
  (spec.parts ?? []).flatMap((part, i) =>
    typeof part?.id === 'string' && typeof part.kind === 'string' ? [[i, part] as const] : [],
  )

/** What the machine file would refuse as well, once the part is there. */
const filterFlaws = (figures: Json): Flaw[] => {
  const stated = (key: string, of: Json = figures): boolean => isMapping(of) && of[key] != null
  const at = isMapping(figures) ? (figures.at ?? null) : null
  if (!stated('drop') || stated('rated-flow') || stated('flow', at)) return []
  const message = 'the drop of the filter is stated without its flow'
  return [{ code: 'key-missing', path: [], message, expected: 'at: {flow: …, viscosity: …}', remedy: null }]
}

const figureFlaws = (part: PartSpec): Flaw[] => {
  const schema = PART_FIGURES[part.kind]
  const figures = (part.figures ?? {}) as Json
  const read = schema.safeParse(figures)
  if (!read.success) return flawsOf(read.error, figures, schema)
  return part.kind === 'filter' ? filterFlaws(figures) : []
}

/** Figures of each part against the schema of its kind. */
const figureProblems = (file: ShopDocument): Problem[] =>
  partsIn(file).flatMap(([i, part]) =>
    figureFlaws(part).map((flaw) => locate(file.document, { ...flaw, path: ['parts', i, 'figures', ...flaw.path] })),
  )

const twiceProblems = (files: readonly ShopDocument[]): Problem[] => {
  const seen = new Map<string, string>()
  return files.flatMap((file) =>
    partsIn(file).flatMap(([i, part]) => {
      const before = seen.get(part.id)
      seen.set(part.id, file.document.file)
      return before === undefined
        ? []
        : [
            locate(file.document, {
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

/** Every id that the files write, whatever else is wrong with the part. */
const idsIn = (documents: readonly SourceDocument[]): ReadonlySet<string> =>
  new Set(
    documents.flatMap(({ data }) => {
      const parts = isMapping(data) && Array.isArray(data.parts) ? (data.parts as readonly Json[]) : []
      return parts.flatMap((part) => (isMapping(part) && typeof part.id === 'string' ? [part.id.trim()] : []))
    }),
  )

const heldProblems = (files: readonly ShopDocument[], ids: ReadonlySet<string>): Problem[] =>
  files.flatMap((file) =>
    partsIn(file).flatMap(([i, part]) =>
      (part.holds ?? []).flatMap((held, j) =>
        typeof held?.part !== 'string' || ids.has(held.part)
          ? []
          : [
              locate(file.document, {
                code: 'part-unknown',
                path: ['parts', i, 'holds', j, 'part'],
                message: `the kit holds "${held.part}", which is not on the list`,
                expected: 'the id of a part on the list',
                remedy: didYouMean(held.part, [...ids]),
              }),
            ],
      ),
    ),
  )

/** A price made from a cost goes by a mark-up or by a margin, never by both. */
const pricingProblems = (files: readonly ShopDocument[]): Problem[] => {
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
  const files: ShopDocument[] = []
  const specs: ShopSpec[] = []
  const problems: Problem[] = []
  for (const document of documents) {
    const stranger = strangerIn(document, 'shop')
    if (stranger !== null) {
      problems.push(stranger)
      continue
    }
    const read = shopFile.safeParse(document.data)
    if (read.success) specs.push(read.data)
    else problems.push(...flawsOf(read.error, document.data, shopFile).map((flaw) => locate(document, flaw)))
    const sound = read.success ? read.data : soundPart(shopFile, document.data)
    files.push({ document, spec: (sound ?? {}) as Partial<ShopSpec> })
  }
  const ids = idsIn(documents)
  problems.push(...files.flatMap(figureProblems), ...twiceProblems(files), ...pricingProblems(files))
  if (whole) problems.push(...heldProblems(files, ids))
  const isNamed = documents.some(({ data }) => isMapping(data) && (data.shop ?? null) !== null)
  if (whole && !isNamed)
    problems.push(
      fileProblem(folder, {
        code: 'shop-missing',
        path: [],
        message: 'no file of this folder names the shop',
        expected: `a file with ${oneOf(['shop'])}: {name: …}`,
        remedy: null,
      }),
    )
  if (problems.length === 0 && whole) return { shop: assemble(specs) }
  const parts = files.flatMap((file) =>
    partsIn(file).flatMap(([, part]) => (figureFlaws(part).length === 0 ? [partOf(part)] : [])),
  )
  return { problems, parts, isListed: (id) => !whole || ids.size === 0 || ids.has(id) }
}

/**
 * Reads the shop.
 * @param documents every YAML file of the shop's folder, in the order of their names
 * @param whole false where one of the files could not be read at all: what may be missing is then no problem of its own
 */
export const readShop = rememberedByItems(readAfresh)
