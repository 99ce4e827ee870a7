/** Paths as they are shown. */
import { relative, sep } from 'node:path'

/** From the folder where the command was given, where it lies below it. */
export const shownPath = (path: string, cwd: string): string => {
  const near = relative(cwd, path)
  return (near === '' || near.startsWith('..') ? path : near).split(sep).join('/')
}
