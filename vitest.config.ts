import { defineConfig } from 'vitest/config';
import { LongestFirst } from './tests/support/longest-first.ts';

// Pure and tidy need no database and stay under a minute; books runs against a real PostgreSQL, one database a file.
export default defineConfig({
  test: {
    maxWorkers: 3, // on two cores: a test waits for the database or the browser a good part of its time
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: 'pure',
          isolate: false,
          include: ['packages/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/published/**/*.test.ts'],
        },
      },
      // Some read every source file, which takes longer than a few seconds on a machine that does other things too.
      { test: { name: 'tidy', testTimeout: 30_000, include: ['tests/tidy/*.test.ts'] } },
      {
        test: {
          name: 'books',
          // Each file has a database of its own and no module keeps state between files, so the app is loaded once a worker.
          isolate: false,
          include: [
            'tests/api/**/*.test.ts',
            'tests/races/**/*.test.ts',
            'tests/database/**/*.test.ts',
            'tests/tidy/catalogue/**/*.test.ts',
          ],
          globalSetup: ['tests/support/global-setup.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/support/global-setup.ts', 'tests/browser/support/build-setup.ts'],
          isolate: false, // as above; each file has a browser and a server of its own
          testTimeout: 180_000,
          expect: { poll: { timeout: 30_000 } }, // ends when it holds; a second is too short on a machine that does other things too
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
