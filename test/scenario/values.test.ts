/** Connections as the trade writes them, dash sizes, dates. */
import { describe, expect, test } from 'vitest'
import { readConnection } from '../../src/scenario/read-connection.ts'
import { dash, date } from '../../src/scenario/values.ts'
import { connections } from '../../src/tables/connections.ts'

const read = (text: string) => {
  const connection = readConnection(text)
  return 'family' in connection ? [connection.family, connection.size, connection.text] : connection.code
}

describe('connections', () => {
  test.each<[string, string, string, string]>([
    ['G 1/2', 'G', '1/2', 'G 1/2'],
    ['g1/2', 'G', '1/2', 'G 1/2'],
    ['G 1-1/4', 'G', '1-1/4', 'G 1-1/4'],
    ['G 1 1/4', 'G', '1-1/4', 'G 1-1/4'],
    ['G 1', 'G', '1', 'G 1'],
    ['BSPT 1/2', 'BSPT', '1/2', 'BSPT 1/2'],
    ['NPT 3/4', 'NPT', '3/4', 'NPT 3/4'],
    ['ORB -8', 'ORB', '-8', 'ORB -8'],
    ['ORB-8', 'ORB', '-8', 'ORB -8'],
    ['JIC -08', 'JIC', '-8', 'JIC -8'],
    ['ORFS -12', 'ORFS', '-12', 'ORFS -12'],
    ['24° 12L', '24L', '12', '24° 12L'],
    ['24º 10 S', '24S', '10', '24° 10S'],
    ['M22x1.5', 'metric', '22x1.5', 'M22x1.5'],
    ['M 22 × 1.5', 'metric', '22x1.5', 'M22x1.5'],
    ['flange 3/4 code 61', 'code 61', '3/4', 'flange 3/4 code 61'],
    ['flange 1-1/4 code 62', 'code 62', '1-1/4', 'flange 1-1/4 code 62'],
    ['flange 35 mm 4-bolt', 'flange 4-bolt', '35', 'flange 35 mm 4-bolt'],
  ])('%s', (written, family, size, text) => expect(read(written)).toEqual([family, size, text]))

  test.each<[string, string]>([
    ['G 7/16', 'connection-unknown'],
    ['24° 9L', 'connection-unknown'],
    ['24° 12S', ''],
    ['24° 15S', 'connection-unknown'],
    ['24° 14L', 'connection-unknown'],
    ['ORFS -5', 'connection-unknown'],
    ['NPT 5/8', 'connection-unknown'],
    ['24 12L', 'connection-unreadable'],
    ['half inch', 'connection-unreadable'],
    ['1/2', 'connection-unreadable'],
    ['', 'connection-unreadable'],
  ])('%s is refused or not', (written, code) =>
    expect(read(written)).toEqual(code === '' ? ['24S', '12', '24° 12S'] : code),
  )

  test('a size that does not exist is answered with those that do', () => {
    const problem = readConnection('24° 9L')
    expect('family' in problem ? '' : problem.expected).toContain('24° 8L, 24° 10L')
  })
  test('every row of the table can be written and read', () => {
    const forms: { readonly [family: string]: (size: string) => string } = {
      G: (size) => `G ${size}`,
      BSPT: (size) => `BSPT ${size}`,
      NPT: (size) => `NPT ${size}`,
      ORB: (size) => `ORB ${size}`,
      JIC: (size) => `JIC ${size}`,
      ORFS: (size) => `ORFS ${size}`,
      '24L': (size) => `24° ${size}L`,
      '24S': (size) => `24° ${size}S`,
      metric: (size) => `M${size}`,
      'code 61': (size) => `flange ${size} code 61`,
      'code 62': (size) => `flange ${size} code 62`,
      'flange 4-bolt': (size) => `flange ${size} mm 4-bolt`,
    }
    for (const { family, size } of connections) {
      const text = forms[family]?.(size) ?? ''
      expect(read(text)).toEqual([family, size, text])
    }
  })
})

describe('dash sizes', () => {
  test.each([-8, '-8', '-08'])('%j', (written) => expect(dash.parse(written)).toBe(8))
  test.each([-7, 'half', '8/16', -80, ''])('%j is none', (written) =>
    expect(dash.safeParse(written).success).toBe(false),
  )
})

describe('dates', () => {
  test.each(['2026-03-02', '2028-02-29'])('%s', (day) => expect(date.parse(day)).toBe(day))
  test.each(['2026-02-29', '2026-13-01', '02.03.2026', '2026-3-2', 'today'])('%s is none', (day) =>
    expect(date.safeParse(day).success).toBe(false),
  )
})
