/**
 * Takes written figures out of a machine: each one drawn within its tolerance where a range is worked out, each assumed or
 * missing one noted. The only place where a default enters.
 */
import type { Draw } from '../loaded.ts'
import type { Assumption } from '../question.ts'
import { type Dimension, readable } from '../units/dimensions.ts'
import type { Quantity } from '../units/quantity.ts'

/** Half-width of a figure's tolerance where none is written: a share of it, or points of a share. */
export type Spread = { readonly share: number } | { readonly points: number } | null

/** Defaults of the method's "Ranges"; sprocket and wheel are paced out over three turns, which is good to 1 %. */
export const SPREADS = {
  displacement: { share: 0.03 },
  efficiency: { points: 0.03 },
  length: { share: 0.05 },
  way: { share: 0.01 },
  surface: { share: 0.15 },
  heatTransfer: { share: 0.25 },
} as const satisfies { readonly [name: string]: Spread }

const halfWidth = (si: number, spread: Spread): number => {
  if (spread === null) return 0
  return 'share' in spread ? Math.abs(si) * spread.share : spread.points
}

/** Shares stay what they are: an efficiency above 1 cannot be drawn. */
const held = (dimension: Dimension, value: number): number =>
  dimension === 'share' ? Math.min(1, Math.max(0, value)) : value

/** Half-width as it is listed: "± 3 %", of a share in points; null where there is none. */
const toleranceText = (dimension: Dimension, si: number, tolerance: number): string | null => {
  if (tolerance === 0) return null
  if (dimension === 'share') return `± ${Number((tolerance * 100).toPrecision(3))} points`
  return si === 0 ? null : `± ${Number(((100 * tolerance) / Math.abs(si)).toPrecision(3))} %`
}

const isQuantity = (value: object): value is Quantity => 'si' in value && 'dimension' in value && 'text' in value

/** Every quantity of a read file that is marked (assumed), with its path, in the file's order. */
export const assumedIn = (spec: unknown, path: readonly string[] = []): readonly Assumption[] => {
  if (typeof spec !== 'object' || spec === null) return []
  if (!isQuantity(spec)) return Object.entries(spec).flatMap(([key, value]) => assumedIn(value, [...path, key]))
  if (spec.from !== 'assumed') return []
  const { dimension, si } = spec
  const tolerance = toleranceText(dimension, si, spec.tolerance ?? 0)
  return [{ path: path.join('.'), ...readable(dimension, si), from: 'assumed', tolerance }]
}

export class Figures {
  readonly assumptions: Assumption[] = []
  readonly #draw: Draw | null

  constructor(draw: Draw | null) {
    this.#draw = draw
  }

  #take(path: string, dimension: Dimension, si: number, tolerance: number): number {
    if (this.#draw === null || tolerance === 0) return si
    return held(dimension, this.#draw(path, si, tolerance))
  }

  #note(path: string, dimension: Dimension, si: number, tolerance: number, from: Assumption['from']): void {
    if (this.#draw !== null) return
    this.assumptions.push({
      path,
      ...readable(dimension, si),
      from,
      tolerance: toleranceText(dimension, si, tolerance),
    })
  }

  /** A written figure. */
  written(path: string, quantity: Quantity, spread: Spread = null): number {
    const tolerance = quantity.tolerance ?? halfWidth(quantity.si, spread)
    if (quantity.from === 'assumed') this.#note(path, quantity.dimension, quantity.si, tolerance, 'assumed')
    return this.#take(path, quantity.dimension, quantity.si, tolerance)
  }

  /** A written figure, or null where it is not there. */
  maybe(path: string, quantity: Quantity | null | undefined, spread: Spread = null): number | null {
    return quantity === null || quantity === undefined ? null : this.written(path, quantity, spread)
  }

  /** A written figure, or the default. */
  or(
    path: string,
    quantity: Quantity | null | undefined,
    fallback: number,
    dimension: Dimension,
    spread: Spread = null,
  ): number {
    if (quantity !== null && quantity !== undefined) return this.written(path, quantity, spread)
    return this.default(path, fallback, dimension, spread)
  }

  /** A default, noted as one. */
  default(path: string, si: number, dimension: Dimension, spread: Spread = null): number {
    const tolerance = halfWidth(si, spread)
    this.#note(path, dimension, si, tolerance, 'default')
    return this.#take(path, dimension, si, tolerance)
  }

  /** A plain number or word that was filled in. */
  filled<T extends number | string>(path: string, value: T | null | undefined, fallback: T): T {
    if (value !== null && value !== undefined) return value
    if (this.#draw === null)
      this.assumptions.push({ path, value: fallback, unit: '', from: 'default', tolerance: null })
    return fallback
  }
}
