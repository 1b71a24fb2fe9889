import { defineConfig } from 'vitest/config';

/** What takes long: crashes under load, and long random stories. `npm run test:long`. */
export default defineConfig({
  test: {
    include: ['tests/long/**/*.test.ts'],
    globalSetup: ['tests/support/global-setup.ts', 'tests/browser/support/build-setup.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
  },
});
