import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/line-velocity.ts'
import type { Given } from '../../fixtures/check-input.ts'
import { given } from '../../fixtures/check-input.ts'

/** Severity of one line whose oil runs at that velocity. */
const of = (id: string, velocityMps: number, change: Given = {}) => {
  const [line] = given().figures.lines
  const lines = line ? [{ ...line, id, velocityMps }] : []
  return check.judge(given({ ...change, figures: { ...change.figures, lines } }))[0]?.severity
}

describe('line-velocity', () => {
  // 6.1 x 1.15 = 7.015
  it.each([
    ['circuits.main.lines.pressure', 6.09, 'ok'],
    ['circuits.main.lines.pressure', 6.1, 'ok'],
    ['circuits.main.lines.pressure', 6.11, 'watch'],
    ['circuits.main.lines.pressure', 7.01, 'watch'],
    ['circuits.main.lines.pressure', 7.02, 'change'],
    ['travel.lines.swivel-to-motor', 7.02, 'change'],
    ['travel.lines.return', 4.6, 'ok'],
    ['circuits.main.lines.return', 3, 'ok'],
    ['circuits.main.lines.return', 3.01, 'watch'],
    ['circuits.main.lines.return', 4.5, 'watch'],
    ['circuits.main.lines.return', 4.51, 'change'],
    ['circuits.main.lines.suction', 1.2, 'ok'],
    ['circuits.main.lines.suction', 1.21, 'watch'],
    ['circuits.main.lines.suction', 1.79, 'watch'],
    ['circuits.main.lines.suction', 1.8, 'watch'],
    ['circuits.main.lines.suction', 1.81, 'change'],
  ])('%s at %f m/s is %s', (id, velocity, expected) => {
    expect(of(id, velocity)).toBe(expected)
  })

  // 1.2 x 1.15 = 1.38
  it('asks for a bigger suction line above 1.38 m/s where the inlet is short, warm or cold', () => {
    const cold = { more: { circuits: { main: { coldInletBarAbs: 0.69 } } } }
    const warm = { figures: { circuits: { main: { inletPressureBarAbs: 0.69 } } } }
    expect(of('circuits.main.lines.suction', 1.37, cold)).toBe('watch')
    expect(of('circuits.main.lines.suction', 1.39, cold)).toBe('change')
    expect(of('circuits.main.lines.suction', 1.39, warm)).toBe('change')
    expect(of('circuits.main.lines.suction', 1.39)).toBe('watch')
  })

  it('judges the auxiliary lines under the attachment', () => {
    const auxiliaryLines = [{ id: 'circuits.main.auxiliary.lines.out', velocityMps: 7.1, boreMm: 9.5 }]
    const attachment = { flowLpm: 30, pumpPressureBar: 140, toolFlowLpm: 28, auxiliaryLines }
    expect(check.judge(given({ figures: { lines: [] }, more: { attachment } }))).toMatchObject([
      { component: 'circuits.main.auxiliary.lines.out', severity: 'change', limit: 6.1 },
    ])
  })
})
