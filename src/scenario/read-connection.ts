/** Connections as a file writes them: how each family is written, and its one normalised spelling. */
import type { Connection, ConnectionFamily } from '../machine.ts'
import { sizesOf } from '../tables/connections.ts'
import type { IssueFlaw } from './values.ts'

interface Form {
  readonly pattern: RegExp
  readonly family: ConnectionFamily
  readonly write: (size: string) => string
}

const inches = String.raw`(\d+(?:[- ]\d+\/\d+)?|\d+\/\d+)`
const dashed = String.raw`-?(\d{1,2})`

/** How each family is written, and its one normalised spelling. */
const FORMS: readonly Form[] = [
  { pattern: new RegExp(`^(?:G|BSPP)\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'G', write: (s) => `G ${s}` },
  { pattern: new RegExp(`^(?:BSPT|R)\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'BSPT', write: (s) => `BSPT ${s}` },
  { pattern: new RegExp(`^NPTF?\\s*${inches}(?:\\s*in)?$`, 'iu'), family: 'NPT', write: (s) => `NPT ${s}` },
  { pattern: new RegExp(`^ORB\\s*${dashed}$`, 'iu'), family: 'ORB', write: (s) => `ORB ${s}` },
  { pattern: new RegExp(`^JIC\\s*${dashed}$`, 'iu'), family: 'JIC', write: (s) => `JIC ${s}` },
  { pattern: new RegExp(`^ORFS\\s*${dashed}$`, 'iu'), family: 'ORFS', write: (s) => `ORFS ${s}` },
  { pattern: /^24\s*°\s*(\d{1,2})\s*L$/iu, family: '24L', write: (s) => `24° ${s}L` },
  { pattern: /^24\s*°\s*(\d{1,2})\s*S$/iu, family: '24S', write: (s) => `24° ${s}S` },
  { pattern: /^M\s*(\d{1,2}\s*[x×]\s*\d(?:\.\d+)?)$/iu, family: 'metric', write: (s) => `M${s}` },
  {
    pattern: new RegExp(`^flange\\s+${inches}(?:\\s*in)?\\s+code\\s*61$`, 'iu'),
    family: 'code 61',
    write: (s) => `flange ${s} code 61`,
  },
  {
    pattern: new RegExp(`^flange\\s+${inches}(?:\\s*in)?\\s+code\\s*62$`, 'iu'),
    family: 'code 62',
    write: (s) => `flange ${s} code 62`,
  },
  { pattern: /^flange\s+(\d{2,3})\s*mm\s+4-bolt$/iu, family: 'flange 4-bolt', write: (s) => `flange ${s} mm 4-bolt` },
]

/** How connections are written, for messages and editors. */
export const FORM_NAMES =
  'G 1/2, BSPT 1/2, ORB -8, JIC -8, ORFS -8, NPT 1/2, 24° 12L, 24° 10S, M22x1.5, flange 3/4 code 61, flange 35 mm 4-bolt'

/** Families whose sizes a standard closes; metric ports and pump flanges come in more sizes than any list has. */
const CLOSED: ReadonlySet<ConnectionFamily> = new Set([
  'G',
  'BSPT',
  'NPT',
  'ORB',
  'JIC',
  'ORFS',
  '24L',
  '24S',
  'code 61',
  'code 62',
])
const DASHED: ReadonlySet<ConnectionFamily> = new Set(['ORB', 'JIC', 'ORFS'])

const refused = (
  code: IssueFlaw['code'],
  message: string,
  expected: string,
  remedy: string | null = null,
): IssueFlaw => ({
  code,
  message,
  expected,
  remedy,
})

/** Reads a connection, or says what is wrong with it. */
export const readConnection = (written: string): Connection | IssueFlaw => {
  const tidy = written
    .normalize('NFC')
    .replace(/[\u00a0\u202f]/gu, ' ')
    .replace(/[º˚]/gu, '°')
    .replace(/\s+/gu, ' ')
    .trim()
  for (const { pattern, family, write } of FORMS) {
    const match = pattern.exec(tidy)
    if (match === null) continue
    const bare = (match[1] ?? '').replace(/\s*[x×]\s*/u, 'x').replace(/^(\d+) (\d+\/\d+)$/u, '$1-$2')
    const size = DASHED.has(family) ? `-${Number(bare)}` : bare
    const known = sizesOf(family)
    if (CLOSED.has(family) && known.length > 0 && !known.includes(size))
      return refused('connection-unknown', `there is no ${write(size)}`, known.map(write).join(', '))
    return { family, size, text: write(size) }
  }
  const hint = /^24\s*\d/u.test(tidy) ? 'write the degree sign: 24° 12L' : null
  return refused('connection-unreadable', `"${written}" is no connection`, `a connection such as ${FORM_NAMES}`, hint)
}
