import type { createApp } from '@sheafbook/api';
import { openRecorder, type Recorder, type Statement } from './record.ts';
import type { Seeded } from './seed.ts';

type App = ReturnType<typeof createApp>;

/** A payment as it was recorded, with the values in it that differ from one payment to the next. */
export type RecordedPayment = {
  readonly statements: readonly Statement[];
  readonly key: string;
  readonly minorUnits: number;
  readonly requestHash: string;
};

/** What the product sends to the database for each page and for a payment of each household. */
export type Recording = {
  readonly pages: ReadonlyMap<string, readonly Statement[]>;
  readonly payments: ReadonlyMap<string, RecordedPayment>;
};

export const PAGES = ['balance', 'statement'] as const;

export const pagePath = (seeded: Seeded, page: string): string =>
  `/api/storehouses/${seeded.storehouseId}/households/${seeded.treasurerHouseholdId}/${page}`;

/** `withApp` lends an app whose every statement is heard. */
export async function recordAll(
  seeded: Seeded,
  withApp: (hear: Recorder['hear'], work: (app: App) => Promise<void>) => Promise<void>,
): Promise<Recording> {
  const recorder = openRecorder();
  const pages = new Map<string, readonly Statement[]>();
  const payments = new Map<string, RecordedPayment>();
  await withApp(recorder.hear, async (app) => {
    for (const page of PAGES)
      pages.set(page, await recorder.listen(() => get(app, seeded, pagePath(seeded, page))));
    for (const [position, householdId] of seeded.householdIds.entries())
      payments.set(householdId, await recordPayment(app, { recorder, seeded, householdId, position }));
  });
  return { pages, payments };
}

async function get(app: App, seeded: Seeded, path: string): Promise<void> {
  const answer = await app.request(path, { headers: { cookie: seeded.treasurerCookie } });
  if (answer.status !== 200) throw new Error(`${path} answered ${await answer.text()}`);
}

/** A payment whose key and amount are found again in whatever was sent for it. */
async function recordPayment(
  app: App,
  of: { recorder: Recorder; seeded: Seeded; householdId: string; position: number },
): Promise<RecordedPayment> {
  const { recorder, seeded, householdId, position } = of;
  const key = `recorded-payment-${position}`;
  const minorUnits = 987_650_000 + position;
  const statements = await recorder.listen(async () => {
    const answer = await app.request(`/api/storehouses/${seeded.storehouseId}/payments`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': key, cookie: seeded.treasurerCookie },
      body: JSON.stringify({ householdId, minorUnits, till: 'bank', note: '' }),
    });
    if (answer.status !== 201) throw new Error(`a payment answered ${await answer.text()}`);
  });
  const requestHash = statements
    .flatMap(({ parameters }) => parameters)
    .find((parameter) => typeof parameter === 'string' && /^[0-9a-f]{64}$/.test(parameter));
  return { statements, key, minorUnits, requestHash: String(requestHash) };
}
