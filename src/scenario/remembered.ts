/**
 * What was read of a file stays known as long as its text is the same: the shop's files are the same for every scenario of
 * a batch and for every unit of a fleet. What is kept is frozen, since many share it.
 */

/** Files that stay known; those of a shop and the machines of a yard are fewer. */
const MOST_FILES = 64

const frozen = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const inner of Object.values(value)) frozen(inner)
  }
  return value
}

/** @returns the same reading, which reads a file again only where its text is another */
export const rememberedByText = <T extends object>(
  read: (file: string, text: string) => T,
  shared: (result: T) => unknown,
): ((file: string, text: string) => T) => {
  const known = new Map<string, { readonly text: string; readonly result: T }>()
  return (file, text) => {
    const before = known.get(file)
    if (before?.text === text) return before.result
    const result = read(file, text)
    frozen(shared(result))
    known.delete(file)
    known.set(file, { text, result })
    for (const oldest of known.keys()) {
      if (known.size <= MOST_FILES) break
      known.delete(oldest)
    }
    return result
  }
}

/** @returns the same reading of a list, which is done again only where one of its items is another object */
export const rememberedByItems = <I extends object, A extends readonly unknown[], T>(
  read: (items: readonly I[], ...others: A) => T,
): ((items: readonly I[], ...others: A) => T) => {
  let known: { readonly of: readonly unknown[]; readonly result: T } | null = null
  return (items, ...others) => {
    const of = [...items, ...others]
    if (known?.of.length === of.length && known.of.every((one, i) => one === of[i])) return known.result
    const result = read(items, ...others)
    known = { of, result }
    return result
  }
}
