/** A way that was searched for and changes nothing says so; any other keeps its own answer. */
import { expect, test } from 'vitest'
import { answerOfSearch } from '../../src/answer/of-search.ts'
import type { Answer } from '../../src/evaluation.ts'

const own: Answer = { answer: 'conditions', reasons: [], conditions: ['Its owner agrees in writing.'] }
const change = { component: 'travel.motor', from: '310 cm3/rev', to: 'Orbital motor 250 cm3' }

test('what changes something keeps its own answer', () =>
  expect(answerOfSearch({ changes: [change], answer: own }, { meets: false })).toBe(own))

test.each([
  [true, 'The machine does it as it is; nothing has to change.'],
  [false, 'Nothing on our parts list brings it any further within the limits that we check.'],
])('what changes nothing is no offer and nobody has to agree to it; goal met: %s', (meets, text) =>
  expect(answerOfSearch({ changes: [], answer: own }, { meets })).toEqual({
    answer: 'decline',
    reasons: [{ code: 'not-worth-it', text }],
    conditions: [],
  }),
)
