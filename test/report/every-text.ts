/** All strings of a view, to be looked at together. */
export const everyText = (value: unknown): readonly string[] => {
  if (typeof value === 'string') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(everyText)
}

/** Values of every flag of a view, by its path; members of a list share one. */
export const everyFlag = (value: unknown, path = ''): readonly (readonly [string, boolean])[] => {
  if (typeof value === 'boolean') return [[path, value]]
  if (Array.isArray(value)) return value.flatMap((member) => everyFlag(member, `${path}[]`))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, member]) => everyFlag(member, `${path}.${key}`))
}
