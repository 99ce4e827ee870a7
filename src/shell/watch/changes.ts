/** Tells when a file is saved. Folders are watched, not files: an editor may put a new file in the place of the old one. */
import { type FSWatcher, watch } from 'node:fs'

/** An editor writes in several steps; what follows within this time [ms] belongs to the same saving. */
const SETTLE_MS = 10

export interface Changes {
  /** Watches these folders and no others from now on. */
  readonly follow: (folders: readonly string[]) => void
  readonly close: () => void
}

/**
 * @param matters by folder and name of the file; the name is null where the system does not say it
 * @param onChange called once things have settled
 * @param onFault called where a folder cannot be watched
 */
export const watchFolders = (
  matters: (folder: string, name: string | null) => boolean,
  onChange: () => void,
  onFault: (error: Error) => void,
): Changes => {
  const watchers = new Map<string, FSWatcher>()
  let timer: NodeJS.Timeout | undefined
  const stop = (folder: string): void => {
    watchers.get(folder)?.close()
    watchers.delete(folder)
  }
  const heard = (folder: string, name: string | null): void => {
    if (!matters(folder, name)) return
    clearTimeout(timer)
    timer = setTimeout(onChange, SETTLE_MS)
  }
  const start = (folder: string): void => {
    try {
      const watcher = watch(folder, (_, name) => heard(folder, name))
      watcher.on('error', () => stop(folder)) // the folder is gone; the next look finds what took its place
      watchers.set(folder, watcher)
    } catch (error) {
      onFault(error as Error)
    }
  }
  return {
    follow: (folders) => {
      for (const folder of watchers.keys()) if (!folders.includes(folder)) stop(folder)
      for (const folder of folders) if (!watchers.has(folder)) start(folder)
    },
    close: () => {
      clearTimeout(timer)
      for (const folder of [...watchers.keys()]) stop(folder)
    },
  }
}
