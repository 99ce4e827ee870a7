/** Unpacks the Chromium that comes as an npm package, once per user. */
import { createReadStream, createWriteStream } from 'node:fs'
import { access, chmod, mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { brotliDecompressSync, createBrotliDecompress } from 'node:zlib'
import { readTar } from './tar.ts'

/** Packed files as the package holds them. */
export interface PackedBrowser {
  readonly folder: string
  readonly version: string
}

export interface UnpackedBrowser {
  readonly executable: string
  /** Libraries that the executable needs and a bare system lacks. */
  readonly libraries: string
  /** Settings of fontconfig that add the package's font to those of the system. */
  readonly fontSettings: string
}

/**
 * Takes the browser out of its package into `cache`/chromium-VERSION and returns what is where; does nothing where that
 * was done before. About 3 s and 200 MB the first time.
 *
 * Any number of processes may do this at once: each unpacks into a folder of its own, and the whole folder is renamed
 * when its mark `.ok` is in it. Unpacking in place fails: a second process would start a file still being written.
 */
export const unpackBrowser = async (packed: PackedBrowser, cache: string): Promise<UnpackedBrowser> => {
  const target = join(cache, `chromium-${packed.version}`)
  if (await isComplete(target)) return contents(target)
  const own = await mkdtemp(`${target}.`)
  try {
    await fill(own, target, packed.folder)
    await putInPlace(own, target)
  } finally {
    await rm(own, { recursive: true, force: true })
  }
  return contents(target)
}

const contents = (folder: string): UnpackedBrowser => ({
  executable: join(folder, 'headless-shell'),
  libraries: join(folder, 'lib'),
  fontSettings: join(folder, 'fonts.conf'),
})

const isComplete = (folder: string): Promise<boolean> =>
  access(join(folder, '.ok')).then(
    () => true,
    () => false,
  )

const fill = async (own: string, target: string, packed: string): Promise<void> => {
  const { executable } = contents(own)
  await pipeline(createReadStream(join(packed, 'chromium.br')), createBrotliDecompress(), createWriteStream(executable))
  await chmod(executable, 0o700)
  for (const archive of ['al2023.tar.br', 'fonts.tar.br']) {
    for (const entry of readTar(brotliDecompressSync(await readFile(join(packed, archive))))) {
      const path = join(own, entry.name)
      await mkdir(dirname(path), { recursive: true })
      await writeFile(path, entry.content, { mode: entry.executable ? 0o700 : 0o600 })
    }
  }
  await writeFile(contents(own).fontSettings, fontSettings(target))
  await writeFile(join(own, '.ok'), '')
}

/** A folder that is there without its mark was damaged by hand: it gives way. */
const putInPlace = async (own: string, target: string): Promise<void> => {
  try {
    await rename(own, target)
  } catch (error) {
    if (await isComplete(target)) return
    const code = (error as NodeJS.ErrnoException).code
    if (code !== 'ENOTEMPTY' && code !== 'EEXIST') throw error
    await rename(target, `${own}.damaged`)
    await rm(`${own}.damaged`, { recursive: true, force: true })
    await rename(own, target)
  }
}

const fontSettings = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${xml(join(folder, 'fonts'))}</dir>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <cachedir>${xml(join(folder, 'font-cache'))}</cachedir>
</fontconfig>
`

const xml = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
