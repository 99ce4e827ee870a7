/** The folder in which the unpacked browser is kept between runs. */
import { accessSync, constants, lstatSync, mkdirSync } from 'node:fs'
import { dirname, join } from 'node:path'

export interface FolderWorld {
  readonly env: { readonly [name: string]: string | undefined }
  readonly home: string
  readonly temporary: string
  /** null where the system has no user ids. */
  readonly uid: number | null
}

/**
 * A folder that only this user can read and write: below XDG_CACHE_HOME or ~/.cache, or, where that cannot be written,
 * below the folder for temporary files, with the user's id in its name.
 *
 * Below a shared folder somebody else may have put something there first. A folder that is a link, belongs to another
 * user or can be written by others is refused: what lies in it would be run as a program.
 */
export const cacheFolder = (world: FolderWorld): string => {
  const xdg = world.env.XDG_CACHE_HOME
  const caches = xdg?.startsWith('/') ? xdg : join(world.home, '.cache')
  if (world.home !== '' && canCreate(caches)) return ownFolder(join(caches, 'feasibility'), world)
  return ownFolder(join(world.temporary, `feasibility-${world.uid ?? 'user'}`), world)
}

const canCreate = (folder: string): boolean => {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    accessSync(folder, constants.W_OK | constants.X_OK)
    return true
  } catch {
    return false
  }
}

const ownFolder = (folder: string, world: FolderWorld): string => {
  mkdirSync(dirname(folder), { recursive: true, mode: 0o700 })
  try {
    mkdirSync(folder, { mode: 0o700 })
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  }
  const found = lstatSync(folder)
  const others = world.uid !== null && (found.uid !== world.uid || (found.mode & 0o022) !== 0)
  if (!found.isDirectory() || others) throw new Error(`${folder} is not a folder of this user alone; it is not used`)
  return folder
}
