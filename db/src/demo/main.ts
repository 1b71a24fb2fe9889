import { parseArgs } from 'node:util';
import { StartRefusal } from '../refusal.ts';
import { listFailures } from './checks.ts';
import { openDemo } from './open-demo.ts';
import { readable } from './readable.ts';
import { tellStory } from './story.ts';
import { sumUp } from './summary.ts';
import { openTeller } from './teller.ts';
import { withThrowawayDatabase } from './throwaway.ts';

// `npm run demo` opens the demo for trying out. With `-- --once` the story is told in a fresh database that goes away
// again, and summed up; with `-- --once --json` as one JSON object on standard output, everything else on standard error.

/** Tells the story once and sums it up. False when any check fails. */
async function tellAndSumUp(isJson: boolean): Promise<boolean> {
  const { summary, evidence } = await withThrowawayDatabase(async (database) => {
    const { cast, buy } = await tellStory(openTeller(database, (line) => console.error(line)));
    return sumUp(database.db, cast, buy.buyId);
  });
  const failures = listFailures(summary, evidence);
  for (const failure of failures) console.error(`FAILS: ${failure}`);
  console.log(isJson ? JSON.stringify(summary, null, 2) : readable(summary));
  return failures.length === 0;
}

const OPTIONS = {
  once: { type: 'boolean', default: false },
  json: { type: 'boolean', default: false },
} as const;

function readOptions() {
  try {
    return parseArgs({ options: OPTIONS }).values;
  } catch (error) {
    throw new StartRefusal(
      `The demo knows --once and --json alone. ${error instanceof Error ? error.message : ''}`,
    );
  }
}

async function run(): Promise<void> {
  const { once, json } = readOptions();
  if (!once && json) throw new StartRefusal('--json sums up one telling, so it goes with --once.');
  if (!once) return openDemo();
  const isSound = await tellAndSumUp(json);
  process.exitCode = isSound ? 0 : 1;
}

run().catch((error: unknown) => {
  console.error(error instanceof StartRefusal ? error.message : error);
  process.exitCode = 1;
});
