/** What a YAML file of a folder is for, as far as its keys tell. */
import { readDocument } from './document.ts'
import { isMapping } from './patch.ts'

const OF_A_SHOP = ['shop', 'parts', 'labour', 'labour-rate', 'special-order']

/**
 * False for a machine file and for a file of a shop. A file that cannot be read, or that is nothing of the three, may be
 * meant as a scenario: its mistakes are better told than passed over.
 */
export const mayBeScenario = (file: string, text: string): boolean => {
  const read = readDocument(file, text)
  if (!('document' in read) || !isMapping(read.document.data)) return true
  const { data } = read.document
  if (isMapping(data.machine)) return false
  return data.machine !== undefined || !OF_A_SHOP.some((key) => key in data)
}
