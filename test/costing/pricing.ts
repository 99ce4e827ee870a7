/** Uses, jobs and quotes for tests of the costing, over the invented shop. */
import type { JobUse, PartUse } from '../../src/consequences/uses.ts'
import { quote } from '../../src/costing/quote.ts'
import type { Part, Shop } from '../../src/shop.ts'
import { part, shopWith } from '../consequences/list.ts'
import { wren } from '../fixtures/wren.ts'

export const use = (
  id: string | null,
  quantity = 1,
  kind: PartUse['kind'] = 'pump',
  what = id ?? 'Something',
): PartUse => ({ component: 'x', kind, part: id, what, quantity })

export const job = (name: JobUse['job'], quantity = 1): JobUse => ({ component: 'x', job: name, quantity })

export const oil46 = part('oil-46', 'oil', { grade: 'ISO VG 46' }, 4.8)

/** A quote of the shop with these parts beside its oil; the machine holds 13 L. */
export const priced = (
  parts: readonly Part[],
  uses: readonly PartUse[],
  jobs: readonly JobUse[] = [],
  over: Partial<Shop> = {},
) => quote({ uses, jobs, shop: shopWith([oil46, ...parts], over), reservoirLitres: 13, oil: wren().oil })
