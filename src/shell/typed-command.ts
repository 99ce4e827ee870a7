/** The command as whoever started it has to type it. */
import type { World } from './world.ts'

/** npm names the script that it runs in the environment; from a clone that script is the way in. */
export const typedCommand = ({ env }: Pick<World, 'env'>): string =>
  env.npm_lifecycle_event === 'feasibility' ? 'npm run -s feasibility --' : 'feasibility'
