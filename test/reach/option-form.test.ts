/** An option that says what is to be reached, from the text of the scenario to the result document. */
import { readdirSync, readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { evaluate } from '../../src/evaluate.ts'
import { readAll } from '../../src/scenario/read.ts'

const ROOT = new URL('../../scenarios/', import.meta.url)
const source = (file: string, text = readFileSync(new URL(file, ROOT), 'utf8')) => ({ file, text })

test('the changes are searched for, and the option says how they were found', { timeout: 60_000 }, () => {
  const text = source('two-speed-travel.yaml').text.replace(
    /options:[\s\S]*$/u,
    'options:\n  - name: As fast as that\n    reach: {travel-speed: 3.6 km/h}\n',
  )
  const shop = readdirSync(new URL('shop/', ROOT))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
  const read = readAll(
    source('two-speed-travel.yaml', text),
    source('machines/hornbeam-18.yaml'),
    shop.map((name) => source(`shop/${name}`)),
    'shop',
  )
  if ('problems' in read) throw new Error(JSON.stringify(read.problems))
  const [option] = evaluate(read.loaded, { ranges: false }).options
  expect(option?.found?.meets).toBe(true)
  expect(option?.found?.isExact).toBe(true)
  expect(option?.found?.price).toBe(option?.cost.likely)
  expect(option?.found?.reached).toBe(option?.evaluation.travel.level.speedKmh)
  expect(option?.evaluation.travel.level.speedKmh).toBeGreaterThanOrEqual(3.6)
  expect(option?.changes.length).toBeGreaterThan(0)
})
