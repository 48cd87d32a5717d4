import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'test/**/*.test.ts'],
    testTimeout: 60_000,
    // By itself it leaves one core idle, which on two is half of them.
    maxWorkers: Math.max(1, availableParallelism()),
    // The core folders keep nothing between calls, and every test has folders of its own: no file needs modules anew.
    isolate: false,
  },
})
