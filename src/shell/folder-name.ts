/** Folder of a file's results: its name without the ending, never one that a disk takes for another folder. */
import { basename } from 'node:path'

/** @returns "far" of "my/far.yaml"; "scenario" where nothing but dots is left */
export const folderName = (path: string): string => {
  const name = basename(path).replace(/\.ya?ml$/iu, '')
  return /^\.*$/u.test(name) ? 'scenario' : name
}
