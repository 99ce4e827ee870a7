/** What is read of a hose: the same six things of each. */
import type { SurveyEntry } from './entry.ts'

/** Answers of one hose, for the sample machine. */
export interface HoseSample {
  readonly hose: string
  readonly kind: string
  readonly length: string
  readonly elbows: string
  readonly ends: string
}

/**
 * @param path of the hose in the machine file
 * @param name as the sheet calls it
 * @param mark number on the drawing
 */
export const hoseEntries = (path: string, name: string, mark: number, sample: HoseSample): readonly SurveyEntry[] => [
  {
    path: `${path}.hose`,
    label: 'dash size',
    unit: 'sixteenths of an inch',
    example: sample.hose,
    how: 'Layline: standard, bore, working pressure, date. -4 is 6.3 mm inside, -6 9.5, -8 12.7, -12 19, -16 25.4.',
    usualError: 'one size where the layline is gone',
    wrong: 'The outside taken for the bore. No layline: treat it as unknown and price a new hose.',
    source: 'SAE J517, EN 853 for the sizes',
    mark,
    hose: name,
  },
  {
    path: `${path}.kind`,
    label: 'kind',
    unit: '',
    example: sample.kind,
    how: 'Layline: 1-wire hose, 2-wire hose, suction hose, return hose.',
    hose: name,
  },
  {
    path: `${path}.bore`,
    label: 'bore, of a tube',
    unit: 'mm or in',
    example: '12.7 mm',
    how: 'Caliper inside the end; in place of the dash size.',
    usualError: '± 0.2 mm',
    either: true,
    hose: name,
  },
  {
    path: `${path}.length`,
    label: 'length',
    unit: 'm, ft or in',
    example: sample.length,
    how: 'Tape from seat to seat, along the bend; note orientation of elbows and any twist.',
    usualError: '± 3 %',
    wrong: 'Straight across instead of along the hose: a fifth too short.',
    hose: name,
  },
  {
    path: `${path}.elbows`,
    label: 'elbows',
    unit: '',
    example: sample.elbows,
    how: 'Count bent ends and adapters in it.',
    hose: name,
  },
  {
    path: `${path}.ends`,
    label: 'both ends',
    unit: '',
    example: sample.ends,
    how: 'Caliper, pitch gauge and seat gauge: decide taper, then pitch, then seal, then outside diameter.',
    usualError: 'a worn crest reads small',
    wrong: 'Two of diameter, pitch and seat are a guess: 3/8 BSPP and M16x1.5, or ORB -6 and JIC -6, look alike.',
    source: 'ISO 228, ISO 8434, SAE J514 for the forms',
    hose: name,
  },
]
