import { defineConfig } from 'vitest/config';

/** What needs a machine of one's own: root on Linux. `npm run test:machine`. */
export default defineConfig({
  test: { include: ['tests/machine/**/*.test.ts'], fileParallelism: false, testTimeout: 120_000 },
});
