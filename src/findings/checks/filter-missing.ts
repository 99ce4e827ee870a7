/** Whether the machine has a return filter at all. */
import type { Check } from '../check.ts'

export const check: Check = {
  id: 'filter-missing',
  wording: {
    /** Heading of the filter's row where there is one. */
    within: 'There is a return filter',
    /** Heading where there is none. */
    over: 'There is no return filter',
    /** Below the heading. */
    why: 'Without a filter all that wears off goes round again and wears the pump; a new pump dies the same way.',
  },
  judge: ({ machine }) => [
    {
      component: 'filter',
      value: machine.filter ? 'fitted' : 'none',
      limit: 'fitted',
      unit: '',
      severity: machine.filter ? 'ok' : 'watch',
      source: 'common practice, no source',
      worseWhenHigher: null,
    },
  ],
}
