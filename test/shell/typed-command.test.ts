import { expect, test } from 'vitest'
import { typedCommand, typedIn } from '../../src/shell/typed-command.ts'

// npm's documentation: npm_lifecycle_event holds the name of the script that runs.
test.each([
  [{ npm_lifecycle_event: 'feasibility' }, 'npm run -s feasibility --'],
  [{ npm_lifecycle_event: 'test' }, 'feasibility'],
  [{}, 'feasibility'],
] as const)('%o', (env, command) => expect(typedCommand({ env })).toBe(command))

// The same: INIT_CWD holds the folder in which npm was called; the script itself runs in that of the package.
test.each([
  [{ npm_lifecycle_event: 'feasibility', INIT_CWD: '/yard/marlowe' }, '/yard/marlowe'],
  [{ npm_lifecycle_event: 'feasibility' }, '/yard'],
  [{ npm_lifecycle_event: 'test', INIT_CWD: '/yard/marlowe' }, '/yard'],
  [{}, '/yard'],
] as const)('paths under %o are read from %s', (env, folder) => expect(typedIn(env, '/yard')).toBe(folder))
