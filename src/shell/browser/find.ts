/** Where a browser may be, best first. Looks only; nothing is started or unpacked here. */
import { join } from 'node:path'

export interface FindWorld {
  readonly env: { readonly [name: string]: string | undefined }
  readonly platform: NodeJS.Platform
  readonly arch: string
  readonly home: string
  /** True for a file that may be run. */
  readonly isExecutable: (path: string) => boolean
  /** True where the npm package with the browser is installed. */
  readonly hasPackage: boolean
  /** Where puppeteer's own download would be; null where it does not know. */
  readonly downloaded: () => Promise<string | null>
}

export type Place =
  | { readonly kind: 'named' | 'installed' | 'downloaded'; readonly place: string; readonly executable: string }
  | { readonly kind: 'package'; readonly place: string }

const ON_PATH = ['google-chrome-stable', 'google-chrome', 'chromium', 'chromium-browser', 'microsoft-edge']

/** From memory; not tried on these systems. */
const FIXED: { readonly [platform: string]: (world: FindWorld) => string[] } = {
  darwin: ({ home }) =>
    ['Google Chrome', 'Chromium', 'Microsoft Edge'].flatMap((name) =>
      ['/Applications', `${home}/Applications`].map((folder) => `${folder}/${name}.app/Contents/MacOS/${name}`),
    ),
  win32: ({ env }) =>
    ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((name) => {
      const folder = env[name]
      if (folder === undefined) return []
      return [
        `${folder}\\Google\\Chrome\\Application\\chrome.exe`,
        `${folder}\\Microsoft\\Edge\\Application\\msedge.exe`,
      ]
    }),
}

/**
 * The places to try, in order: PUPPETEER_EXECUTABLE_PATH, and where that is set nothing else; on Linux x64 the Chromium
 * of the npm package, which starts twice as fast as an installed one and prints the same everywhere; an installed
 * Chrome, Chromium or Edge; what puppeteer has downloaded. `missing` names those that are not there.
 */
export const findBrowsers = async (
  world: FindWorld,
): Promise<{ readonly places: readonly Place[]; readonly missing: readonly string[] }> => {
  const named = world.env.PUPPETEER_EXECUTABLE_PATH
  if (named !== undefined && named !== '') {
    return {
      places: [{ kind: 'named', place: `PUPPETEER_EXECUTABLE_PATH (${named})`, executable: named }],
      missing: [],
    }
  }
  const places: Place[] = []
  const missing: string[] = []
  if (world.platform === 'linux' && world.arch === 'x64') {
    const place = 'npm package @sparticuz/chromium'
    if (world.hasPackage) places.push({ kind: 'package', place })
    else missing.push(place)
  }
  for (const candidate of installedCandidates(world)) {
    const executable = candidate.paths.find(world.isExecutable)
    if (executable === undefined) missing.push(candidate.place)
    else places.push({ kind: 'installed', place: executable, executable })
  }
  const downloaded = await world.downloaded()
  if (downloaded !== null && world.isExecutable(downloaded)) {
    places.push({ kind: 'downloaded', place: downloaded, executable: downloaded })
  } else {
    missing.push(downloaded ?? "puppeteer's own download")
  }
  return { places, missing }
}

const installedCandidates = (world: FindWorld): { readonly place: string; readonly paths: readonly string[] }[] => {
  const separator = world.platform === 'win32' ? ';' : ':'
  const folders = (world.env.PATH ?? '').split(separator).filter((folder) => folder.startsWith('/'))
  const onPath = ON_PATH.map((name) => ({
    place: `${name} on PATH`,
    paths: folders.map((folder) => join(folder, name)),
  }))
  const fixed = (FIXED[world.platform]?.(world) ?? []).map((path) => ({ place: path, paths: [path] }))
  return world.platform === 'win32' ? fixed : [...onPath, ...fixed]
}
