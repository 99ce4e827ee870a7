/** No browser could be started. Says each place that was tried, what came of it, and what helps. */

export interface Tried {
  /** Where: a path, or the name of a way. */
  readonly place: string
  readonly outcome: string
}

export class BrowserMissing extends Error {
  readonly tried: readonly Tried[]
  override readonly name = 'BrowserMissing'

  constructor(tried: readonly Tried[], platform: NodeJS.Platform) {
    const lines = tried.map(({ place, outcome }) => `  ${place}: ${outcome}`)
    super(['No browser was found that can print the PDF. Tried:', ...lines, ...advice(tried, platform)].join('\n'))
    this.tried = tried
  }
}

const advice = (tried: readonly Tried[], platform: NodeJS.Platform): string[] => {
  const named = tried.length === 1 && tried[0]?.place.startsWith('PUPPETEER_EXECUTABLE_PATH')
  if (named) return ['Correct PUPPETEER_EXECUTABLE_PATH, or unset it to have a browser looked for.']
  const sandbox = tried.some(({ outcome }) => outcome.includes('sandbox'))
  const help = [
    platform === 'linux'
      ? 'Install one: "npm ci" without --omit=optional brings one for Linux on x64; "apt-get install chromium" or your system\'s package elsewhere.'
      : 'Install Chrome, Chromium or Edge, or name one in PUPPETEER_EXECUTABLE_PATH.',
  ]
  if (sandbox) {
    help.push(
      'This system does not let the browser shut itself in (its sandbox). A browser installed from a system package may be allowed to;',
      'in a container that you trust, FEASIBILITY_BROWSER_SANDBOX=off goes without.',
    )
  }
  return help
}
