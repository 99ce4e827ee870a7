import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contrast, DEFAULT_ACCENT, palette } from '../../src/report/accent.ts'

describe('contrast', () => {
  // WCAG 2.1: black on white is 21 to 1; #767676 is the lightest grey that passes 4.5 on white (4.54).
  it('as WCAG gives it', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5)
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2)
  })
})

describe('palette', () => {
  it('keeps a colour that can be read', () => expect(palette('#0b5d4e').accent).toBe('#0b5d4e'))
  it('takes the short form', () => expect(palette('#036').accent).toBe('#003366'))
  it.each([null, '', 'green', '#12345', 'red;}body{display:none'])('takes the default for %s', (accent) =>
    expect(palette(accent).accent).toBe(DEFAULT_ACCENT),
  )
  it('darkens any colour until it can be read on white and on its own wash', () => {
    const channel = fc.integer({ min: 0, max: 255 }).map((value) => value.toString(16).padStart(2, '0'))
    fc.assert(
      fc.property(channel, channel, channel, (r, g, b) => {
        const { accent, wash } = palette(`#${r}${g}${b}`)
        expect(contrast(accent, '#ffffff')).toBeGreaterThanOrEqual(4.5)
        expect(contrast(accent, wash)).toBeGreaterThanOrEqual(4.5)
      }),
    )
  })
})
