/**
 * Slope on which a parked machine has to stand by its brake, engine off, for five minutes: 15 degrees, which is tan 15° = 27 %
 * for those who measure in per cent. Survey and commissioning record ask for the same one. Source: service data of a compact
 * excavator (15 degrees, engine off, five minutes, creep measured); the braking standards' own figure was not to be read.
 */
export const BRAKE_SLOPE = '15° (27 %)'
