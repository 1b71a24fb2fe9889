import { availableParallelism, cpus } from 'node:os';
import { timeCalculations } from './calculations.ts';
import { type Asker, type Pair, startAsker, takeTurns } from './compare.ts';
import { compareImport } from './importing.ts';
import { timeLabels } from './labels.ts';
import { type Bench, openBench } from './open-bench.ts';
import { type PAGES, pagePath } from './recording.ts';
import { medianOf, type Row, tableText } from './table.ts';

// `npm run bench`: what the product costs beside the same SQL sent bare, side by side in one run, and how long the large
// calculations take. It prints and asserts nothing, since a figure of one machine is no test on another.
const ROUNDS = 6;
const ROUND_MILLISECONDS = 700;

const bench = await openBench();
const asker = startAsker();
try {
  const startedAtBytes = process.memoryUsage().rss;
  const rows = [
    ...(await comparePage(bench, asker, { page: 'balance', isPromised: true })),
    ...(await comparePage(bench, asker, { page: 'statement', isPromised: false })),
    ...(await comparePosting(bench, asker)),
    ...(await compareImport(bench)),
    { what: 'memory of the server before', figures: [startedAtBytes / 1e6], unit: 'MB' as const },
    { what: 'memory of the server after', figures: [process.memoryUsage().rss / 1e6], unit: 'MB' as const },
    ...(await timeCalculations()),
    ...(await timeLabels()),
  ];
  console.log(
    `${bench.server}; Node ${process.version}; ${availableParallelism()} × ${cpus()[0]?.model ?? '?'}\n`,
  );
  console.log(tableText(rows));
} finally {
  asker.end();
  await bench.close();
}

async function comparePage(
  bench: Bench,
  asker: Asker,
  { page, isPromised }: { page: (typeof PAGES)[number]; isPromised: boolean },
): Promise<Row[]> {
  const { port, treasurerCookie: cookie } = bench;
  const what = `household page (${page}, ${bench.pages.get(page)?.length} SQL)`;
  const load = { port, cookie, milliseconds: ROUND_MILLISECONDS };
  return compare(what, isPromised ? 70 : undefined, (clients) =>
    takeTurns(
      ROUNDS,
      () => asker.ask({ ...load, path: pagePath(bench, page), clients }),
      () => asker.ask({ ...load, path: `/bare/pages/${page}`, clients }),
    ),
  );
}

async function comparePosting(bench: Bench, asker: Asker): Promise<Row[]> {
  const { port, storehouseId, householdIds, treasurerCookie: cookie, payments } = bench;
  let firstNumber = 1_000_000;
  const ask = (path: string, clients: number) => {
    firstNumber += 100_000; // no two payments of a bench are alike
    const load = { port, cookie, path, clients, milliseconds: ROUND_MILLISECONDS };
    return asker.ask({ ...load, payments: { householdIds, firstNumber } });
  };
  const what = `posting (a payment, ${payments.get(householdIds[0] ?? '')?.statements.length} SQL)`;
  return compare(what, 60, (clients) =>
    takeTurns(
      ROUNDS,
      () => ask(`/api/storehouses/${storehouseId}/payments`, clients),
      () => ask('/bare/payments', clients),
    ),
  );
}

async function compare(
  what: string,
  atLeast: number | undefined,
  measure: (clients: number) => Promise<Pair[]>,
): Promise<Row[]> {
  const rows: Row[] = [];
  for (const clients of [1, 8]) {
    const pairs = await measure(clients);
    const side = (of: 'ours' | 'bare') => pairs.map((pair) => pair[of].perSecond);
    const p50 = (of: 'ours' | 'bare') => medianOf(pairs.map((pair) => pair[of].p50)).toFixed(2);
    const name = `${what}, ${clients} client${clients > 1 ? 's' : ''}`;
    rows.push(
      {
        what: `${name}: ours to bare`,
        figures: pairs.map(({ ours, bare }) => (100 * ours.perSecond) / bare.perSecond),
        unit: '%',
        ...(atLeast === undefined ? {} : { promise: { atLeast } }),
      },
      { what: `  ours, half within ${p50('ours')} ms`, figures: side('ours'), unit: '/s' },
      { what: `  bare, half within ${p50('bare')} ms`, figures: side('bare'), unit: '/s' },
    );
  }
  return rows;
}
