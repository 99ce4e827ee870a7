/** The answer on the terminal, from results made by hand. */
import { Writable } from 'node:stream'
import { describe, expect, test } from 'vitest'
import { checkView } from '../../src/shell/check-view.ts'
import { makerHere } from '../../src/shell/making/maker.ts'
import type { World } from '../../src/shell/world.ts'
import { biggerPump, cost, finding, resultOf } from '../fixtures/result.ts'

const stream = (isTTY: boolean) => Object.assign(new Writable(), { isTTY })
const world = (env: World['env'] = {}, isTTY = false): World => ({
  args: [],
  cwd: '.',
  env,
  stdout: stream(isTTY),
  stderr: stream(isTTY),
  now: () => 0,
  interrupt: new AbortController().signal,
  openMaker: makerHere,
  openPrinter: () => Promise.reject(new Error('not asked for')),
})
const tooFast = finding({
  severity: 'change',
  existing: false,
  value: 6.12,
  limit: 6.1,
  unit: 'm/s',
  check: 'line-velocity',
})
const withFinding = (over = {}) => ({
  ...biggerPump,
  evaluation: { ...biggerPump.evaluation, findings: [{ ...tooFast, ...over }] },
})

describe('checkView', () => {
  test('a finding over its limit stands under its option, value and limit told apart', () => {
    const text = checkView(resultOf('decline', { options: [withFinding()] }), 'metric', world())
    expect(text).toMatch(/change .*6\.12 m\/s against 6\.10 m\/s {2}\[line-velocity\]/u)
  })

  test('one that is within, or was there before, does not stand under the option', () => {
    for (const over of [{ severity: 'ok' }, { existing: true }]) {
      const text = checkView(resultOf('decline', { options: [withFinding(over)] }), 'metric', world())
      expect(text).not.toContain('against 6.10')
    }
  })

  test('an option that makes the same changes as another says so first, under its name', () => {
    const twin = { ...biggerPump, name: 'The same again', sameAs: biggerPump.name }
    const lines = checkView(resultOf('decline', { options: [biggerPump, twin] }), 'metric', world()).split('\n')
    const told = `    The same changes for the same price as “${biggerPump.name}”.`
    expect(lines[lines.indexOf('The same again') + 1]).toBe(told)
    expect(lines.filter((line) => line === told)).toHaveLength(1)
  })

  test('US units in the table, in the findings and in the sentences', () => {
    const recommendation = {
      ...resultOf('decline').recommendation,
      reasons: [{ code: 'oil-too-hot', text: 'The oil would settle at 100 °C.' } as const],
    }
    const text = checkView(resultOf('decline', { options: [withFinding()], recommendation }), 'us', world())
    // 6.12 m/s and 6.1 m/s over 0.3048 m/ft are 20.08 and 20.01 ft/s; 100 °C is 212 °F.
    expect(text).toContain('20.1 ft/s against 20.0 ft/s')
    expect(text).toContain('settle at 212 °F')
    expect(text).toContain(' mph')
    expect(text).not.toMatch(/km\/h|°C/u)
  })

  test('the price is a range, and begins with "from" where something has no price', () => {
    const priced = (unpriced: readonly string[]) =>
      checkView(
        resultOf('decline', {
          options: [{ ...biggerPump, cost: cost({ low: 1900, likely: 2100, high: 2350, currency: 'USD', unpriced }) }],
        }),
        'metric',
        world(),
      )
    expect(priced([])).toContain('$1,900–$2,350')
    expect(priced(['swivel'])).toContain('from $1,900')
  })

  test('what the answer rests on, with its value, then what is worth reading, with what it may move', () => {
    const text = checkView(resultOf('decline'), 'metric', world())
    expect(text).toContain('rests on it:\n  Swivel: bore: 6.0 mm ± 5 % (assumed)')
    // By hand from the fixture: 7.6 K of oil, shown in whole degrees; 2.4 % of speed and 0.7 K; 0.4 of either is nothing that anybody notices.
    expect(text).toMatch(/Oil temperature at work: may move oil by 8 °C\. Probe/u)
    expect(text).toMatch(/Swivel: drilling: may move speed by 2\.4 % and oil by 1 °C/u)
    expect(text).not.toContain('No-load speed')
    expect(text).toContain('4 figures were assumed in all')
  })

  test('nothing of it where nothing was assumed', () => {
    const text = checkView(resultOf('decline', { assumptions: [], restsOn: [], readings: [] }), 'metric', world())
    expect(text).not.toMatch(/rests on it|Worth reading|assumed in all/u)
  })

  test('what is asked about has its own heading, and stands there alone', () => {
    const text = 'Is it right? relief setting: 1550 bar, where small machines usually have 40 to 350 bar.'
    const asked = { path: 'x', option: null, written: '1550 bar', usual: '40 to 350 bar', text, source: 'none' }
    const base = resultOf('decline')
    const calibration = { ...base.calibration, notes: ['One note.', text] }
    const shown = checkView(resultOf('decline', { askedAbout: [asked], calibration }), 'metric', world())
    expect(shown.split(text)).toHaveLength(2)
    expect(shown).toContain(`Asked about:\n  ${text}`)
    expect(shown).toContain('Readings:\n  One note.')
  })

  test.each<[string, object, string]>([
    [
      'oil without a figure',
      { check: 'oil-temperature', value: null, limit: 82, unit: '°C' },
      'it does not settle; the limit is 82 °C',
    ],
    [
      'what nobody looked at',
      { check: 'holding-brake', value: 'not read', limit: 'fitted' },
      'nobody has looked, wanted: fitted',
    ],
    ['a limit that nobody read', { value: 9, limit: null, unit: 'A' }, '9.0 A; what there is for it, nobody has read'],
    ['two words', { value: 'clockwise', limit: 'counterclockwise' }, 'clockwise, wanted: counterclockwise'],
  ])('%s is told in plain words', (_, over, words) => {
    const text = checkView(resultOf('decline', { options: [withFinding(over)] }), 'metric', world())
    expect(text).toContain(words)
    expect(text).not.toMatch(/not worked out|not read\b(?!,)/u)
  })

  test('colour on a terminal only, and not where NO_COLOR is set', () => {
    const coloured = '\u001b['
    expect(checkView(resultOf('decline'), 'metric', world({}, true))).toContain(coloured)
    expect(checkView(resultOf('decline'), 'metric', world({}, false))).not.toContain(coloured)
    expect(checkView(resultOf('decline'), 'metric', world({ NO_COLOR: '1' }, true))).not.toContain(coloured)
  })

  test('control characters of a file are shown, not obeyed', () => {
    const { scenario } = resultOf('decline')
    const hostile = { ...scenario, title: 'Faster\u001b[2J\u202e please' }
    const text = checkView(resultOf('decline', { scenario: hostile }), 'metric', world())
    expect(text).toContain('Faster\ufffd[2J\ufffd please')
    expect(text.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\u202e]/u)
  })
})
