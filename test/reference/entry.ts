/** One published check value as it stands in physics-checks.json. */
interface Figure {
  readonly value: number
  readonly unit: string
}

export interface Entry {
  readonly id: string
  readonly inputs: { readonly [name: string]: Figure }
  readonly expected: { readonly [name: string]: Figure }
  readonly tolerance: { readonly rel?: number; readonly abs?: number }
  readonly source: string
  /** True where the figure was read in its source, false where it is from memory. */
  readonly seen: boolean
}

/** Works an entry out with the functions of src: inputs and results are in the units of the entry. */
export type Expression = (given: (name: string) => number) => { readonly [name: string]: number }

export interface Expressions {
  readonly [id: string]: Expression
}
