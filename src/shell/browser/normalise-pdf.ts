/** Takes out of a PDF what differs from one print of the same page to the next. Every change keeps the length. */

/** Printed where the scenario carries no quote date. */
export const DATE_WITHOUT_QUOTE = '2000-01-01'

/**
 * Sets both dates of the document to `date` (ISO, midnight UTC) and numbers the ids of the structure elements from 1 in
 * the order in which they stand, so that the same page gives the same bytes. Streams are left alone.
 */
export const normalisePdf = (pdf: Uint8Array, date: string): Uint8Array => {
  const stamp = `${date.replaceAll('-', '')}000000+00'00'`
  if (!/^\d{14}\+00'00'$/.test(stamp)) throw new Error(`not a date: ${date}`)
  const text = Buffer.from(pdf).toString('latin1')
  const numbers = new Map<string, string>()
  const renumbered = (id: string): string => {
    const known = numbers.get(id)
    if (known !== undefined) return known
    const fresh = `node${String(numbers.size + 1).padStart(8, '0')}`
    numbers.set(id, fresh)
    return fresh
  }
  const normal = outsideStreams(text, (part) =>
    part
      .replace(/(\/(?:CreationDate|ModDate) \(D:)\d{14}[+-]\d{2}'\d{2}'/g, `$1${stamp}`)
      .replace(/node\d{8}/g, renumbered),
  )
  if (normal.length !== text.length) throw new Error('a date in the PDF has a form that is not expected')
  return Buffer.from(normal, 'latin1')
}

const outsideStreams = (text: string, change: (part: string) => string): string => {
  const parts: string[] = []
  let at = 0
  while (at < text.length) {
    const start = text.indexOf('stream\n', at)
    if (start === -1) break
    const end = text.indexOf('endstream', start)
    if (end === -1) break
    parts.push(change(text.slice(at, start)), text.slice(start, end + 'endstream'.length))
    at = end + 'endstream'.length
  }
  return parts.join('') + change(text.slice(at))
}
