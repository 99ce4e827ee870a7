/**
 * What the ground does to a small machine: rolling resistance over weight, turning coefficient of tracks, adhesion, and
 * slip on the level. Rounded middle values of handbook bands; the range of an answer draws them within ± 25 %.
 */
import type { GroundName } from '../machine.ts'
import type { SourceKey } from './sources.ts'

export interface GroundRow {
  readonly name: GroundName
  /** f_r on tracks. */
  readonly rollingOnTracks: number
  /** f_r on wheels. */
  readonly rollingOnWheels: number
  /** mu_t */
  readonly turning: number
  /** phi */
  readonly adhesion: number
  readonly source: SourceKey
}

export const grounds: readonly GroundRow[] = [
  { name: 'paved', rollingOnTracks: 0.06, rollingOnWheels: 0.03, turning: 0.9, adhesion: 0.75, source: 'ground' },
  { name: 'firm soil', rollingOnTracks: 0.09, rollingOnWheels: 0.05, turning: 0.65, adhesion: 0.8, source: 'ground' },
  { name: 'grass', rollingOnTracks: 0.09, rollingOnWheels: 0.07, turning: 0.85, adhesion: 0.85, source: 'ground' },
  { name: 'loose soil', rollingOnTracks: 0.13, rollingOnWheels: 0.12, turning: 0.65, adhesion: 0.6, source: 'ground' },
  { name: 'sand', rollingOnTracks: 0.18, rollingOnWheels: 0.2, turning: 0.5, adhesion: 0.45, source: 'ground' },
  { name: 'mud', rollingOnTracks: 0.22, rollingOnWheels: 0.2, turning: 0.5, adhesion: 0.5, source: 'ground' },
]

/** Slip of tracks on the level off pavement; an assumption, no source. */
export const TRACK_SLIP = 0.03
/** Slip on pavement, and of wheels; an assumption, no source. */
export const SMALL_SLIP = 0.01
