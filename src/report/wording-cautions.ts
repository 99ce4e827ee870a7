/** The usual cautions, part of the catalogue in wording.ts: each stands beside what it concerns, all on the last page. */
export const cautions = {
  cautions: {
    estimate: 'An estimate from the readings and assumptions listed under “How we know”, not a guarantee.',
    maker: 'The maker’s limits for speed, slope and load stay in force.',
    faster:
      'A faster machine takes longer to stop and tips over sooner. Brakes and stopping are tested before it goes back to work. More speed may end the warranty or the machine’s conformity.',
    ifFaster:
      'Where a machine is made faster, it takes longer to stop and tips over sooner; that may end the warranty or the machine’s conformity.',
    fasterArm: 'Whatever else hangs on that pump moves faster too: arm, bucket, swing, attachment.',
    brakes: 'Its brakes on a slope are not within the limits we checked, or nobody has looked at them.',
    hot: (temperature: string) =>
      `Oil at ${temperature} burns skin. Let it cool below 50 °C before you touch tank, hoses or fittings.`,
    hotUs: (temperature: string) =>
      `Oil at ${temperature} burns skin. Let it cool below 122 °F before you touch tank, hoses or fittings.`,
    injection:
      'Never feel for a leak with your hand: oil under pressure goes through skin. If it does, go to hospital at once, even if the wound looks small.',
    stillShort: (line: string, is: string, was: string, limit: string) =>
      `${line}: the pump gets its oil more easily, ${is} in place of ${was}, but it needs ${limit}. It is not cured by this.`,
    stillShortCold: (line: string, is: string, was: string, limit: string) =>
      `${line}: at the coldest start the pump gets its oil more easily, ${is} in place of ${was}, but it needs ${limit}. Warm it up slowly without load all the same.`,
    raised: 'Never put yourself under a raised arm, bucket or machine: it falls when a hose is opened or fails.',
    fault: 'Until the fault is put right, keep off slopes and do not work next to people.',
    within: 'Where we say that something fits, we mean: within the limits we checked.',
    governs:
      'This report replaces neither the maker’s instructions, local codes and law, nor the judgement of qualified and licensed people. Where they differ, they govern.',
  },
}
