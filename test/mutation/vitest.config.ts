import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** Slow ones, the slowest last: most mutants are dead before it comes to them. */
const SLOW = ['balance', 'oil-heat', 'intake', 'random-machines']

class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => SLOW.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`))
    return files.toSorted((one, other) => rank(one) - rank(other))
  }
}

/** The tests that concern formulas, circuit and costing; not the golden files, which are the tool's own output. */
export default defineConfig({
  test: {
    include: [
      'test/{formulas,circuit,costing}/**/*.test.ts',
      'test/physics-checks.test.ts',
      'test/motor-tables.test.ts',
    ],
    env: { RANDOM_MACHINES: '10' },
    // Every mutant starts the tests anew: without a world of its own for each file that takes half as long.
    isolate: false,
    sequence: { sequencer: QuickFirst },
    testTimeout: 60_000,
  },
})
