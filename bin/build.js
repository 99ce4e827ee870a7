#!/usr/bin/env node
/**
 * Bundles src/ into dist/: one file to start with and one for each thing that is only sometimes needed. Node takes half a
 * millisecond and more for every file that it loads, and there are three hundred. Several runs may do this at once: each bundles into a folder of its own and moves its files
 * into dist/ one by one, each move a rename, so that nobody ever reads half a file. The stamp goes in last and carries
 * the time at which the build began: a source file that is saved during a build counts as newer than it.
 * Types are not checked here but by `npm run types`.
 */
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const source = join(root, 'src')
const target = join(root, 'dist')
const stamp = join(target, '.built')

/** Zero for a file that is gone between listing and looking: its folder then says that something changed. */
const changed = (path) => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0

/** Newest change below a folder, the folders themselves included: a file that was removed counts too. */
const newestBelow = (folder) =>
  readdirSync(folder, { withFileTypes: true }).reduce((newest, entry) => {
    const path = join(folder, entry.name)
    return Math.max(newest, entry.isDirectory() ? newestBelow(path) : changed(path))
  }, changed(folder))

/** True where dist/ holds what src/ says. An installed copy comes without src/ and is never built again. */
export const isFresh = () => {
  if (!existsSync(source)) return true
  if (!existsSync(stamp)) return false
  const built = statSync(stamp).mtimeMs
  const settings = ['package.json', 'tsconfig.json', 'bin/build.js'].map((name) => join(root, name))
  return built >= newestBelow(source) && settings.every((path) => built >= changed(path))
}

const filesBelow = (folder, prefix = '') =>
  readdirSync(join(folder, prefix), { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? filesBelow(folder, join(prefix, entry.name)) : [join(prefix, entry.name)],
  )

const publish = (fresh) => {
  const files = filesBelow(fresh)
  for (const file of files) {
    mkdirSync(dirname(join(target, file)), { recursive: true })
    renameSync(join(fresh, file), join(target, file))
  }
  const kept = new Set([...files, '.built'])
  for (const file of filesBelow(target)) {
    if (kept.has(file)) continue
    try {
      unlinkSync(join(target, file))
    } catch (error) {
      if (error.code !== 'ENOENT') throw error // another run has removed it already
    }
  }
}

/** Where the tool begins: the command, and the thread that makes reports beside it. */
const ENTRIES = { main: 'src/shell/main.ts', thread: 'src/shell/making/thread.ts' }

/** Left as packages: large, loaded late, and read from their own folders. */
const PACKAGES = [/^puppeteer/u, /^@sparticuz\//u, /^@fontsource\//u, 'handlebars']

/** The names stay the same from one build to the next: a run that began before the build may still load a file. */
const bundle = async (rolldown, folder) => {
  const input = Object.fromEntries(Object.entries(ENTRIES).filter(([, path]) => existsSync(join(root, path))))
  const made = await rolldown({ cwd: root, input, platform: 'node', external: PACKAGES, logLevel: 'silent' })
  await made.write({
    dir: folder,
    format: 'esm',
    entryFileNames: 'shell/[name].js',
    chunkFileNames: 'shell/[name].js',
  })
  await made.close()
}

/** Builds; resolves to null, or to the sentence that says why it could not. */
export const build = async () => {
  let rolldown
  try {
    ;({ rolldown } = await import('rolldown'))
  } catch {
    return 'what builds it is not installed here; run "npm ci" (with the development packages) once.'
  }
  const began = new Date()
  let fresh
  try {
    fresh = mkdtempSync(join(root, '.build-'))
    try {
      await bundle(rolldown, fresh)
    } catch (error) {
      return `src/ does not compile:\n${error.message}`
    }
    mkdirSync(target, { recursive: true })
    publish(fresh)
    writeFileSync(stamp, '')
    utimesSync(stamp, began, began)
    return null
  } catch (error) {
    return `dist/ could not be written: ${error.message}`
  } finally {
    if (fresh !== undefined) rmSync(fresh, { recursive: true, force: true })
  }
}

if (realpathSync(process.argv[1] ?? '.') === fileURLToPath(import.meta.url)) {
  const failure = await build()
  if (failure !== null) {
    process.stderr.write(`feasibility: ${failure}\n`)
    process.exitCode = 1
  }
}
