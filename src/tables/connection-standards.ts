/**
 * What a connection family is and how it seals, and what looks the same and does not fit. Standards and seals as published
 * pages give them; the list of look-alikes, the 60° cone and the metric port are from memory.
 */
import type { Connection, ConnectionFamily } from '../machine.ts'
import { connections } from './connections.ts'

export interface FamilyStandard {
  readonly family: ConnectionFamily
  readonly standard: string
  readonly seal: string
  readonly mistakenFor: string
}

export const familyStandards: readonly FamilyStandard[] = [
  {
    family: 'G',
    standard: 'ISO 1179, ISO 8434-6 (BSPP)',
    seal: 'washer or O-ring at a port, 60° cone in a hose nut',
    mistakenFor: 'BSPT of the same size, which enters and can crack the port; NPT 1/2 and 3/4, same pitch',
  },
  { family: 'BSPT', standard: 'ISO 7-1', seal: 'taper thread with sealant', mistakenFor: 'NPT' },
  {
    family: 'ORB',
    standard: 'SAE J1926-1, ISO 11926-1',
    seal: 'O-ring in the port’s chamfer',
    mistakenFor: 'JIC of the same dash, same thread; NPT that seems to start',
  },
  {
    family: 'JIC',
    standard: 'SAE J514, ISO 8434-2',
    seal: '37° metal cone, no loose seal',
    mistakenFor: '45° flare, same thread up to -10; ORB of the same dash',
  },
  {
    family: 'ORFS',
    standard: 'SAE J1453, ISO 8434-3',
    seal: 'O-ring in the flat face',
    mistakenFor: 'flat-faced metric ends',
  },
  { family: 'NPT', standard: 'ASME B1.20.1, SAE J476', seal: 'taper thread with sealant', mistakenFor: 'BSPT' },
  {
    family: '24L',
    standard: 'ISO 8434-1, light series',
    seal: '24° cone with O-ring, or cutting ring',
    mistakenFor: 'heavy series with the same thread, such as 14S for 15L',
  },
  {
    family: '24S',
    standard: 'ISO 8434-1, heavy series',
    seal: '24° cone with O-ring, or cutting ring',
    mistakenFor: 'light series with the same thread, such as 15L for 14S',
  },
  {
    family: 'metric',
    standard: 'ISO 6149-1',
    seal: 'O-ring in the port’s chamfer',
    mistakenFor: 'flat-sealing metric studs (ISO 9974), same thread',
  },
  {
    family: 'code 61',
    standard: 'ISO 6162-1, SAE J518-1',
    seal: 'O-ring in the flange head',
    mistakenFor: 'code 62, wider pattern and thicker head',
  },
  {
    family: 'code 62',
    standard: 'ISO 6162-2, SAE J518-2',
    seal: 'O-ring in the flange head',
    mistakenFor: 'code 61, narrower pattern',
  },
  {
    family: 'flange 4-bolt',
    standard: 'trade pattern of gear pumps, no standard',
    seal: 'O-ring at the pump face',
    mistakenFor: 'the same bolt circle with another screw: 40 mm with M6 or M8',
  },
]

const byFamily = new Map(familyStandards.map((row) => [row.family, row]))

/** Standard, seal and look-alikes of a connection; null for a family without a row. */
export const familyStandard = ({ family }: Connection): FamilyStandard | null => byFamily.get(family) ?? null

const threads = new Map(connections.map((row) => [`${row.family} ${row.size}`, row.thread]))

/** Thread or bolt pattern of a connection, null for a size that the table does not know. */
export const threadOf = ({ family, size }: Connection): string | null => threads.get(`${family} ${size}`) ?? null
