/** A way that was searched for and changes nothing says so, one that falls short has that for a condition. Texts: our own wording. */
import { expect, test } from 'vitest'
import { answerOfSearch } from '../../src/answer/of-search.ts'
import type { Answer } from '../../src/evaluation.ts'

const own: Answer = { answer: 'conditions', reasons: [], conditions: ['Its owner agrees in writing.'] }
const change = { component: 'travel.motor', from: '310 cm3/rev', to: 'Orbital motor 250 cm3' }

const NO_WISH = { travelSpeedKmh: null, attachment: null, oilBelowC: null }
const goal = { ...NO_WISH, attachment: { flowLpm: 45, pressureBar: 150 } }
const gives = { speedKmh: 4, attachmentLpm: 40.94, oilC: 63 }

test('what changes something and does it keeps its own answer', () =>
  expect(answerOfSearch({ changes: [change], answer: own }, { meets: true, goal, gives })).toBe(own))

test('what falls short is never a plain yes: what it lacks is the first condition', () => {
  const yes: Answer = { answer: 'recommend', reasons: [], conditions: [] }
  expect(answerOfSearch({ changes: [change], answer: yes }, { meets: false, goal, gives })).toEqual({
    answer: 'conditions',
    reasons: [],
    conditions: ['It falls short, and that has to do: it gives 40.9 L/min at 150 bar, where 45.0 L/min is wanted.'],
  })
  const several = { travelSpeedKmh: 4.5, attachment: null, oilBelowC: 60 }
  expect(answerOfSearch({ changes: [change], answer: own }, { meets: false, goal: several, gives }).conditions).toEqual(
    [
      'It falls short, and that has to do: it gives 4.0 km/h, where 4.5 km/h is wanted, and oil that settles at 63 °C, where 60 °C or less is wanted.',
      ...own.conditions,
    ],
  )
  expect(
    answerOfSearch(
      { changes: [change], answer: yes },
      { meets: false, goal: { ...NO_WISH, oilBelowC: 60 }, gives: { ...gives, oilC: null } },
    ).conditions[0],
  ).toContain('oil that never settles, where 60 °C or less is wanted')
})

test('what falls short and is declined stays so', () => {
  const no: Answer = { answer: 'decline', reasons: [], conditions: [] }
  expect(answerOfSearch({ changes: [change], answer: no }, { meets: false, goal, gives })).toBe(no)
})

test.each([
  [true, 'The machine does it as it is; nothing has to change.'],
  [false, 'Nothing on our parts list brings it any further within the limits that we check.'],
])('what changes nothing is no offer and nobody has to agree to it; goal met: %s', (meets, text) =>
  expect(answerOfSearch({ changes: [], answer: own }, { meets, goal, gives })).toEqual({
    answer: 'decline',
    reasons: [{ code: 'not-worth-it', text }],
    conditions: [],
  }),
)
