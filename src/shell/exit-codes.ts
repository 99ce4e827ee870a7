/** What the shell of the caller gets to see; spec of the command, also in the README. */
export const EXIT = {
  answered: 0,
  /** A fault nobody expected: a full disk, a mistake in the tool. */
  fault: 1,
  /** The command was used wrongly. */
  usage: 2,
  /** A scenario, machine, shop or parts file is wrong. */
  input: 3,
  /** No browser, or the PDF failed; the HTML is written. */
  browser: 4,
  interrupted: 130,
} as const

export type ExitCode = (typeof EXIT)[keyof typeof EXIT]

/** Of several scenarios the gravest outcome counts: interrupted, a fault, wrong use, wrong input, no PDF. */
export const gravest = (codes: readonly ExitCode[]): ExitCode => {
  const order: readonly ExitCode[] = [EXIT.interrupted, EXIT.fault, EXIT.usage, EXIT.input, EXIT.browser]
  return order.find((code) => codes.includes(code)) ?? EXIT.answered
}
