/**
 * The shop's copy as strings and flags: everything of the customer's, and what only the shop sees: cost and margin by line,
 * hours, stock, chains, every finding, calibration and ranges, what the answer rests on.
 */
import type { ResultDocument } from '../evaluation.ts'
import { type CustomerOptions, type CustomerView, customerView } from './customer-view.ts'
import { pageStyle } from './page-style.ts'
import { retoldResult } from './view-model/retold.ts'
import { type ChainsView, chainsView } from './view-model-shop/chains.ts'
import { type ChartsView, chartsView } from './view-model-shop/charts.ts'
import { type FiguresView, figuresView } from './view-model-shop/figures.ts'
import { type FindingsView, findingsView } from './view-model-shop/findings.ts'
import { type MoneyView, moneyView } from './view-model-shop/money.ts'
import { type SearchView, searchView } from './view-model-shop/search.ts'
import { type WarningsView, warningsView } from './view-model-shop/warnings.ts'
import { en } from './wording.ts'
import { shop } from './wording-shop.ts'

export interface ShopView extends CustomerView {
  readonly banner: string
  readonly warnings: WarningsView
  readonly money: MoneyView
  readonly chains: ChainsView
  readonly figures: FiguresView
  readonly charts: ChartsView
  readonly findings: FindingsView
  readonly search: SearchView
}

/**
 * The shop's copy of one result.
 * @param document the result document
 * @param options as for the customer's copy
 */
export const shopView = (document: ResultDocument, options: CustomerOptions): ShopView => {
  const customer = customerView(document, options)
  const result = retoldResult(document, options.units)
  const { sheet } = result
  const number = sheet.quote.number === null ? '' : en.letterhead.footerQuote(sheet.quote.number)
  const footer = en.letterhead.footer(
    shop.footer,
    number,
    en.letterhead.footerMachine(result.scenario.title, sheet.machine.name),
  )
  return {
    ...customer,
    title: shop.title(customer.title),
    style: pageStyle({ paper: options.paper, footer, accent: sheet.shop.accent }),
    banner: shop.banner,
    warnings: warningsView(result, options.units),
    money: moneyView(result),
    chains: chainsView(result),
    figures: figuresView(result, options.units),
    charts: chartsView(result, options.units),
    findings: findingsView(result, options.units),
    search: searchView(result, options.units),
  }
}
