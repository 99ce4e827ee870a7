import { describe, expect, it } from 'vitest'
import { cssString, pageStyle } from '../../src/report/page-style.ts'

describe('cssString', () => {
  it('keeps plain text', () => expect(cssString('Fernhill · Quote 2041')).toBe('"Fernhill · Quote 2041"'))
  it('lets nothing end the string, the rule or the element', () => {
    const text = cssString('a"b\\c</style><script>;}\n{x')
    expect(text.slice(1, -1)).not.toMatch(/["<>{};\n]/)
    expect(text).toContain('\\22 ')
    expect(text).toContain('\\5c ')
  })
})

describe('pageStyle', () => {
  it('sets the paper', () => {
    expect(pageStyle({ paper: 'a4', footer: '', accent: null })).toContain('size:A4')
    expect(pageStyle({ paper: 'letter', footer: '', accent: null })).toContain('size:Letter')
  })
  it('counts the pages beside the running text', () => {
    const css = pageStyle({ paper: 'a4', footer: 'Wren 09', accent: null })
    expect(css).toContain('@bottom-left{content:"Wren 09"')
    expect(css).toContain('content:"Page " counter(page) " of " counter(pages)')
  })
})
