import { expect, it } from 'vitest'
import { publishedSource } from '../../../src/report/view-model/published.ts'

it('says in the words of the trade what nobody has published', () => {
  expect(publishedSource('common practice, no source')).toBe('usual in the trade')
  expect(publishedSource('stated for the pump; else 0.7 bar absolute (from memory)')).toBe(
    'stated for the pump; else 0.7 bar absolute (as known in the trade)',
  )
})
it('leaves a published source as it is', () =>
  expect(publishedSource('ISO 10265 covers crawlers up to 20 km/h')).toBe('ISO 10265 covers crawlers up to 20 km/h'))
