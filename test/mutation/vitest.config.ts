import { defineConfig } from 'vitest/config'

/** The tests that concern formulas, circuit and costing; not the golden files, which are the tool's own output. */
export default defineConfig({
  test: {
    include: [
      'test/{formulas,circuit,costing}/**/*.test.ts',
      'test/physics-checks.test.ts',
      'test/motor-tables.test.ts',
    ],
    env: { RANDOM_MACHINES: '80' },
    testTimeout: 60_000,
  },
})
