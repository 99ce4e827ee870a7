import { describe, expect, it } from 'vitest'
import { check } from '../../../src/findings/checks/inlet-pressure-cold.ts'
import { circuit, given, judged, severity } from '../../fixtures/check-input.ts'

const inlet = (coldInletBarAbs: number) => ({ more: { circuits: { main: { coldInletBarAbs } } } })

describe('inlet-pressure-cold', () => {
  it.each([
    [0.71, 'ok'],
    [0.7, 'ok'],
    [0.69, 'change'],
  ])('%f bar absolute for a pump that needs 0.7 is %s', (bar, expected) => {
    expect(severity(check, inlet(bar))).toBe(expected)
  })

  it('only watches it where the thin air alone leaves less than 0.1 bar', () => {
    const at = (atmosphereBar: number) => ({ ...inlet(0.69), more: { ...inlet(0.69).more, atmosphereBar } })
    expect(severity(check, at(0.79))).toBe('watch')
    expect(severity(check, at(0.8))).toBe('change')
  })

  it('is a finding of the suction line, once for a line that two pumps share, by the worse pump', () => {
    expect(judged(check).component).toBe('circuits.main.lines.suction')
    const of = (bar: number) => ({ ...given().more.circuits.main, coldInletBarAbs: bar })
    const input = given({
      machine: { circuits: [circuit('main'), circuit('right', { suctionSharedWith: 'main' })] },
      more: { circuits: { main: of(0.75), right: of(0.6) } },
      figures: { circuits: { right: given().figures.circuits.main ?? {} } },
    })
    expect(check.judge(input)).toMatchObject([
      { component: 'circuits.main.lines.suction', value: 0.6, severity: 'change' },
    ])
  })
})
