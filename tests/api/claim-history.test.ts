import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { balanceOfKind, clearingOf, refusalOf, refused } from '../support/landing-books.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let claims: { torn: string; short: string };
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse);
  claims = buy.claims ?? { torn: '', short: '' };
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const historyOf = async (claimId: string) =>
  bodyOf(await buy.treasurer.get(at(`/claims/${claimId}/history`)));
const stepsOf = ({ steps }: { steps: readonly { what: string }[] }) => steps.map(({ what }) => what);
const writeOff = (because: string) =>
  buy.treasurer.post(at(`/claims/${claims.torn}/writing-off`), { because });

test('a claim tells when it was raised, when its letter was printed and how it was answered', async () => {
  expect(stepsOf(await historyOf(claims.short))).toEqual(['claim-raised']);
  const letter = await buy.treasurer.get(at(`/claims/${claims.short}/paper`));
  expect(letter.status).toBe(200);
  expect(stepsOf(await historyOf(claims.short))).toEqual(['claim-raised', 'claim-letter']);
  bodyOf(await buy.treasurer.post(at(`/claims/${claims.short}/credit`), { minorUnits: 2000 }), 201);
  const { claim, steps } = await historyOf(claims.short);
  expect(claim).toMatchObject({ outcome: 'credited', minorUnits: 2140, creditedMinorUnits: 2000 });
  expect(stepsOf({ steps })).toEqual(['claim-raised', 'claim-letter', 'claim-credited']);
  for (const { entryId, what } of steps.filter((step: { entryId: string | null }) => step.entryId)) {
    const entry = bodyOf(await buy.treasurer.get(at(`/entries/${entryId}`)));
    expect(entry).toMatchObject({ what, subjectId: claims.short });
  }
});

test('a claim that nobody answered is given up by the treasurer alone, and its cost is the buy’s again', async () => {
  const before = await clearingOf(app, buy.buyId);
  const answer = await storehouse.coordinator.post(at(`/claims/${claims.torn}/writing-off`), {
    because: 'They never wrote back.',
  });
  expect(answer.body.code).toBe('duty-missing');
  expect((await writeOff(' ')).body.code).toBe('invalid-input');
  bodyOf(await writeOff('They never wrote back.'), 201);
  expect(await clearingOf(app, buy.buyId)).toBe(before + 360);
  expect(await balanceOfKind(app, { kind: 'supplier_claim', causeId: claims.torn })).toBe(0);
  const { claim, steps } = await historyOf(claims.torn);
  expect(claim).toMatchObject({ outcome: 'written-off', creditedMinorUnits: 0 });
  expect(steps.at(-1)).toMatchObject({ what: 'claim-written-off', note: 'They never wrote back.' });
  expect(await refusalOf(app, () => writeOff('Once more.'))).toEqual(refused(409, 'claim-settled'));
});

test('claims that had their answer are listed page by page, and whole in a spreadsheet', async () => {
  const list = async (query: string) => bodyOf(await buy.treasurer.get(at(`/claims-answered${query}`)));
  const first = await list('?limit=1');
  expect(first.claims).toHaveLength(1);
  const second = await list(`?limit=1&after=${first.next}`);
  expect(second).toMatchObject({ claims: [expect.anything()], next: null });
  const found = [...first.claims, ...second.claims].map(({ id, outcome }) => [id, outcome]);
  expect(found).toEqual(
    [
      [claims.short, 'credited'],
      [claims.torn, 'written-off'],
    ].toSorted(([a = ''], [b = '']) => b.localeCompare(a)),
  );
  expect((await list('?format=csv')).trim().split('\r\n')).toHaveLength(3);
});
