import { expect, test } from 'vitest'
import { typedCommand } from '../../src/shell/typed-command.ts'

// npm's documentation: npm_lifecycle_event holds the name of the script that runs.
test.each([
  [{ npm_lifecycle_event: 'feasibility' }, 'npm run -s feasibility --'],
  [{ npm_lifecycle_event: 'test' }, 'feasibility'],
  [{}, 'feasibility'],
] as const)('%o', (env, command) => expect(typedCommand({ env })).toBe(command))
