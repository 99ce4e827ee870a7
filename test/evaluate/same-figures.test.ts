/** Options that change nothing, through the whole evaluation; where no travel speed is wanted nothing else declines them. */
import { expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { type Edit, SCENARIO, sample } from '../fixtures/fernhill.ts'

const OPTIONS: Edit = [
  SCENARIO,
  /\noptions:[\s\S]*$/u,
  `
options:
  - { name: Nothing at all, changes: {} }
  - { name: The pump that is there, changes: { circuits: { main: { pump: { displacement: 7.9 cm3/rev } } } } }
  - { name: A plate that says more, changes: { circuits: { main: { pump: { max-pressure: 231 bar } } } } }
`,
]

test('are declined as not worth it, and the scenario with them', () => {
  const wish: Edit = [SCENARIO, 'wants: { travel-speed: 4.8 km/h }', 'wants: { oil-below: 75 °C }']
  const bare: Edit = [SCENARIO, /\nmeasured:[\s\S]*?\n(?=status:)/u, '\n']
  const { options, recommendation } = evaluate(sample(bare, wish, OPTIONS), { ranges: false })
  expect(options.map(({ answer }) => answer.answer)).toEqual(['decline', 'decline', 'decline'])
  for (const { answer } of options) expect(answer.reasons.map(({ code }) => code)).toEqual(['not-worth-it'])
  expect(recommendation.kind).toBe('decline')
})
