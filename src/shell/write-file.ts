/** Writes a file whole or not at all: into a temporary file beside it, then renamed over the old one. */
import { existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

let written = 0

/** Not the `recursive` of mkdir, which never returns where the system says of every new folder that it is not there. */
const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return
  if (dirname(folder) !== folder) makeFolder(dirname(folder))
  try {
    mkdirSync(folder)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error // another run was first
  }
}

/**
 * @param path of the file; its folder is made where it is missing
 * @throws where the disk refuses; what was there before is then still whole
 */
export const writeWhole = (path: string, content: string | Uint8Array): void => {
  makeFolder(dirname(path))
  const temporary = `${path}.${process.pid}-${++written}.part`
  try {
    writeFileSync(temporary, content)
    renameSync(temporary, path)
  } catch (error) {
    rmSync(temporary, { force: true })
    throw error
  }
}
