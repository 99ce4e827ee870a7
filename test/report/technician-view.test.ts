import { describe, expect, it } from 'vitest'
import { JOBS } from '../../src/consequences/uses.ts'
import type { ResultDocument } from '../../src/evaluation.ts'
import { customerView } from '../../src/report/customer-view.ts'
import { type TechnicianOptions, type TechnicianView, technicianView } from '../../src/report/technician-view.ts'
import { kindWords } from '../../src/report/wording-machine-kind.ts'
import { technician } from '../../src/report/wording-technician.ts'
import { MACHINE_TYPES } from '../../src/scenario/machine-schema.ts'
import { SURVEY } from '../../src/survey/entries.ts'
import { finding, resultOf, twoSpeed } from '../fixtures/result.ts'
import { order, pull, withWork } from './work-stories.ts'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const viewOf = (result: ResultDocument, options: Partial<TechnicianOptions> = {}): TechnicianView =>
  technicianView(result, { units: 'metric', paper: 'a4', ...options })
const story = (...of: Parameters<typeof resultOf>) => withWork(resultOf(...of))
const headings = (view: TechnicianView) => view.sheets.map(({ heading }) => heading)

describe('which work orders', () => {
  it.each(['upgrade', 'upgrade-on-conditions', 'protect'] as const)('%s: that of the recommended option', (kind) => {
    const result = story(kind)
    const view = viewOf(result)
    expect(headings(view)).toEqual([`“${result.recommendation.option}”`])
    expect(view.sheets[0]?.warning).toBe('')
    expect(view).toMatchObject({ hasMeasure: false, hasNothing: false })
  })
  it('restore: the repair first', () => expect(headings(viewOf(story('restore')))[0]).toBe('Putting it right'))
  it('restore: what the repair already contains has none of its own', () => {
    const result = story('restore', {
      recommendation: { ...resultOf('restore').recommendation, option: twoSpeed.name },
    })
    const same = result.workOrders.map((one) => order(one.option))
    expect(headings(viewOf({ ...result, workOrders: same }))).toEqual(['Putting it right'])
    const more = result.workOrders.map((one) =>
      one.option === twoSpeed.name
        ? order(one.option, { pulls: [pull({ component: 'filter', part: 'filter-x' })] })
        : one,
    )
    expect(headings(viewOf({ ...result, options: [twoSpeed], workOrders: more }))).toContain(`“${twoSpeed.name}”`)
  })
  it('decline: what is offered, marked as not ordered', () => {
    const [sheet] = viewOf(story('decline')).sheets
    expect(sheet?.heading).toBe('“Cooler and return filter”')
    expect(sheet?.warning).toContain('not ordered')
  })
  it('decline with nothing of ours to offer: no work order, said in words', () => {
    const recommendation = { ...resultOf('decline').recommendation, offerInstead: 'Move the trailer' }
    const view = viewOf(story('decline', { recommendation }))
    expect(view).toMatchObject({ hasSheets: false, hasNothing: true })
    expect(view.nothing).toContain('“Move the trailer”')
    expect(view.letterhead.title).toMatch(/^No work order/u)
  })
  it('measure first: readings to take and no parts', () => {
    const view = viewOf(story('measure-first'))
    expect(view).toMatchObject({ hasSheets: false, hasMeasure: true, hasNothing: false })
    expect(view.measure?.record.rows.length).toBeGreaterThan(8)
    expect(view.measure?.why.length).toBeGreaterThan(0)
  })
  it('what is recommended as the best there is has no “we advise against” over its order', () => {
    const result = story('protect')
    const options = result.options.map((option) => ({
      ...option,
      answer: { answer: 'decline' as const, reasons: [], conditions: [] },
    }))
    expect(viewOf({ ...result, options }).sheets.map(({ warning }) => warning)).toEqual([''])
  })
  it('every option on request, those advised against marked so', () => {
    const result = story('decline')
    const view = viewOf(result, { everyOption: true })
    expect(headings(view)).toEqual(result.options.map(({ name }) => `“${name}”`))
    const declined = result.options.findIndex(({ answer }) => answer.answer === 'decline')
    expect(view.sheets[declined]?.warning).toContain('advise against')
  })
})

describe('the machine of a fleet', () => {
  // Two machines of one model under one quote: only the scenario's title tells them apart.
  const title = 'Six for hire: Unit F'
  const result = story('decline')
  const view = viewOf({ ...result, scenario: { ...result.scenario, title } }, { everyOption: true })
  it('stands in the letterhead of every kind of sheet, on a line of its own', () => {
    expect(view.letterhead.job).toBe(title)
    expect(view.letterhead.machine).not.toContain(title)
    for (const kind of ['restore', 'measure-first', 'upgrade'] as const)
      expect(viewOf(story(kind)).letterhead.job).toBe(result.scenario.title)
  })
  it('and over each further sheet, which begins on a page of its own', () => {
    expect(view.sheets.length).toBeGreaterThan(1)
    expect(view.sheets.map(({ job }) => job)).toEqual(['', ...view.sheets.slice(1).map(() => `${title}, Wren 09`)])
  })
  it('not a second time in the customer’s letterhead, whose title it is', () => {
    const { letterhead } = customerView(result, { units: 'metric', paper: 'a4' })
    expect([letterhead.title, letterhead.job]).toEqual([result.scenario.title, ''])
  })
})

const upgrade = viewOf(story('upgrade')).sheets[0]

describe('parts to pull', () => {
  const rows = upgrade?.pulls.rows ?? []
  it('one line each: pieces, length, bore, rating with what is asked', () =>
    expect(
      [rows[0]?.what, rows[0]?.quantity, rows[0]?.length, rows[0]?.bore, rows[0]?.rated].map((t) => plain(t ?? '')),
    ).toEqual(['2-wire hose -10', '2 from 2.8 m', '1.4 m', '15.9 mm', '250 bar (171 bar)']))
  it('both ends with thread, standard, seal, and torque or turns with the letter of its source', () => {
    expect(rows[0]?.joints.map((one) => [plain(one.connection), plain(one.tighten), one.mark])).toEqual([
      ['ORB -10, 7/8-14 UNF', '61–82 N·m', 'a'],
      ['24° 12L, M18x1.5', '1/4 to 1/3 turn from hand tight', 'b'],
    ])
    expect(rows[0]?.joints[1]?.where).toContain('Adapter 24° 12L to 15L')
    expect(upgrade?.pulls.sources.map(({ mark }) => mark)).toEqual(['a', 'b', 'c'])
  })
  it('says where nobody has read a port', () => {
    expect(rows[1]?.joints[0]?.connection).toContain('not read')
    expect(rows[1]?.joints[0]?.tighten).toBe('–')
  })
  it('says what is asked where the rating is open, and cuts to fit where no length is known', () => {
    expect(plain(rows[2]?.rated ?? '')).toBe('at least 171 bar')
    expect(rows[2]?.length).toBe('cut to fit')
    expect(rows[2]?.joints).toHaveLength(1)
    expect(rows[2]?.joints[0]?.where).toBe('Both ends')
  })
  it('warns of look-alikes, each once', () =>
    expect(upgrade?.pulls.twice).toEqual([
      'ORB -10 and G 1/2: not JIC of the same dash, same thread',
      '24° 12L: not heavy series with the same thread',
    ]))
  it('keeps the old part that goes back', () => expect(rows[1]?.notes.join(' ')).toContain('Keep the old part'))
})

describe('the order of work', () => {
  const groups = upgrade?.groups ?? []
  const all = groups.flatMap(({ steps }) => steps)
  const text = all.map((step) => plain(step.text)).join('\n')
  it('begins with the machine made dead: engine, pressure, gauge, blocks, oil below 50 °C, caps and pan', () => {
    expect(groups[0]?.heading).toBe('Before a tool touches it')
    const dead = groups[0]?.steps.map((step) => plain(step.text)).join(' ') ?? ''
    for (const word of ['50 °C', 'Engine off', 'gauge', 'isolator', 'stands', 'Caps', 'catch pan'])
      expect(dead).toContain(word)
    expect(groups[0]?.note).toContain('hospital')
  })
  it('numbers run through', () => expect(all.map(({ number }) => number)).toEqual(all.map((_, i) => String(i + 1))))
  it('components before hoses, an unknown job as the maker says', () => {
    const heads = groups.map(({ heading }) => heading)
    expect(heads.indexOf('Replace motor, 2 times: travel motors')).toBeLessThan(
      heads.indexOf('Replace hose, 2 times: pressure hose'),
    )
    expect(groups.find(({ heading }) => heading === 'Paint the boom')?.steps[0]?.text).toContain('maker’s manual')
  })
  it('primes, starts unloaded, sets the relief down first, then looks for leaks with cardboard', () => {
    const heads = groups.map(({ heading }) => heading)
    expect(heads.slice(-4)).toEqual(['Fill and prime', 'First start, unloaded', 'Relief valves', 'Look for leaks'])
    expect(text).toMatch(/Down first/u)
    expect(text).toContain('Relief valve: 155 bar; it was 140 bar.')
    expect(text).toMatch(/cardboard.*never with a hand/u)
  })
  it('has steps for every job of the closed list', () => {
    const told = new Set(Object.keys(technician.work.jobs))
    expect(JOBS.filter((job) => job !== 'test and record' && !told.has(job))).toEqual([])
  })
  it('takes the reader’s units', () => {
    const us = viewOf(story('upgrade'), { units: 'us' }).sheets[0]?.groups ?? []
    const words = us.flatMap(({ steps }) => steps.map((step) => plain(step.text))).join('\n')
    expect(words).toContain('122 °F')
    expect(words).toContain('2250 psi')
    expect(words).not.toMatch(/\d (?:°C|bar|mm)\b/u)
  })
})

describe('kinds of machine', () => {
  /** Everything on the sheet of this kind of machine, upgrade with all its jobs. */
  const textOf = (type: string, running: 'tracks' | 'wheels' = 'tracks') => {
    const result = story('upgrade')
    const { sheet, diagram } = result
    const [sheetView] = viewOf({
      ...result,
      sheet: { ...sheet, machine: { ...sheet.machine, type } },
      diagram: { ...diagram, travel: { ...diagram.travel, running } },
    }).sheets
    return JSON.stringify([sheetView?.groups, sheetView?.record.rows]).toLowerCase()
  }
  it.each([
    [
      'tracked dumper',
      'tracks',
      ['skip empty', 'skip or tracks', 'skip: tips'],
      /boom|swing|\barm\b|blade|lever|loader/u,
    ],
    ['tracked loader', 'tracks', ['loader arms down', 'loader arms and bucket: lower'], /boom|swing|blade|lever|skip/u],
    [
      'wheeled loader',
      'wheels',
      ['loader arms down', 'the wheels gently'],
      /boom|swing|blade|lever|skip|both tracks gently/u,
    ],
    ['something new', 'tracks', ['everything that is raised'], /boom|swing|blade|lever|skip|loader/u],
  ] as const)('%s: its own parts and no others', (type, running, told, foreign) => {
    // "At arm's length" is the technician's own, and the boom that is painted is the story's.
    const text = textOf(type, running).replaceAll(/arm’s length|paint the boom/gu, '')
    for (const words of told) expect(text).toContain(words)
    expect(text).not.toMatch(foreign)
  })
  it('tracked excavator: boom, arm, blade and swing', () => {
    const text = textOf('tracked excavator')
    for (const word of ['lock the swing', 'boom, arm, bucket, blade', 'boom-down and swing'])
      expect(text).toContain(word)
  })
  it('has words for every kind that a machine file may name', () =>
    expect(MACHINE_TYPES.filter((type) => kindWords(type) === kindWords('something new'))).toEqual([]))
})

describe('an engine that does not reach its speed', () => {
  const text = 'The engine runs at 3250 rpm, 14 % under the 3774 rpm that plates give'
  const restore = resultOf('restore')
  const slow = (jobs = [{ job: 'test and record', quantity: 1, components: [] as string[] }]) => {
    const faults = [{ component: 'engine', text }]
    const result = story('restore', { recommendation: { ...restore.recommendation, option: null, faults } })
    const pulls = [pull({ component: 'engine', kind: 'kit', part: null, what: 'Repair of the engine', joints: [] })]
    return { ...result, workOrders: [order(null, { pulls, jobs })] }
  }
  const sheet = (result: ResultDocument) => viewOf(result).sheets[0]
  const heads = (result: ResultDocument) => sheet(result)?.groups.map(({ heading }) => heading)
  it('throttle, governor and stop while it stands, its speed while it runs', () => {
    const groups = sheet(slow())?.groups ?? []
    const off = groups.find(({ heading }) => heading === 'Engine: throttle and governor')
    expect(plain(off?.note ?? '')).toBe(`${text}.`)
    expect(off?.steps.map((step) => step.text).join(' ')).toMatch(/cable.*spring.*filter/u)
    const running = groups.find(({ heading }) => heading === 'Engine: speed')
    expect(running?.steps.map((step) => plain(step.text)).join(' ')).toMatch(
      /no-load speed.*full-throttle stop.*no higher.*2930 rpm under full load/u,
    )
    expect(running?.note).toContain('never beyond')
  })
  it('where no circuit is opened, nothing is filled, primed or set', () => {
    expect(heads(slow())).toEqual([
      'Before a tool touches it',
      'Engine: throttle and governor',
      'Engine: speed',
      'Relief valves',
    ])
    expect(JSON.stringify(sheet(slow())?.groups.at(-1)?.steps)).not.toContain('Down first')
  })
  it('where one is opened too, the machine is primed before the engine is read', () =>
    expect(heads(slow([{ job: 'replace pump', quantity: 1, components: ['circuits.main.pump'] }]))).toEqual([
      'Before a tool touches it',
      'Engine: throttle and governor',
      'Replace pump: pump',
      'Fill and prime',
      'First start, unloaded',
      'Engine: speed',
      'Relief valves',
      'Look for leaks',
    ]))
  it('the record takes the maker’s no-load speed, and only here', () => {
    const accepted = (result: ResultDocument) => sheet(result)?.record.rows[2]?.accepted
    expect(accepted(slow())).toContain('not above')
    expect(accepted(story('restore'))).not.toContain('not above')
  })
  it('an order without that fault has no step for the engine', () =>
    expect(JSON.stringify(heads(story('restore')))).not.toContain('Engine:'))
})

describe('the commissioning record', () => {
  const rows = (view: TechnicianView) =>
    view.sheets[0]?.record.rows.map((row) => `${row.reading}: ${plain(row.accepted)}`) ?? []
  it('has the usual criteria', () => {
    const text = rows(viewOf(story('upgrade'))).join('\n')
    for (const criterion of [
      '155 bar ± 3 %',
      'within 5 %',
      '300 mm at most',
      '10 % at relief',
      '−0.25 bar',
      '80 °C',
      '13.5 V',
      'none',
    ])
      expect(text).toContain(criterion)
  })
  it('tries the brake on the slope that the survey asks for: 15 degrees, in per cent the tangent of it', () => {
    const percent = Math.round(100 * Math.tan((15 * Math.PI) / 180))
    const slope = `slope of 15° (${percent} %), engine off, 5 min`
    const asked = SURVEY.flatMap(({ entries }) => entries).find(({ path }) => path === 'brakes.holding')?.how ?? ''
    expect(rows(viewOf(story('upgrade'))).join('\n')).toContain(slope)
    expect(asked).toContain(slope)
  })
  it('gives the forecast as a speed and as seconds over 20 m', () => {
    // 3.6 × 20 m = 72; at 3.8 km/h 72/3.8 = 18.9 s, at 4.5 km/h 72/4.5 = 16 s.
    const range = {
      ...(twoSpeed.range as NonNullable<typeof twoSpeed.range>),
      speedKmh: { p10: 3.8, p50: 4.1, p90: 4.5 },
    }
    const result = withWork(resultOf('upgrade', { options: [{ ...twoSpeed, range }] }))
    const named = { ...result, recommendation: { ...result.recommendation, option: twoSpeed.name } }
    expect(rows(viewOf(named)).find((row) => row.startsWith('Travel'))).toContain('3.8–4.5 km/h, that is 16–19 s')
  })
  it('has no drift on wheels, and a stopping distance only where the machine gets faster', () => {
    const result = story('upgrade')
    const travel = { ...result.diagram.travel, running: 'wheels' as const }
    const wheels = rows(viewOf({ ...result, diagram: { ...result.diagram, travel } })).join('\n')
    expect(wheels).not.toMatch(/Drift|Left track/u)
    expect(rows(viewOf(result)).join('\n')).toContain('Stopping distance')
    expect(rows(viewOf(story('protect'))).join('\n')).not.toContain('Stopping distance')
    expect(rows(viewOf(story('restore'))).join('\n')).not.toContain('Stopping distance')
  })
  it('asks for the attachment’s flow where one is worked out', () => {
    const found = [
      finding({ check: 'attachment-flow', value: 62.4, limit: 61, unit: 'L/min' }),
      finding({ check: 'attachment-pressure', value: 124, limit: 135, unit: 'bar' }),
    ]
    const evaluation = { ...twoSpeed.evaluation, findings: found }
    const result = withWork(resultOf('upgrade', { options: [{ ...twoSpeed, evaluation }] }))
    const named = { ...result, recommendation: { ...result.recommendation, option: twoSpeed.name } }
    expect(rows(viewOf(named)).map(plain)).toContain(
      'Flow at the attachment’s couplers, the pump at 124 bar: our forecast: 62.4 L/min',
    )
  })
})
