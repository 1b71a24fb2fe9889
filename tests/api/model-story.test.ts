import fc from 'fast-check';
import { afterAll, beforeAll, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { somePlot, tell } from '../support/story/story.ts';
import { aCast, type Cast } from '../support/story/story-world.ts';

let app: TestApp;
let cast: Cast;
beforeAll(async () => {
  app = await openTestApp();
  cast = await aCast(app);
});
afterAll(() => app.close());

// The same fifteen stories each time, so that a red run can be run again; `npm run test:long` tells new ones.
test('whatever people do, in whatever order, the book holds after every step', {
  timeout: 600_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(somePlot(40), async (plot) => {
      await tell(cast, plot);
    }),
    { numRuns: 15, seed: Number(process.env.STORY_SEED ?? 1790), endOnFailure: false },
  );
});
