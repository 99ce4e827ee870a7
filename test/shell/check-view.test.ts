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
