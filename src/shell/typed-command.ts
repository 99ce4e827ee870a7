/** The command as whoever started it has to type it. */
import type { World } from './world.ts'

const isNpmScript = (env: World['env']): boolean => env.npm_lifecycle_event === 'feasibility'

/** npm names the script that it runs in the environment; from a clone that script is the way in. */
export const typedCommand = ({ env }: Pick<World, 'env'>): string =>
  isNpmScript(env) ? 'npm run -s feasibility --' : 'feasibility'

/**
 * The folder that typed paths are read from: npm runs its scripts in the folder of the package, and names the one that it was
 * called in.
 */
export const typedIn = (env: World['env'], cwd: string): string => (isNpmScript(env) ? (env.INIT_CWD ?? cwd) : cwd)
