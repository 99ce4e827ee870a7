/** What the system the browser runs on has by itself. Linux only; the npm package is for nothing else. */
import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'

type Environment = { readonly [name: string]: string | undefined }

const LIBRARY_FOLDERS = [
  '/lib/x86_64-linux-gnu',
  '/usr/lib/x86_64-linux-gnu',
  '/lib64',
  '/usr/lib64',
  '/usr/lib',
  '/lib',
]

/** True where one of the libraries is not there that the packed browser is linked against and a bare system lacks. */
export const librariesNeeded = (env: Environment, folders: readonly string[] = LIBRARY_FOLDERS): boolean => {
  const all = [...(env.LD_LIBRARY_PATH ?? '').split(':').filter((folder) => folder !== ''), ...folders]
  return ['libnspr4.so', 'libnss3.so', 'libnssutil3.so', 'libexpat.so.1'].some(
    (library) => !all.some((folder) => existsSync(join(folder, library))),
  )
}

/**
 * True where the browser would not see a single font. It then prints no text at all, not even in the fonts embedded in
 * the page, and reports no error.
 */
export const fontSettingsNeeded = (
  env: Environment,
  home: string,
  system: { readonly settings: string; readonly folders: readonly string[] } = {
    settings: '/etc/fonts/fonts.conf',
    folders: ['/usr/share/fonts', '/usr/local/share/fonts'],
  },
): boolean => {
  if (env.FONTCONFIG_FILE !== undefined || env.FONTCONFIG_PATH !== undefined) return false
  if (!existsSync(system.settings)) return true
  return ![...system.folders, join(home, '.fonts'), join(home, '.local/share/fonts')].some((folder) =>
    holdsFont(folder, 4),
  )
}

const holdsFont = (folder: string, depth: number): boolean => {
  try {
    const entries = readdirSync(folder, { withFileTypes: true })
    if (entries.some((entry) => /\.(ttf|otf|ttc|pfb|otb)$/i.test(entry.name))) return true
    return depth > 0 && entries.some((entry) => entry.isDirectory() && holdsFont(join(folder, entry.name), depth - 1))
  } catch {
    return false
  }
}
