/** Sentences of what would make the answer firmer, and of what was promised against what was measured after the work. */

export const firmer = {
  heading: 'Measuring this would make the answer firmer',
  note: 'Each of these readings would replace an assumption. Beside it: how far the figures could still move, up or down.',
  effect: (parts: readonly string[]) => parts.join(', '),
  speed: (share: string) => `speed ± ${share}`,
  oil: (degrees: string) => `oil ± ${degrees}`,
} as const

export const acceptance = {
  heading: 'What was promised, what was measured',
  intro: (date: string, option: string) =>
    `Measured after the work${date === '' ? '' : `, on ${date}`}${option === '' ? '' : `: ${option}`}.`,
  restored: 'the machine put right',
  what: 'What',
  promised: 'Promised',
  measured: 'Measured',
  result: 'Result',
  rows: {
    speed: 'Speed on the level, mean of both ways',
    'engine-speed': 'Engine speed during the runs',
    'relief-pressure': 'Relief pressure',
    'inlet-pressure': 'Pressure at the pump inlet',
    'oil-temperature': 'Oil at work, at the air of the test',
  },
  ofCircuit: (what: string, circuit: string) => `${what}, ${circuit}`,
  atLeast: (low: string) => `${low} or more`,
  atMost: (high: string) => `${high} or less`,
  between: (low: string, high: string) => `${low} to ${high}`,
  nothing: 'nothing',
  kept: 'kept',
  notKept: 'not kept',
  open: 'open',
  all: 'Everything that was measured is as it was promised, within the limits we checked.',
  some: 'Not everything is as it was promised. The machine does not go out as finished: we find out why first.',
  none: 'Not everything could be held against what was promised; what is open is measured again.',
  runs: 'Timed runs',
  run: (direction: string, distance: string, time: string, speed: string) =>
    `${direction}: ${distance} in ${time}, ${speed}`,
  oil: (oil: string) => `Oil during the runs: ${oil}.`,
  forward: 'Forward',
  back: 'Back',
  source: (text: string) => `Held against: ${text}.`,
} as const
