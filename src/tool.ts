/** What the result document says of the tool. The version is that of package.json; a test holds the two together. */
export const TOOL = { name: 'feasibility', version: '0.1.0' } as const
