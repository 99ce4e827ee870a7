/** Which copies are wanted, and how. Types and a list: whoever only asks for copies need not load what makes them. */
import type { Copy } from './render-html.ts'

export interface CopyOptions {
  readonly copy: Copy | 'all'
  readonly units: 'metric' | 'us' | 'both' | null
  readonly paper: 'a4' | 'letter'
  /** A work order for each option on the technician's copy. */
  readonly everyOption: boolean
}

const ALL: readonly Copy[] = ['customer', 'shop', 'technician']

export const wantedCopies = ({ copy }: CopyOptions): readonly Copy[] => (copy === 'all' ? ALL : [copy])
