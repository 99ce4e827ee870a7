/**
 * Flanges and shaft ends that a standard knows, as the trade writes them. What is not here is taken word for word: the
 * machine and the part must then say the same.
 */
import type { SourceKey } from './sources.ts'

export interface FlangeRow {
  readonly text: string
  readonly code: string
  readonly pilotMm: number
  readonly source: SourceKey
}

export interface ShaftRow {
  readonly text: string
  readonly code: string
  readonly diameterMm: number
  readonly source: SourceKey
}

export const pumpFlanges: readonly FlangeRow[] = [
  { text: 'SAE A-A 2-bolt', code: '50-2', pilotMm: 50.8, source: 'pump-flanges' },
  { text: 'SAE A 2-bolt', code: '82-2', pilotMm: 82.55, source: 'pump-flanges' },
  { text: 'SAE A 4-bolt', code: '82-4', pilotMm: 82.55, source: 'pump-flanges' },
  { text: 'SAE B 2-bolt', code: '101-2', pilotMm: 101.6, source: 'pump-flanges' },
  { text: 'SAE B 4-bolt', code: '101-4', pilotMm: 101.6, source: 'pump-flanges' },
  { text: 'SAE C 2-bolt', code: '127-2', pilotMm: 127.0, source: 'pump-flanges' },
  { text: 'SAE C 4-bolt', code: '127-4', pilotMm: 127.0, source: 'pump-flanges' },
]

export const pumpShafts: readonly ShaftRow[] = [
  { text: '9T 20/40 DP', code: '13-4', diameterMm: 12.7, source: 'pump-splines' },
  { text: '9T 16/32 DP', code: '16-4', diameterMm: 15.875, source: 'pump-splines' },
  { text: '11T 16/32 DP', code: '19-4', diameterMm: 19.05, source: 'pump-splines' },
  { text: '13T 16/32 DP', code: '22-4', diameterMm: 22.225, source: 'pump-splines' },
  { text: '15T 16/32 DP', code: '25-4', diameterMm: 25.4, source: 'pump-splines' },
  { text: '14T 12/24 DP', code: '32-4', diameterMm: 31.75, source: 'pump-splines' },
  { text: '17T 12/24 DP', code: '38-4', diameterMm: 38.1, source: 'pump-splines' },
  { text: '13T 8/16 DP', code: '44-4', diameterMm: 44.45, source: 'pump-splines' },
  { text: '1/2 in keyed', code: '13-1', diameterMm: 12.7, source: 'pump-keys' },
  { text: '5/8 in keyed', code: '16-1', diameterMm: 15.88, source: 'pump-keys' },
  { text: '3/4 in keyed', code: '19-1', diameterMm: 19.05, source: 'pump-keys' },
  { text: '7/8 in keyed', code: '22-1', diameterMm: 22.22, source: 'pump-keys' },
  { text: '1 in keyed', code: '25-1', diameterMm: 25.4, source: 'pump-keys' },
  { text: '1-1/4 in keyed', code: '32-1', diameterMm: 31.75, source: 'pump-keys' },
  { text: '1-1/2 in keyed', code: '38-1', diameterMm: 38.1, source: 'pump-keys' },
]

export const motorFlanges: readonly FlangeRow[] = [
  { text: '4-bolt 82.5 mm', code: 'SAE A magneto', pilotMm: 82.5, source: 'motor-mounts' },
  { text: '4-bolt 44.4 mm', code: 'square', pilotMm: 44.4, source: 'motor-mounts' },
  { text: '4-bolt 125 mm', code: 'wheel mount', pilotMm: 125, source: 'motor-mounts' },
]

const flangeTexts = [...pumpFlanges, ...motorFlanges].map((row) => row.text)
const shaftTexts = pumpShafts.map((row) => row.text)

/** Flanges that a standard would have to know ("SAE X 3-bolt") and does not: the names that exist; else null. */
export const unknownFlange = (text: string): readonly string[] | null =>
  /^SAE\s+[A-Z]/u.test(text) && !flangeTexts.includes(text) ? flangeTexts : null

/** The same for splined shafts ("10T 16/32 DP"). */
export const unknownShaft = (text: string): readonly string[] | null =>
  /^\d+T\s/u.test(text) && !shaftTexts.includes(text) ? shaftTexts : null
