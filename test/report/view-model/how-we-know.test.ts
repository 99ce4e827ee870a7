import { describe, expect, it } from 'vitest'
import type { ResultDocument } from '../../../src/evaluation.ts'
import { customerView } from '../../../src/report/customer-view.ts'
import { resultOf, twoSpeed } from '../../fixtures/result.ts'

const knowOf = (result: ResultDocument, units: 'metric' | 'us' = 'metric') =>
  customerView(result, { units, paper: 'a4' }).know
const plain = (text: string) => text.replaceAll('\u00a0', ' ')

describe('what we worked from', () => {
  const tables = new Map(knowOf(resultOf('decline')).tables.map((table) => [table.heading, table]))
  const rows = (heading: string) => tables.get(heading)?.rows.map((row) => [row.what, plain(row.value), row.tolerance])
  it('tells measured from read, told and assumed', () => {
    expect(rows('Measured on your machine')?.[1]).toEqual(['Timed run: time', '31.4 s', '± 1.5 %'])
    expect(rows('Read off plates and manuals')).toEqual([['Engine, net power', '8.6 kW', '']])
    expect(rows('Told to us')).toEqual([['Mass', '980 kg', '']])
  })
  it('names assumptions in plain words, each once', () => {
    const assumed = rows('Assumed, because nobody has read it')
    expect(assumed?.map(([what]) => what)).toEqual([
      'Pump: lowest pressure at its inlet',
      'Swivel: bore',
      'Engine: speed lost under load',
      'Oil tank: outside surface',
    ])
    expect(assumed?.[1]).toEqual(['Swivel: bore', '6.0 mm', '± 5 %'])
  })
  it('says so where nothing was measured', () => {
    const { sheet } = resultOf('decline')
    const [measured] = knowOf(resultOf('decline', { sheet: { ...sheet, rows: [] } })).tables
    expect([measured?.hasRows, measured?.note]).toEqual([false, 'Nothing was measured on the machine.'])
  })
})

describe('calibration', () => {
  it('is told in plain words', () =>
    expect(plain(knowOf(resultOf('decline')).calibration[0] ?? '')).toContain(
      'your machine did 2.3 km/h. From its plates alone it should do 2.4 km/h',
    ))
  it('is not claimed where the run and the plates disagree', () => {
    const { recommendation } = resultOf('measure-first')
    const disagreeing = resultOf('measure-first', {
      recommendation: { ...recommendation, reasons: [{ code: 'readings-disagree', text: 'The readings disagree' }] },
    })
    const [run] = knowOf(disagreeing).calibration
    expect(run).toContain('Both cannot be right')
    expect(run).not.toContain('starts from what was measured')
  })
  it('is not claimed where there was no run', () => {
    const { calibration } = resultOf('decline')
    expect(
      knowOf(resultOf('decline', { calibration: { ...calibration, measuredSpeedKmh: null } })).calibration[0],
    ).toContain('No timed run was made')
  })
})

describe('what would make the answer firmer', () => {
  it('names effects that a customer would notice, and nothing else', () => {
    const { firmer, hasFirmer } = knowOf(resultOf('decline'))
    expect(hasFirmer).toBe(true)
    expect(firmer.rows.map(({ what, effect }) => [what, plain(effect)])).toEqual([
      ['Oil temperature at work', 'oil ± 8 °C'],
      ['Swivel: drilling', 'speed ± 2.4 %, oil ± 1 °C'],
    ])
  })
  it('is a list of at most five', () => {
    const { readings } = resultOf('decline')
    const [first] = readings
    const many = Array.from({ length: 9 }, () => first).filter((one) => one !== undefined)
    expect(knowOf(resultOf('decline', { readings: many })).firmer.rows).toHaveLength(5)
  })
})

describe('limits', () => {
  it('stand under their source, each check once', () => {
    const rows = knowOf(resultOf('decline')).limits
    const inlet = rows.find((row) => row.source === 'Pump’s data sheet')
    expect(inlet?.limits.map(({ check, limit }) => [check, plain(limit)])).toEqual([
      ['Oil supply to the pump, warm', '0.7 bar absolute'],
    ])
    expect(new Set(rows.map((row) => row.source)).size).toBe(rows.length)
  })
})

describe('limits of the engine', () => {
  it('hold for every way and say themselves when', () => {
    const power = knowOf(resultOf('decline'))
      .limits.flatMap((row) => row.limits)
      .find(({ check }) => check === 'Engine power at full pressure')
    expect(plain(power?.limit ?? '')).toBe(
      '8.3 kW, what the engine may give all day and 8.3 kW, the most that the engine has here, for moments',
    )
  })
})

describe('the test after the work', () => {
  it('is kept by the lower end of the speed and the upper end of the oil', () => {
    const { kept, promised } = knowOf(resultOf('upgrade'))
    expect(promised).toBe(true)
    expect(kept.map(plain)).toEqual([
      'Kept, if the mean speed is 3.8 km/h or more.',
      'Kept, if after the working day that you described the oil is at 96 °C or less, in air of 31 °C.',
      'If it is not kept, the machine does not go out as finished: we find out why first.',
    ])
  })
  it('promises no speed where none is gained', () =>
    expect(knowOf(resultOf('protect')).kept.map(plain)[0]).toContain('the oil is at 72 °C or less'))
  it('invents no figure where there is no range', () =>
    expect(knowOf(resultOf('upgrade', { options: [{ ...twoSpeed, range: null }] })).kept[0]).toContain(
      'agreed in writing',
    ))
  it('promises nothing before measuring', () => expect(knowOf(resultOf('measure-first')).promised).toBe(false))
  it('is told in the customer’s units', () =>
    expect(plain(knowOf(resultOf('upgrade'), 'us').testSteps.join(' '))).toContain('at least 66 ft'))
})

describe('what this report is not', () => {
  const text = knowOf(resultOf('decline')).cautions.join('\n')
  it.each([
    'not a guarantee',
    'speed, slope and load stay in force',
    'longer to stop',
    'tips over sooner',
    'end the warranty',
    'through skin',
    'burns skin',
    'raised arm',
    'local codes and law',
    'qualified and licensed people',
    'they govern',
  ])('says "%s"', (words) => expect(text).toContain(words))
})
