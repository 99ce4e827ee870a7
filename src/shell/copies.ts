/** The copies of one result as HTML: which were asked for, each from its view and its templates. */
import type { ResultDocument } from '../evaluation.ts'
import type { Loaded } from '../loaded.ts'
import { shopFolderOf } from './load.ts'
import { readLogo } from './logo.ts'
import { plain } from './plain-text.ts'
import type { Copy } from './render-html.ts'
import type { World } from './world.ts'

export interface CopyOptions {
  readonly copy: Copy | 'all'
  readonly units: 'metric' | 'us' | 'both' | null
  readonly paper: 'a4' | 'letter'
  /** A work order for each option on the technician's copy. */
  readonly everyOption: boolean
}

export interface Written {
  readonly copy: Copy
  readonly html: string
}

export interface Copies {
  readonly evaluate: (loaded: Loaded) => ResultDocument
  readonly html: (loaded: Loaded, result: ResultDocument, scenario: string) => readonly Written[]
}

const lettersMissing = (letters: readonly string[]): string => {
  const few = letters.slice(0, 12).join(' ')
  const more = letters.length > 12 ? ` and ${letters.length - 12} more` : ''
  return `The report's fonts have no sign for ${plain(few)}${more}; such letters print in a font of this machine, or as empty boxes.\n`
}

const ALL: readonly Copy[] = ['customer', 'shop', 'technician']

/** Loaded late: the command's help and its mistakes need none of this. */
export const openCopies = async (world: World, options: CopyOptions): Promise<Copies> => {
  const [{ evaluate }, { customerView }, { shopView }, { technicianView }, { htmlRenderer, lettersWithoutFont }] =
    await Promise.all([
      import('../evaluate.ts'),
      import('../report/customer-view.ts'),
      import('../report/shop-view.ts'),
      import('../report/technician-view.ts'),
      import('./render-html.ts'),
    ])
  const { everyOption, paper } = options
  const wanted = options.copy === 'all' ? ALL : [options.copy]
  type ViewOptions = Parameters<typeof customerView>[1]
  const makers: { readonly [copy in Copy]: () => (result: ResultDocument, options: ViewOptions) => string } = {
    customer: () => {
      const render = htmlRenderer('customer')
      return (result, view) => render(customerView(result, view))
    },
    shop: () => {
      const render = htmlRenderer('shop')
      return (result, view) => render(shopView(result, view))
    },
    technician: () => {
      const render = htmlRenderer('technician')
      return (result, view) => render(technicianView(result, { ...view, everyOption }))
    },
  }
  const made = wanted.map((copy) => ({ copy, make: makers[copy]() }))
  return {
    evaluate: (loaded) => evaluate(loaded),
    html: (loaded, result, scenario) => {
      const { mark } = loaded.shop
      const folder = shopFolderOf(scenario, world.cwd)
      const logo = mark === null || folder === null ? null : readLogo(folder, mark)
      if (logo !== null && 'refused' in logo) world.stderr.write(`${logo.refused}; the report goes without it.\n`)
      const units = options.units ?? loaded.shop.units
      const view = { units, paper, mark: logo !== null && 'mark' in logo ? logo.mark : null }
      const written = made.map(({ copy, make }) => ({ copy, html: make(result, view) }))
      const strange = lettersWithoutFont(written.map(({ html }) => html).join(''))
      if (strange.length > 0) world.stderr.write(lettersMissing(strange))
      return written
    },
  }
}
