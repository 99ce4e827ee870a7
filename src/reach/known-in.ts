/**
 * What is worked out once a key and kept.
 * @param work is called where nothing is kept under the key yet
 */
export const knownIn = <K, T>(map: Map<K, T>, key: K, work: () => T): T => {
  const known = map.get(key)
  if (known !== undefined) return known
  const made = work()
  map.set(key, made)
  return made
}
