/** What is used of odex; the package ships its TypeScript source, which is not written for this project's settings. */
export class Solver {
  constructor(dimension: number)
  denseOutput: boolean
  absoluteTolerance: number
  relativeTolerance: number
  solve(
    derivative: (x: number, y: number[]) => number[],
    x0: number,
    y0: number[],
    xEnd: number,
    output?: (...given: never[]) => unknown,
  ): { y: number[]; outcome: unknown }
  grid(step: number, out: (x: number, y: number[]) => unknown): (...given: never[]) => unknown
}
declare const odex: { Solver: typeof Solver }
export default odex
