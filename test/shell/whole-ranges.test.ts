/** A range stays on one line: the dash of "1.8–1.9" is a place where a browser may break it. */
import { expect, test } from 'vitest'
import { wholeRanges } from '../../src/shell/whole-ranges.ts'

const whole = (text: string) => `<span class="whole">${text}</span>`

test.each([
  ['<p>It gives 1.8–1.9\u00a0km/h.</p>', `<p>It gives ${whole('1.8–1.9')}\u00a0km/h.</p>`],
  ['<p>It costs $2,612–$4,358, work included</p>', `<p>It costs ${whole('$2,612–$4,358,')} work included</p>`],
  ['<td>CHF\u00a0900–CHF\u00a01,100</td>', `<td>CHF\u00a0${whole('900–CHF\u00a01,100')}</td>`],
  ['<td>−5–−2\u00a0°C</td>', `<td>${whole('−5–−2')}\u00a0°C</td>`],
])('of %s', (html, is) => expect(wholeRanges(html)).toBe(is))

test('a dash between words, a title, a drawing, a style and an attribute stay as they are', () => {
  for (const html of [
    '<p>this – and that; 7 – 8; well–known</p>',
    '<title>1.8–1.9</title>',
    '<svg><text>1.8–1.9</text></svg>',
    '<style>p::after{content:"1–2"}</style>',
    '<p title="1–2">no range</p>',
  ])
    expect(wholeRanges(html)).toBe(html)
})
