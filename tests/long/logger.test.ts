import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const FIVE_MINUTES = 300_000;
const start = Date.UTC(2023, 0, 1);
const BAD: Readonly<Record<number, string>> = {
  17: 'oops',
  99999: '2023-01-01T00:00:00Z,400',
  200000: 'x,12',
};
const lineAt = (line: number): string =>
  BAD[line] ??
  `${new Date(start + line * FIVE_MINUTES).toISOString().slice(0, 19)}Z,${(12 + (line % 40) / 10).toFixed(1)}`;

/** A file that is nowhere as a whole: its lines are written as they are read. */
function streamOf(lines: number): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let line = 0;
  return new ReadableStream({
    pull(controller) {
      const rows: string[] = [];
      while (rows.length < 1000 && line < lines) rows.push(`${lineAt(++line)}\n`);
      if (rows.length === 0) controller.close();
      else controller.enqueue(encoder.encode(rows.join('')));
    },
  });
}

const MEGABYTE = 1024 * 1024;
/** The most memory that was in use while something ran, over what was before it. */
async function measured<Result>(run: () => Promise<Result>) {
  globalThis.gc?.();
  const before = process.memoryUsage().rss;
  let most = before;
  const watch = setInterval(() => {
    most = Math.max(most, process.memoryUsage().rss);
  }, 20);
  const from = performance.now();
  const result = await run();
  const seconds = (performance.now() - from) / 1000;
  clearInterval(watch);
  return { result, seconds: seconds.toFixed(1), megabytes: Math.round((most - before) / MEGABYTE) };
}

type How = Awaited<ReturnType<typeof measured>>;
const told = (what: string, { seconds, megabytes }: Omit<How, 'result'>) =>
  console.info(`${what}: ${seconds} s, at most ${megabytes} MB more memory than before`);

async function aPlaceOf(name: string) {
  const { caller } = await aHousehold(app, storehouse, name);
  const unknown = { isLit: null, isDamp: null, isRodentProof: null };
  const wish = { of: 'household', name: 'Cellar', kind: 'cellar', ...unknown };
  const { id } = bodyOf(await caller.post(`${storehouse.path}/places`, wish), 201);
  const send = (rest: string, lines: number) =>
    caller.post(`${storehouse.path}/places/${id}/${rest}&unit=C&dayOrder=ymd`, streamOf(lines), {
      'Content-Type': 'text/csv',
    });
  return { id, send };
}

test('of 200,000 lines with three bad ones each is named, and the rest is posted', async () => {
  const { id, send } = await aPlaceOf('Birchall');
  const trying = await measured(() => send('log-previews?badAfterLine=0', 200_000));
  told('trying 200,000 lines', trying);
  // 200,000 times 5 minutes are 694 days and 10 hours 40 minutes.
  expect(bodyOf(trying.result)).toMatchObject({ readings: 199_997, days: 695, badCount: 3 });
  expect(trying.result.body.badLines).toEqual([
    { line: 17, fault: 'no-time', text: 'oops' },
    { line: 99_999, fault: 'impossible', text: '2023-01-01T00:00:00Z,400' },
    { line: 200_000, fault: 'no-time', text: 'x,12' },
  ]);
  const taking = await measured(() => send('logs?fileName=long.csv', 200_000));
  told('taking in 200,000 lines', taking);
  expect(bodyOf(taking.result, 201).logs).toMatchObject([{ readings: 199_997, badLines: 3 }]);
  const [kept] = await app.admin`
    select count(*)::int as days, sum(readings)::int as readings from book.place_warmth where place_id = ${id}`;
  expect(kept).toEqual({ days: 695, readings: 199_997 });
});

test('four times as many lines and more come in by the same way, day by day', async () => {
  const { send } = await aPlaceOf('Corran');
  // Every 5 minutes from 2023 on: what lies after today is named as such, so the days kept are those until today.
  const trying = await measured(() => send('log-previews?badAfterLine=0', 900_000));
  told('trying 900,000 lines', trying);
  const { days, readings, badCount, lastOn } = bodyOf(trying.result);
  expect([days, lastOn, readings + badCount]).toEqual([1340, '2026-09-01', 900_000]);
});
