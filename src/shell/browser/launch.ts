/** Starts the first browser that will start, shut off from the network, with a profile of its own. */

import { accessSync, constants, existsSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { homedir, tmpdir, userInfo } from 'node:os'
import { basename, dirname, join } from 'node:path'
import type { Browser, LaunchOptions } from 'puppeteer'
import type { Tried } from './browser-missing.ts'
import { BrowserMissing } from './browser-missing.ts'
import { cacheFolder } from './cache-folder.ts'
import type { Place } from './find.ts'
import { findBrowsers } from './find.ts'
import { fontSettingsNeeded, librariesNeeded } from './system.ts'
import type { PackedBrowser } from './unpack.ts'
import { unpackBrowser } from './unpack.ts'

export interface Launched {
  readonly browser: Browser
  /** Where it was found. */
  readonly place: string
  /** Ends the browser, by force where it does not end by itself, and removes its profile. */
  readonly close: () => Promise<void>
}

type Environment = { readonly [name: string]: string | undefined }

/** Tries each place in turn; throws a BrowserMissing that names all of them where none starts. */
export const launchBrowser = async (env: Environment): Promise<Launched> => {
  const packed = packedBrowser()
  const { places, missing } = await findBrowsers({
    env,
    platform: process.platform,
    arch: process.arch,
    home: homeFolder(env),
    isExecutable,
    hasPackage: packed !== null,
    downloaded,
  })
  const tried: Tried[] = []
  for (const place of places) {
    try {
      return { ...(await start(await settingsFor(place, packed, env), env)), place: place.place }
    } catch (error) {
      tried.push({ place: place.place, outcome: firstLines(error) })
    }
  }
  throw new BrowserMissing([...tried, ...missing.map((place) => ({ place, outcome: 'not there' }))], process.platform)
}

/**
 * What tells the browsers of this system from others, without starting one: of the packed one its version, of an installed
 * one its path, size and date. Another browser may break lines elsewhere.
 */
export const browserMark = async (env: Environment): Promise<string> => {
  const packed = packedBrowser()
  const { places } = await findBrowsers({
    env,
    platform: process.platform,
    arch: process.arch,
    home: homeFolder(env),
    isExecutable,
    hasPackage: packed !== null,
    // Only a last resort, and it takes long to ask for.
    downloaded: async () => (packed === null ? downloaded() : null),
  })
  return places
    .map((place) => {
      if (place.kind === 'package') return `package ${packed?.version}`
      if (!isExecutable(place.executable)) return place.executable
      const path = realpathSync(place.executable)
      const { size, mtimeMs } = statSync(path)
      return `${path} ${size} ${mtimeMs}`
    })
    .join('\n')
}

interface Settings {
  readonly executable: string
  readonly extra: Environment
}

const settingsFor = async (place: Place, packed: PackedBrowser | null, env: Environment): Promise<Settings> => {
  if (place.kind !== 'package') {
    if (!isExecutable(place.executable)) throw new Error('is not a program that can be run')
    return { executable: place.executable, extra: {} }
  }
  if (packed === null) throw new Error('is not installed')
  const home = homeFolder(env)
  const uid = process.getuid?.() ?? null
  const cache = cacheFolder({ env, home, temporary: tmpdir(), uid })
  const unpacked = await unpackBrowser(packed, cache)
  const libraries = [unpacked.libraries, env.LD_LIBRARY_PATH]
    .filter((part) => part !== undefined && part !== '')
    .join(':')
  return {
    executable: unpacked.executable,
    extra: {
      ...(librariesNeeded(env) ? { LD_LIBRARY_PATH: libraries } : {}),
      ...(fontSettingsNeeded(env, home) ? { FONTCONFIG_FILE: unpacked.fontSettings } : {}),
    },
  }
}

const start = async ({ executable, extra }: Settings, env: Environment): Promise<Omit<Launched, 'place'>> => {
  const { default: puppeteer } = await import('puppeteer')
  const userDataDir = await mkdtemp(join(tmpdir(), 'feasibility-browser-'))
  const options: LaunchOptions = {
    executablePath: executable,
    headless: /headless[-_]shell/.test(basename(executable)) ? 'shell' : true,
    pipe: true,
    defaultViewport: null,
    userDataDir,
    args: ['--host-resolver-rules=MAP * ~NOTFOUND', ...(withoutSandbox(env) ? ['--no-sandbox'] : [])],
    env: { ...env, ...extra, ...ownTemporary(userDataDir) },
    handleSIGINT: false,
    handleSIGTERM: false,
    handleSIGHUP: false,
    timeout: 60_000,
  }
  const removeProfile = () => rm(userDataDir, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  try {
    const browser = await puppeteer.launch(options)
    return { browser, close: () => closeBrowser(browser).finally(removeProfile) }
  } catch (error) {
    await removeProfile()
    throw error
  }
}

/** Longest path that a socket may have on Linux, less what the browser puts behind the folder. */
const LONGEST_FOLDER = 108 - '/.org.chromium.Chromium.XXXXXX/SingletonSocket'.length

/** What a browser that is killed leaves behind lies in its profile, and goes with it. */
const ownTemporary = (folder: string): Environment => (folder.length < LONGEST_FOLDER ? { TMPDIR: folder } : {})

/** As root a browser refuses to start with its sandbox; anybody else has to say that it may go without. */
const withoutSandbox = (env: Environment): boolean =>
  process.getuid?.() === 0 || env.FEASIBILITY_BROWSER_SANDBOX === 'off'

const CLOSE_WITHIN_MS = 5_000

const closeBrowser = async (browser: Browser): Promise<void> => {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<'late'>((resolve) => {
    timer = setTimeout(() => resolve('late'), CLOSE_WITHIN_MS)
  })
  const outcome = await Promise.race([browser.close().catch(() => 'late' as const), late])
  clearTimeout(timer)
  if (outcome === 'late') browser.process()?.kill('SIGKILL')
}

const packedBrowser = (): PackedBrowser | null => {
  try {
    const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium')
    const root = dirname(dirname(dirname(entry)))
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }
    const folder = join(root, 'bin')
    return existsSync(join(folder, 'chromium.br')) ? { folder, version } : null
  } catch {
    return null
  }
}

const downloaded = async (): Promise<string | null> => {
  try {
    const { default: puppeteer } = await import('puppeteer')
    return await puppeteer.executablePath()
  } catch {
    return null
  }
}

const homeFolder = (env: Environment): string => {
  if (env.HOME !== undefined && env.HOME !== '') return env.HOME
  try {
    return userInfo().homedir
  } catch {
    return homedir()
  }
}

const isExecutable = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK)
    return true
  } catch {
    return false
  }
}

const firstLines = (error: unknown): string => {
  const text = error instanceof Error ? error.message : String(error)
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('TROUBLESHOOTING'))
  const telling = lines.find((line) => /sandbox|cannot open shared object|ENOENT|EACCES/i.test(line))
  return (telling ?? lines[0] ?? 'did not start').trim().slice(0, 300)
}
