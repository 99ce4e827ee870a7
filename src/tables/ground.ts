/**
 * Ground: rolling resistance of tracks and wheels, turning coefficient, adhesion. Rolling resistance of small rubber tracks
 * was not found measured anywhere (from memory, weak); turning after Wong, table 6.1 (from memory); adhesion after a
 * published vehicle table for tracked machines.
 */
import type { Ground, GroundName } from '../machine.ts'

interface GroundRow {
  readonly tracks: number
  readonly wheels: number
  readonly turning: number
  readonly adhesion: number
}

const GROUNDS: { readonly [name in GroundName]: GroundRow } = {
  paved: { tracks: 0.06, wheels: 0.03, turning: 0.9, adhesion: 0.75 },
  'firm soil': { tracks: 0.09, wheels: 0.05, turning: 0.65, adhesion: 0.8 },
  grass: { tracks: 0.09, wheels: 0.07, turning: 0.85, adhesion: 0.85 },
  'loose soil': { tracks: 0.13, wheels: 0.12, turning: 0.65, adhesion: 0.6 },
  sand: { tracks: 0.18, wheels: 0.2, turning: 0.5, adhesion: 0.45 },
  mud: { tracks: 0.22, wheels: 0.2, turning: 0.5, adhesion: 0.5 },
}

export const groundNames = Object.keys(GROUNDS) as readonly GroundName[]

/** Slip of tracks off pavement, and of everything else (assumption). */
const SLIP = { tracksOffPavement: 0.03, else: 0.01 }

/** Ground as this running gear meets it. */
export const groundFor = (name: GroundName, running: 'tracks' | 'wheels'): Ground => {
  const row = GROUNDS[name]
  return {
    name,
    rollingResistance: row[running],
    turning: row.turning,
    adhesion: row.adhesion,
    slip: running === 'tracks' && name !== 'paved' ? SLIP.tracksOffPavement : SLIP.else,
  }
}
