import { defineConfig } from 'vitest/config'

// One after the other: two at once would measure each other.
export default defineConfig({
  test: { include: ['test/bench/*.bench.ts'], testTimeout: 600_000, hookTimeout: 120_000, fileParallelism: false },
})
