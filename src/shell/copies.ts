/** The copies of one result as HTML: which were asked for, each from its view and its templates. */
import type { ResultDocument } from '../evaluation.ts'
import type { Loaded } from '../loaded.ts'
import { customerView } from '../report/customer-view.ts'
import { shopView } from '../report/shop-view.ts'
import { technicianView } from '../report/technician-view.ts'
import { type CopyOptions, wantedCopies } from './copy-options.ts'
import { shopFolderOf } from './load.ts'
import { readLogo } from './logo.ts'
import { plain } from './plain-text.ts'
import { type Copy, htmlRenderer, lettersWithoutFont } from './render-html.ts'

export interface Written {
  readonly copy: Copy
  readonly html: string
}

export interface Rendered {
  readonly copies: readonly Written[]
  /** What the copies had to go without, a sentence each. */
  readonly warnings: readonly string[]
}

const lettersMissing = (letters: readonly string[]): string => {
  const few = letters.slice(0, 12).join(' ')
  const more = letters.length > 12 ? ` and ${letters.length - 12} more` : ''
  return `The report's fonts have no sign for ${plain(few)}${more}; such letters print in a font of this machine, or as empty boxes.`
}

type ViewOptions = Parameters<typeof customerView>[1]

const makerOf = (copy: Copy, everyOption: boolean): ((result: ResultDocument, view: ViewOptions) => string) => {
  switch (copy) {
    case 'customer': {
      const render = htmlRenderer('customer')
      return (result, view) => render(customerView(result, view))
    }
    case 'shop': {
      const render = htmlRenderer('shop')
      return (result, view) => render(shopView(result, view))
    }
    case 'technician': {
      const render = htmlRenderer('technician')
      return (result, view) => render(technicianView(result, { ...view, everyOption }))
    }
  }
}

/**
 * Makes what renders the wanted copies, with the templates as they stand now; a batch keeps it.
 * @returns from a result to its copies; the scenario's path says where the shop's mark is
 */
export const openCopies = (
  options: CopyOptions,
): ((loaded: Loaded, result: ResultDocument, scenario: string, cwd: string) => Rendered) => {
  const made = wantedCopies(options).map((copy) => ({ copy, make: makerOf(copy, options.everyOption) }))
  return ({ shop }, result, scenario, cwd) => {
    const folder = shopFolderOf(scenario, cwd)
    const logo = shop.mark === null || folder === null ? null : readLogo(folder, shop.mark)
    const view = {
      units: options.units ?? shop.units,
      paper: options.paper,
      mark: logo !== null && 'mark' in logo ? logo.mark : null,
    }
    const copies = made.map(({ copy, make }) => ({ copy, html: make(result, view) }))
    const strange = lettersWithoutFont(copies.map(({ html }) => html).join(''))
    return {
      copies,
      warnings: [
        ...(logo !== null && 'refused' in logo ? [`${logo.refused}; the report goes without it.`] : []),
        ...(strange.length > 0 ? [lettersMissing(strange)] : []),
      ],
    }
  }
}
