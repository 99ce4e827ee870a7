/** Words of the circuit drawing, part of the catalogue in wording.ts: short, because they stand beside symbols. */

const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`

export const drawing = {
  circuitDrawing: {
    title: (machine: string) => `Oil circuit of the ${machine}, with what has to change`,
    caption:
      'The oil circuit of your machine in the signs of the trade (in the manner of ISO 1219-1). Drawn thick and numbered is what changes; the numbers are those of the table below. Drawn thin is what stays. A dot joins two lines; lines that cross without a dot do not meet.',
    beside: 'Also changed, though not in the drawing:',
    /** For a screen reader. */
    describe: (circuits: readonly string[], shared: readonly string[], changes: readonly string[]) =>
      [
        ...circuits,
        shared.length === 0
          ? 'The oil goes straight back to the tank.'
          : `The oil goes back to the tank through ${list(shared)}.`,
        changes.length === 0 ? '' : `Numbered, because it changes: ${changes.join('; ')}.`,
      ]
        .filter((part) => part !== '')
        .join(' '),
    circuit: (pump: string, drives: readonly string[]) =>
      drives.length === 0 ? `The ${pump} feeds one circuit.` : `The ${pump} feeds ${list(drives)}.`,
    change: (number: string, name: string) => `${number} ${name}`,
    drives: {
      'both tracks': ['the left and the right travel motors'],
      'left track': ['the left travel motors'],
      'right track': ['the right travel motors'],
      'no track': [],
    } as { readonly [drives: string]: readonly string[] },
    works: { implements: 'the cylinders', attachment: 'the attachment' } as { readonly [works: string]: string },
    pump: (circuit: string, isOnly: boolean) => (isOnly ? 'pump' : `${circuit} pump`),
    hose: (dash: string) => `-${dash}`,
    twoSpeeds: (large: string, small: string) => `${large}/${small}`,
    added: (name: string) => `new ${name}`,
    labels: {
      engine: 'engine',
      reservoir: 'tank',
      relief: 'relief',
      valve: 'valve',
      swivel: 'swivel',
      block: 'block',
      filter: 'filter',
      cooler: 'cooler',
      strainer: 'strainer',
      breather: 'breather',
      coupler: 'couplers',
    },
    cylinders: 'cylinders',
    attachment: 'attachment',
    motors: {
      one: { left: 'left motor', right: 'right motor' },
      several: { left: 'left motors', right: 'right motors' },
    },
    valveUnread: ['valve', 'not described'],
  },
} as const
