import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { biggerPump, consequence, coolerAndFilter, resultOf } from '../../fixtures/result.ts'

const partsOf = (result: ResultDocument) => customerView(result, { units: 'metric', paper: 'a4' }).parts
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('parts that must change', () => {
  const [group] = partsOf(resultOf('decline')).groups
  it('are numbered from what was asked for', () => {
    expect(group?.heading).toBe('“Bigger pump”')
    expect(group?.rows.map((row) => `${row.number} ${row.what}`)).toEqual([
      '1 Pump',
      '2 Pressure hose',
      '3 Suction hose',
      '4 Control valve',
      '5 Swivel',
    ])
    expect(group?.rows[0]?.because).toBe('Asked for')
  })
  it('say why, with the value, its limit and where the limit comes from', () => {
    const row = group?.rows[1]
    expect(row?.because).toContain('wears hoses')
    expect(row?.values.map(({ text, source }) => [plain(text), source])).toEqual([
      ['7.9 m/s; limit 6.1 m/s', 'Guide value of hose makers (usual in the trade)'],
    ])
  })
  it('explain a trade word beside it', () => expect(group?.rows[4]?.gloss).toContain('turning joint'))
  it('tell the chain where no finding stands for it', () =>
    expect(group?.rows[4]?.because).toBe('More oil through the swivel than its drillings pass.'))
  it('tell apart what is priced, what is ordered and what is not to be had', () => {
    expect(group?.rows.map((row) => row.price)).toEqual([
      '$268.00',
      '$16.20',
      'in the total',
      'in the total, special order',
      'not to be had',
    ])
    expect(group?.rows.map((row) => row.missing)).toEqual([false, false, false, false, true])
  })
  it('name the adapters', () => expect(group?.rows[1]?.joints).toEqual(['adapter G 1/2 to G 5/8']))
  it('tell a link of the chain only once', () => {
    const chain = ['Bigger pump', 'the oil gets too hot', 'cooler added']
    const rows = [
      consequence({ component: 'cooler', because: [], chain }),
      consequence({ component: 'gauge', because: [], chain: [...chain, 'with it: oil temperature gauge'] }),
    ]
    const [shown] = partsOf(
      resultOf('decline', { options: [{ ...biggerPump, changes: [], consequences: rows }] }),
    ).groups
    expect(shown?.rows.map((row) => row.because)).toEqual([
      'The oil gets too hot. Cooler added.',
      'With it: oil temperature gauge.',
    ])
  })
})

describe('what no part cures', () => {
  it('is listed with value and limit', () => {
    const [group] = partsOf(resultOf('decline')).groups
    expect(group?.stops.map((row) => [row.what, plain(row.value), plain(row.limit)])).toEqual([
      [
        'Engine: The engine cannot drive the pump at full pressure',
        '14.6 kW',
        '8.3 kW, the most that the engine has here, for moments',
      ],
      ['Brakes: Nothing holds the machine back downhill', 'none', 'needed above 15 %'],
    ])
  })
})

describe('groups', () => {
  const headings = (result: ResultDocument) => partsOf(result).groups.map((group) => group.heading)
  it('a decline shows what was asked, then what is offered', () =>
    expect(headings(resultOf('decline'))).toEqual(['“Bigger pump”', '“Cooler and return filter”']))
  it('a repair comes before the rest', () => expect(headings(resultOf('restore'))[0]).toBe('Putting it right'))
  it('a way advised against is told in brief beside a yes', () => {
    const brief = partsOf(resultOf('protect')).groups.at(-1)
    expect([brief?.heading, brief?.hasRows]).toEqual(['“Bigger pump”', false])
    expect(brief?.intro).toContain('It would also take: pressure hose, suction hose, control valve and swivel.')
  })
  it('nothing is shown before the machine is measured', () =>
    expect(partsOf(resultOf('measure-first')).shown).toBe(false))
  it('a way of which nothing can be told is left out', () => {
    // Declined, nothing follows from it, nothing stops it: "this is what it would take" and then nothing.
    const bare = {
      ...biggerPump,
      changes: [],
      consequences: [],
      evaluation: { ...biggerPump.evaluation, findings: [] },
    }
    for (const kind of ['protect', 'restore', 'decline'] as const)
      expect(headings(resultOf(kind, { options: [bare, coolerAndFilter] }))).not.toContain('“Bigger pump”')
  })
  it('“one part is not enough” only where something follows', () => {
    const heading = (over: Partial<ResultDocument>) => partsOf(resultOf('protect', over)).heading
    expect(heading({})).toBe('Why one part is not enough')
    expect(heading({ options: [coolerAndFilter] })).toBe('What is changed on your machine')
  })
  it('with nothing to change, the heading is that of what is outside its limit today', () => {
    const { recommendation } = resultOf('decline')
    const view = partsOf(
      resultOf('decline', { options: [], recommendation: { ...recommendation, offerInstead: null } }),
    )
    expect([view.shown, view.hasGroups, view.heading]).toEqual([true, false, 'What is already outside its limit today'])
    expect(view.existingNote).not.toContain('told above')
  })
  it('what is outside its limit today is told apart', () =>
    expect(partsOf(resultOf('decline')).existing.map((row) => row.what)).toEqual(['Oil cooler: The oil gets too hot']))
})
