/** Where the tool itself lies. This file and its built copy are equally deep, and so must stay where they are. */
import { fileURLToPath } from 'node:url'

/** Folder of the package: templates and demo scenarios are in it. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url))

/** Folder of the code that runs: src, or dist where it is built. */
export const CODE = fileURLToPath(new URL('../', import.meta.url))
