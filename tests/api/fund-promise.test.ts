import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { itemBody } from '../support/equipment.ts';
import { refusalOf, type TestBooks, theBooks } from '../support/money-books.ts';

// Job map 3.2, question 9: what is in the store fund, and what of it is promised.
let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  // 120.00 that an earlier year left in the fund, 30.00 given this year.
  const left = { of: 'bank', balanceMinorUnits: 12_000, reason: 'from the old book' };
  bodyOf(await books.treasurer.post(`${books.path}/opening-balances`, left), 201);
  bodyOf(await books.treasurer.post(`${books.path}/fund-receipts`, { minorUnits: 3000, till: 'bank' }), 201);
});
afterAll(() => app.close());

const at = (path: string) => `${books.path}/fund-promises${path}`;
const fund = async () => bodyOf(await books.reviewer.get(at('')));
const promise = (minorUnits: number, more: object = {}, caller = books.coordinator) =>
  caller.post(at(''), { minorUnits, purpose: 'new seals', ...more });
const stand = async () => {
  const { heldMinorUnits, yearMinorUnits, promisedMinorUnits, freeMinorUnits } = await fund();
  return { heldMinorUnits, yearMinorUnits, promisedMinorUnits, freeMinorUnits };
};

test('what is promised is no longer free, and what is paid for it is not counted twice', async () => {
  const sealer = itemBody({ name: 'Travelling sealer' });
  const item = bodyOf(await books.coordinator.post(`${books.path}/equipment`, sealer), 201);
  const made = bodyOf(await promise(4000, { itemId: item.id }), 201);
  expect(made).toMatchObject({ state: 'open', item: 'Travelling sealer', entryId: null, overrideReason: '' });
  expect(await stand()).toEqual({
    ...{ heldMinorUnits: 12_000, yearMinorUnits: 3000 },
    ...{ promisedMinorUnits: 4000, freeMinorUnits: 11_000 },
  });
  const paid = bodyOf(
    await books.treasurer.post(at(`/${made.id}/payment`), { minorUnits: 3800, till: 'bank' }),
  );
  expect(paid).toMatchObject({ state: 'fulfilled', entryId: expect.any(String) });
  expect(await stand()).toEqual({
    ...{ heldMinorUnits: 12_000, yearMinorUnits: -800 },
    ...{ promisedMinorUnits: 0, freeMinorUnits: 11_200 },
  });
  const entry = bodyOf(await books.treasurer.get(`${books.path}/entries/${paid.entryId}`));
  expect(entry).toMatchObject({ what: 'fund-spent', note: 'new seals' });
  // Taken back, the promise stands again; paid anew, it is fulfilled again.
  bodyOf(
    await books.treasurer.post(`${books.path}/entries/${paid.entryId}/reversal`, { reason: 'a slip' }),
    201,
  );
  expect(await stand()).toMatchObject({ promisedMinorUnits: 4000, freeMinorUnits: 11_000 });
  bodyOf(await books.treasurer.post(at(`/${made.id}/payment`), { minorUnits: 3900, till: 'bank' }));
  expect(await stand()).toMatchObject({ promisedMinorUnits: 0, freeMinorUnits: 11_100 });
});

test('a promise may be fulfilled by an entry that stands, such as a write-off, and by that one alone', async () => {
  const [first, second] = [bodyOf(await promise(500), 201), bodyOf(await promise(500), 201)];
  const debtor = {
    of: 'household',
    householdId: books.dell.householdId,
    balanceMinorUnits: 400,
    reason: 'old',
  };
  const opened = bodyOf(await books.treasurer.post(`${books.path}/opening-balances`, debtor), 201);
  const debt = { householdId: books.dell.householdId, minorUnits: 400, reason: 'moved away' };
  const { entryId } = bodyOf(await books.treasurer.post(`${books.path}/write-offs`, debt), 201);
  const { entryNo } = bodyOf(await books.treasurer.get(`${books.path}/entries/${entryId}`));
  const fulfil = (id: string, no: number) => books.treasurer.post(at(`/${id}/fulfilment`), { entryNo: no });
  for (const [no, code] of [
    [entryNo + 1000, 'thing-not-found'],
    [opened.entryNo, 'invalid-input'], // it put money into the fund
  ] as const)
    expect(await refusalOf(app, () => fulfil(first.id, no))).toMatchObject({
      ...{ code, fields: ['entryNo'], isUnchanged: true },
    });
  expect(bodyOf(await fulfil(first.id, entryNo))).toMatchObject({ state: 'fulfilled', entryNo });
  for (const id of [first.id, second.id])
    expect(await refusalOf(app, () => fulfil(id, entryNo))).toMatchObject({
      ...{ status: 409, code: 'already-there', isUnchanged: true },
    });
  bodyOf(await books.coordinator.post(at(`/${second.id}/withdrawal`), { reason: 'not needed' }));
});

test('more than is free needs a reason, which stands among the exceptions', async () => {
  const { freeMinorUnits } = await fund();
  const tooMuch = freeMinorUnits + 1;
  expect(await refusalOf(app, () => promise(tooMuch))).toMatchObject({
    ...{ status: 409, code: 'not-enough-left', fields: ['minorUnits'], isUnchanged: true },
  });
  const reason = 'The levy of the autumn buy comes in before the bill.';
  const made = bodyOf(await promise(tooMuch, { overrideReason: reason }), 201);
  expect(await stand()).toMatchObject({ freeMinorUnits: -1 });
  const { overrides } = bodyOf(await books.reviewer.get(`${books.path}/exceptions`));
  expect(overrides).toContainEqual(
    expect.objectContaining({ kind: 'fund-overpromised', minorUnits: tooMuch, reason }),
  );
  const withdrawn = bodyOf(
    await books.treasurer.post(at(`/${made.id}/withdrawal`), { reason: 'A cheaper one' }),
  );
  expect(withdrawn).toMatchObject({ state: 'withdrawn', withdrawnBecause: 'A cheaper one' });
  expect(await stand()).toMatchObject({ promisedMinorUnits: 0, freeMinorUnits });
  const pay = () => books.treasurer.post(at(`/${made.id}/payment`), { minorUnits: 5, till: 'bank' });
  expect(await refusalOf(app, pay)).toMatchObject({ code: 'already-there', isUnchanged: true });
});

test('two promises at the same moment never share the same free money', async () => {
  const { freeMinorUnits } = await fund();
  const both = await Promise.all([promise(freeMinorUnits), promise(freeMinorUnits, {}, books.treasurer)]);
  expect(both.map(({ status }) => status).toSorted()).toEqual([201, 409]);
  expect(await stand()).toMatchObject({ freeMinorUnits: 0 });
});

test('a promise for a thing of another storehouse is refused', async () => {
  const unknown = () =>
    promise(1, { itemId: '01890a5d-ac96-774b-bcce-b302099a8057', overrideReason: 'why not' });
  expect(await refusalOf(app, unknown)).toMatchObject({ fields: ['itemId'], isUnchanged: true });
});
