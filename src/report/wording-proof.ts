/** Sentences of what would make the answer firmer, and of what was promised against what was measured after the work. */

export const firmer = {
  heading: 'Measuring this would make the answer firmer',
  note: 'What was assumed, under the reading that would replace it; how far the figures could still move, either way.',
  effect: (parts: readonly string[]) => parts.join(', '),
  speed: (share: string) => `speed ± ${share}`,
  oil: (degrees: string) => `oil ± ${degrees}`,
} as const
