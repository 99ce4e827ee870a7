import { describe, expect, test } from 'vitest'
import { blockOf, fitted, widthOf } from '../../../src/report/drawing/text.ts'
import { inkWidth } from './advance-widths.ts'

const SIGNS = [
  ...` !"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_\`abcdefghijklmnopqrstuvwxyz|~°²³·–−’“”…éöµ×`,
]

describe('room of a text', () => {
  test.each(SIGNS)('%s is given no less than the font takes', (sign) => {
    expect(widthOf(sign, 100)).toBeGreaterThanOrEqual(inkWidth(sign, 100))
  })
  test('a sign that nobody measured is as wide as the widest', () => {
    expect(widthOf('漢', 10)).toBeCloseTo(11, 6)
    expect(widthOf('漢', 10)).toBeGreaterThanOrEqual(widthOf('W', 10))
  })
  test('a long text is cut to its room, a short one is left alone', () => {
    const cut = fitted('auxiliary hydraulics', 10, 60)
    expect(cut).toMatch(/^auxil.*…$/)
    expect(widthOf(cut, 10)).toBeLessThanOrEqual(60)
    expect(fitted('arms', 10, 60)).toBe('arms')
  })
})

describe('a label', () => {
  test('without text and numbers takes no room', () => {
    expect(blockOf([], [], 10, 'wide')).toMatchObject({ width: 0, height: 0 })
  })
  test('wide: numbers beside the text; narrow: over it, a line for each word', () => {
    const [wide, narrow] = [
      blockOf(['left motor'], ['1', '2'], 10, 'wide'),
      blockOf(['left motor'], ['1', '2'], 10, 'narrow'),
    ]
    expect(wide.lines).toEqual(['left motor'])
    expect(narrow.lines).toEqual(['left', 'motor'])
    expect(narrow.width).toBeLessThan(wide.width)
    expect(narrow.height).toBeGreaterThan(wide.height)
  })
  test('stacked: numbers over the text, its lines whole', () => {
    const stacked = blockOf(['left motor'], ['1'], 10, 'stacked')
    expect(stacked.lines).toEqual(['left motor'])
    expect(stacked.width).toBeCloseTo(widthOf('left motor', 10), 6)
  })
  test('narrow: short words stay together', () => {
    expect(blockOf(['150\u00a0bar'], [], 10, 'narrow').lines).toEqual(['150\u00a0bar'])
    expect(blockOf(['310\u00a0cm³/rev'], [], 10, 'narrow').lines).toEqual(['310', 'cm³/rev'])
  })
})
