/** The copies as the command writes them, from the demo scenarios and from folders made for a test. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { runCommand } from '../shell/world.ts'

export const SCENARIOS = fileURLToPath(new URL('../../scenarios/', import.meta.url))

export interface WrittenCopy {
  /** As "two-speed-travel/customer". */
  readonly name: string
  readonly html: string
}

const run = async (args: readonly string[], folder: string): Promise<{ copies: WrittenCopy[]; stderr: string }> => {
  const out = mkdtempSync(join(tmpdir(), 'feasibility-print-'))
  try {
    const { code, stderr } = await runCommand([...args, '--format', 'html', '--out', out], folder)
    if (code !== 0) throw new Error(`exit code ${code}: ${stderr}`)
    const copies = readdirSync(out, { recursive: true })
      .map(String)
      .filter((path) => path.endsWith('.html'))
      .sort()
      .map((path) => ({
        name: path.replaceAll('\\', '/').replace(/\.html$/u, ''),
        html: readFileSync(join(out, path), 'utf8'),
      }))
    return { copies, stderr }
  } finally {
    rmSync(out, { recursive: true, force: true })
  }
}

/** The three copies of a scenario; of a fleet three of each unit. */
export const copiesOf = async (
  scenario: string,
  { folder = SCENARIOS, args = [] }: { readonly folder?: string; readonly args?: readonly string[] } = {},
): Promise<{ copies: WrittenCopy[]; stderr: string }> =>
  run(['report', `${scenario}.yaml`, '--copy', 'all', '--quiet', ...args], folder)

/** The survey sheet of a machine, or a blank one. */
export const surveyOf = async (machine: string | null, args: readonly string[] = []): Promise<string> => {
  const { copies } = await run(
    ['survey', ...(machine === null ? [] : [`machines/${machine}.yaml`]), ...args],
    SCENARIOS,
  )
  return copies[0]?.html ?? ''
}
