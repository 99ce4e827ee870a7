/**
 * What the technician's copy calls the parts of each kind of machine, as the machine file names it: a dumper has no boom and a
 * loader does not slew. Common practice, no source. A kind that is not here gets words that fit any.
 */

export interface KindWords {
  /** Under what the machine is parked. */
  readonly park: string
  /** What lets the pressure out. */
  readonly release: string
  /** What nobody stands near at the first start. */
  readonly reach: string
  /** How the first strokes are made, before it drives. */
  readonly strokes: string
  /** Lowered before the oil level is read. */
  readonly lowered: string
  /** Last look at what moves, and when it is accepted. */
  readonly stops: string
}

const ANY: KindWords = {
  park: 'Park level. Lower everything that is raised to the ground; chock both ends.',
  release: 'Work every control both ways',
  reach: 'the machine and what it carries',
  strokes: 'Slow strokes, short of the ends.',
  lowered: 'everything down',
  stops: 'Everything that is raised, tipped or turned: stops where it should',
}

const LOADER: KindWords = {
  park: 'Park level. Loader arms down, bucket or attachment flat on the ground; chock both ends.',
  release: 'Work every control both ways, that of the attachment too,',
  reach: 'loader arms, machine or attachment',
  strokes: 'Loader arms and bucket slowly up, down and tipped, short of the ends.',
  lowered: 'loader arms and attachment down',
  stops: 'Loader arms and bucket: lower and stop where they should, no drop',
}

const KINDS: { readonly [kind: string]: KindWords } = {
  'tracked excavator': {
    park: 'Park level. Lower blade, bucket, arm and attachment to the ground; lock the swing; chock both ends.',
    release: 'Work every lever both ways',
    reach: 'arm, tracks or attachment',
    strokes: 'Boom, arm, bucket, blade and swing slowly, short of the ends.',
    lowered: 'boom, arm and attachment down',
    stops: 'Arm, boom-down and swing: stop where they should',
  },
  'tracked loader': LOADER,
  'wheeled loader': LOADER,
  'tracked dumper': {
    park: 'Park level, the skip empty and down; where it has to stay up, its prop is in. Chock both ends.',
    release: 'Work every control both ways, that of the skip too,',
    reach: 'skip or tracks',
    strokes: 'Skip slowly up and down, short of the ends.',
    lowered: 'skip down',
    stops: 'Skip: tips and comes back, stops where it should',
  },
}

/** @param type the machine file's type */
export const kindWords = (type: string): KindWords => KINDS[type] ?? ANY
