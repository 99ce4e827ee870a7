/** What a run of the command touches of the outside; handed in, so that a test can run the whole command in process. */
import type { Printer } from './browser/printer.ts'
import type { OpenMaker } from './making/maker.ts'

export interface World {
  /** Arguments without node and script. */
  readonly args: readonly string[]
  readonly cwd: string
  readonly env: { readonly [name: string]: string | undefined }
  /** Results and nothing else. */
  readonly stdout: NodeJS.WritableStream & { readonly isTTY?: boolean; readonly columns?: number }
  /** Everything else. */
  readonly stderr: NodeJS.WritableStream & { readonly isTTY?: boolean; readonly columns?: number }
  /** Milliseconds of some clock; for the progress only, never for what is printed on paper. */
  readonly now: () => number
  /** Fires on Ctrl-C. */
  readonly interrupt: AbortSignal
  /** Who evaluates and renders: threads beside this one, or this one. */
  readonly openMaker: OpenMaker
  /** Finds and starts a browser; rejects with a BrowserMissing where there is none. */
  readonly openPrinter: (env: World['env']) => Promise<Printer>
}
