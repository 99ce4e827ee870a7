/** One thing that is read, counted or measured for a machine or its site: the rows that sheet and files are made from. */

export interface SurveyEntry {
  /** Path in the file; `*` stands for the name of a circuit or of a travel hose. */
  readonly path: string
  readonly label: string
  /** Units that serve, the metric one first; '' for a word, a count or a list. */
  readonly unit: string
  /** An answer as it may stand in the file; those of all entries together make one machine (invented). */
  readonly example: string
  /** Where to read it, or how to count or measure it. */
  readonly how: string
  readonly usualError?: string
  /** What a wrong reading looks like. */
  readonly wrong?: string
  /** Where method and error come from; common practice without a source where nothing is said. */
  readonly source?: string
  /** Number of the place on the drawing. */
  readonly mark?: number
  /** Nothing can be worked out without it. */
  readonly needed?: true
  /** Another entry says the same; one of them is enough. */
  readonly either?: true
  /** Hose that it belongs to, where the sheet has one row a hose. */
  readonly hose?: string
}

export interface SurveyGroup {
  readonly file: 'machine' | 'scenario'
  readonly heading: string
  readonly entries: readonly SurveyEntry[]
}

export const COMMON_PRACTICE = 'common practice, no source'
