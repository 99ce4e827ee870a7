/** How long the longest part takes, as text. */
import type { Cost, CostLine } from '../../evaluation.ts'
import { count } from '../format.ts'
import { en } from '../wording.ts'

const onShelf = (line: CostLine) => line.stock !== null && line.stock >= line.quantity

/** When one line is there: "on the shelf", "6 days", "to be asked". */
export const lineReady = (line: CostLine): string => {
  if (line.part === null && line.leadDays === null) return en.dash
  if (onShelf(line)) return en.cost.shelf
  return line.leadDays === null ? en.cost.leadUnknown : en.days(count(line.leadDays))
}

/** The longest wait of the whole cost; '' where it has no parts. */
export const leadTime = (cost: Cost): string => {
  // What is not on the list and has no price has no date either; disposal has a price.
  const parts = cost.lines.filter((line) => line.part !== null || line.leadDays !== null || line.unitPrice === null)
  if (parts.length === 0) return ''
  if (parts.every(onShelf)) return en.cost.shelf
  const waits = parts.filter((line) => !onShelf(line)).map((line) => line.leadDays)
  const known = waits.filter((days) => days !== null)
  if (known.length === 0) return waits.length < parts.length ? en.cost.shelfSome : en.cost.leadUnknown
  const longest = en.days(count(Math.max(...known)))
  return known.length < waits.length ? en.cost.leadSome(longest) : longest
}
