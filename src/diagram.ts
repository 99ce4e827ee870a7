/**
 * The machine's circuit as it is drawn: what is there, how it hangs together, and the few figures that stand beside a
 * symbol. Types only, plain JSON, part of the result document; ids are those of findings and consequences. `null` means
 * "not there" or "nobody has read it".
 */

/** A hose or tube; `dash` 8 is a -8. */
export interface DiagramLine {
  readonly id: string
  readonly dash: number | null
  readonly boreMm: number
}

export interface DiagramCircuit {
  readonly name: string
  readonly pump: { readonly id: string; readonly displacementCm3: number }
  readonly coupling: { readonly id: string } | null
  readonly relief: { readonly id: string; readonly settingBar: number }
  readonly valve: { readonly id: string; readonly ratedFlowLpm: number | null } | null
  /** null too where the line is another circuit's. */
  readonly suction: DiagramLine | null
  /** Name of the circuit whose suction line feeds this pump as well. */
  readonly suctionSharedWith: string | null
  readonly pressure: DiagramLine | null
  readonly return: DiagramLine | null
  readonly drives: 'both tracks' | 'left track' | 'right track' | 'no track'
  readonly works: readonly ('implements' | 'attachment')[]
  readonly auxiliary: {
    readonly out: DiagramLine | null
    readonly back: DiagramLine | null
    readonly coupler: { readonly id: string; readonly flowLpm: number } | null
  } | null
}

export interface DiagramTravel {
  readonly running: 'tracks' | 'wheels'
  /** In all, the same number on each side. */
  readonly motors: number
  readonly motor: {
    readonly id: string
    readonly displacementCm3: number
    readonly secondDisplacementCm3: number | null
  }
  readonly block: { readonly id: string } | null
  readonly swivel: { readonly id: string } | null
  /** From the valve to the motors; each stands for the way out and the way back, on both sides. */
  readonly lines: readonly DiagramLine[]
}

export interface Diagram {
  readonly engine: { readonly id: string }
  readonly circuits: readonly DiagramCircuit[]
  readonly travel: DiagramTravel
  readonly filter: { readonly id: string; readonly ratedFlowLpm: number | null } | null
  readonly cooler: { readonly id: string; readonly capacityWK: number } | null
  readonly strainer: { readonly id: string } | null
  readonly reservoir: { readonly id: string; readonly volumeL: number }
}
