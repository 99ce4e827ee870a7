/**
 * Where the rows of the connection and mount tables come from, once each. `seen` says whether the main column was read in a published text;
 * `memory` names what in such a table was not. Published pages that quote a standard or a catalogue count as one source;
 * no full standard was at hand.
 */
export type SourceKey = keyof typeof sources

export interface Source {
  readonly standard: string
  readonly read: string
  readonly seen: boolean
  readonly memory: string | null
}

const row = (standard: string, read: string, seen: boolean, memory: string | null = null): Source => ({
  standard,
  read,
  seen,
  memory,
})

export const sources = {
  'bsp-threads': row('ISO 228-1 and ISO 7-1', 'three published thread tables', true),
  'orb-ports': row('SAE J1926-1, ISO 11926-1', 'two published torque tables that print the threads', true),
  'jic-fittings': row(
    'SAE J514 37° flare, ISO 8434-2',
    'one thread chart, and the same ladder as SAE J1926-1',
    true,
    'bores',
  ),
  'orfs-fittings': row('SAE J1453, ISO 8434-3', 'two published thread tables', true),
  'npt-threads': row('ASME B1.20.1, SAE J476', 'two published thread tables to 1 in', true),
  'cone-24': row(
    'ISO 8434-1 (24° cone, series L and S)',
    'three published thread tables',
    true,
    'bores but that of 22L',
  ),
  'metric-ports': row('ISO 6149-1', 'one published thread table', true),
  'metric-threads': row('ISO 261', 'not read; threads of DIN 3852 studs and ports', false, 'all'),
  'split-flanges': row(
    'ISO 6162-1 and -2, SAE J518-1 and -2',
    'two published tables of patterns and bores',
    true,
    'screws',
  ),
  'gear-pump-flanges': row('trade pattern, no standard', 'not read', false, 'all: measure before ordering'),
  'pump-flanges': row('SAE J744, ISO 3019-1', 'pilots and spacings in published pump tables', true, 'size A-A'),
  'pump-splines': row('SAE J744, ISO 3019-1, ANSI B92.1', 'two or three published lists of teeth and pitch', true),
  'pump-keys': row('SAE J744, ISO 3019-1', 'diameters A, B and C in a published table', true, 'other diameters'),
  'motor-mounts': row('SAE J744 82-2; the rest trade patterns', 'pilot and spacing of SAE A', true, 'all else'),
} as const satisfies { readonly [key: string]: Source }
