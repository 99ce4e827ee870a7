/** Writes a file whole or not at all: into a temporary file beside it, then renamed over the old one. */
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

let written = 0

/**
 * @param path of the file; its folder is made where it is missing
 * @throws where the disk refuses; what was there before is then still whole
 */
export const writeWhole = (path: string, content: string | Uint8Array): void => {
  mkdirSync(dirname(path), { recursive: true })
  const temporary = `${path}.${process.pid}-${++written}.part`
  try {
    writeFileSync(temporary, content)
    renameSync(temporary, path)
  } catch (error) {
    rmSync(temporary, { force: true })
    throw error
  }
}
