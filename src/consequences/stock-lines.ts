/** Hoses, hose ends and adapters of the parts list, with their figures in SI. */
import type { Connection } from '../machine.ts'
import type { Shop } from '../shop.ts'
import { hoseRating } from '../tables/hose-ratings.ts'
import { boreOfDash } from '../tables/line-sizes.ts'
import type { Metres, Pascals } from '../units/si.ts'
import { connectionOf, dashOf, list, perShop, quantity, words } from './read-figures.ts'

export interface HoseFigures {
  readonly dash: number | null
  readonly kind: string | null
  readonly bore: Metres | null
  readonly maxPressure: Pascals | null
}

export const hoses = perShop((shop: Shop) =>
  list(shop, 'hose', (written): HoseFigures => {
    const dash = dashOf(written)
    const kind = words(written, 'kind')
    return {
      dash,
      kind,
      bore: quantity(written, 'bore', 'length') ?? (dash === null ? null : boreOfDash(dash)),
      maxPressure: quantity(written, 'max-pressure', 'pressure') ?? hoseRating(kind, dash),
    }
  }),
)

export interface EndFigures {
  readonly dash: number | null
  readonly end: Connection | null
  readonly maxPressure: Pascals | null
}

export const hoseEnds = perShop((shop: Shop) =>
  list(
    shop,
    'fitting',
    (written): EndFigures => ({
      dash: dashOf(written),
      end: connectionOf(written.end),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
    }),
  ),
)

export interface AdapterFigures {
  /** As written; a plate or a hub names a flange or a shaft. */
  readonly sides: readonly [string, string]
  readonly connections: readonly [Connection | null, Connection | null]
  readonly bore: Metres | null
  readonly maxPressure: Pascals | null
}

export const adapters = perShop((shop: Shop) =>
  list(
    shop,
    'adapter',
    (written): AdapterFigures => ({
      sides: [String(written.from ?? ''), String(written.to ?? '')],
      connections: [connectionOf(written.from), connectionOf(written.to)],
      bore: quantity(written, 'bore', 'length'),
      maxPressure: quantity(written, 'max-pressure', 'pressure'),
    }),
  ),
)
