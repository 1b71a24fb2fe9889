import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { aFixedBuy } from '../support/fixed-buy.ts';
import { aLandedBuy, grainInvoice, type TestLandedBuy } from '../support/landed-buy.ts';
import { balanceOfKind, clearingOf, refusalOf, refused } from '../support/landing-books.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const NO_SUCH_ID = '01890a5d-ac96-774b-bcce-b302099a8057';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse, { hasClaims: false, hasInvoice: false });
});
afterAll(() => app.close());

const enter =
  (change: Record<string, unknown> = {}, caller: Caller = buy.treasurer, path = buy.path) =>
  () =>
    caller.post(`${path}/invoices`, { ...grainInvoice(buy), ...change });
const freight = (minorUnits: number) => [{ kind: 'freight', minorUnits }];

// Job map 4.4, J2: goods 435.50 and freight 88.00; debit the buy's clearing, credit the supplier.
test('an invoice of 523.50 is what the buy costs and the supplier is owed', async () => {
  const before = await balanceOfKind(app, { kind: 'supplier', ownerId: buy.supplierId });
  const invoice = bodyOf(await enter({ number: 'M-2026-17', foreignNote: 'Billed as 712.00 CAD.' })(), 201);
  expect(invoice).toMatchObject({ number: 'M-2026-17', minorUnits: 52_350, voidedAt: null });
  expect(invoice.lines).toHaveLength(4);
  expect(await clearingOf(app, buy.buyId)).toBe(52_350);
  expect(await balanceOfKind(app, { kind: 'supplier', ownerId: buy.supplierId })).toBe(before - 52_350);
  const { invoices } = bodyOf(await buy.treasurer.get(`${buy.path}/invoices`));
  expect(invoices).toMatchObject([{ id: invoice.id, foreignNote: 'Billed as 712.00 CAD.' }]);
  const csv = await buy.treasurer.get(`${buy.path}/invoices?format=csv`);
  expect(csv.body.split('\r\n')).toHaveLength(6); // a heading, four lines, and the end of the last
});

test('an invoice of the same number is entered once, however many enter it at once', async () => {
  expect(await refusalOf(app, enter({ number: 'M-2026-17' }))).toEqual(
    refused(409, 'already-there', 'number'),
  );
  expect(await refusalOf(app, enter({ number: ' M-2026-17 ' }))).toEqual(
    refused(409, 'already-there', 'number'),
  );
  const clearing = await clearingOf(app, buy.buyId);
  const answers = await Promise.all([1, 2, 3].map(enter({ number: 'M-2026-18', lines: freight(500) })));
  expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 409, 409]);
  expect(await clearingOf(app, buy.buyId)).toBe(clearing + 500);
});

test('a carrier bills the freight under a number of its own', async () => {
  const carrier = await aSupplier(storehouse, 'Valley Freight');
  bodyOf(await enter({ supplierId: carrier, number: 'M-2026-17', lines: freight(1234) })(), 201);
  expect(await balanceOfKind(app, { kind: 'supplier', ownerId: carrier })).toBe(-1234);
});

test('an invoice entered by mistake is voided once: its entry is undone and its number free again', async () => {
  const clearing = await clearingOf(app, buy.buyId);
  const { id } = bodyOf(await enter({ number: 'M-2026-19', lines: freight(9_999) })(), 201);
  const take = (reason: string) => () =>
    buy.treasurer.post(`${storehouse.path}/invoices/${id}/void`, { reason });
  expect(await refusalOf(app, take(''))).toEqual(refused(400, 'invalid-input', 'reason'));
  expect(bodyOf(await take('That was another buy’s.')(), 201)).toMatchObject({
    minorUnits: 9_999,
    voidReason: 'That was another buy’s.',
  });
  expect(await clearingOf(app, buy.buyId)).toBe(clearing);
  const entries = await app.admin`select e.what, r.what as undoes from book.entry e
    left join book.entry r on r.storehouse_id = e.storehouse_id and r.entry_id = e.reverses_id
    where e.subject_id = ${id} order by e.entry_no`;
  expect(entries).toMatchObject([
    { what: 'supplier-invoiced', undoes: null },
    { what: 'invoice-voided', undoes: 'supplier-invoiced' },
  ]);
  expect(await refusalOf(app, take('Again.'))).toEqual(refused(409, 'already-reversed'));
  bodyOf(await enter({ number: 'M-2026-19', lines: freight(99) })(), 201);
  expect(await clearingOf(app, buy.buyId)).toBe(clearing + 99);
});

test.for([
  { why: 'bills nothing', change: { lines: freight(0) }, field: 'lines.0.minorUnits' },
  { why: 'bills less than nothing', change: { lines: freight(-1) }, field: 'lines.0.minorUnits' },
  { why: 'bills half a cent', change: { lines: freight(10.5) }, field: 'lines.0.minorUnits' },
  { why: 'bills more than a number holds', change: { lines: freight(1e300) }, field: 'lines.0.minorUnits' },
  { why: 'has no line', change: { lines: [] }, field: 'lines' },
  { why: 'has no number', change: { number: '  ' }, field: 'number' },
  { why: 'is of a day that does not exist', change: { onDay: '2026-02-29' }, field: 'onDay' },
  { why: 'is of a day to come', change: { onDay: '2026-09-02' }, field: 'onDay' },
  { why: 'is due before its day', change: { onDay: '2026-09-01', dueOn: '2026-08-31' }, field: 'dueOn' },
  { why: 'is due on a day that does not exist', change: { dueOn: '2026-02-29' }, field: 'dueOn' },
  {
    why: 'bills goods of no food',
    change: { lines: [{ kind: 'goods', minorUnits: 5 }] },
    field: 'lines.0.buyLineId',
  },
  {
    why: 'bills the freight of one food',
    change: { lines: [{ kind: 'freight', buyLineId: NO_SUCH_ID, minorUnits: 5 }] },
    field: 'lines.0.buyLineId',
  },
  { why: 'has an unknown field', change: { due: '2026-10-01' }, field: 'due' },
])('an invoice that $why is refused', async ({ change, field }) => {
  expect(await refusalOf(app, enter(change))).toEqual(refused(400, 'invalid-input', field));
});

test('lines that together pass what the book can hold are refused', async () => {
  const lines = [...freight(2 ** 53 - 1), ...freight(2)];
  expect(await refusalOf(app, enter({ lines }))).toEqual(refused(422, 'amount-too-large', 'lines'));
  // Alone it fits, but not on top of what the buy has cost already.
  expect(await refusalOf(app, enter({ lines: freight(2 ** 53 - 1) }))).toEqual(
    refused(422, 'amount-too-large'),
  );
});

test('an invoice in another currency is refused; its price is a note', async () => {
  expect(await refusalOf(app, enter({ currency: 'CAD' }))).toEqual(
    refused(422, 'currency-mixed', 'currency'),
  );
  bodyOf(await enter({ currency: 'USD', lines: freight(1) })(), 201);
});

test('an invoice bills foods of its own buy, from a supplier that is here', async () => {
  const foreign = [{ kind: 'goods', buyLineId: NO_SUCH_ID, minorUnits: 5 }];
  expect(await refusalOf(app, enter({ lines: foreign }))).toEqual(
    refused(404, 'thing-not-found', 'lines.0.buyLineId'),
  );
  expect(await refusalOf(app, enter({ supplierId: NO_SUCH_ID }))).toEqual(refused(404, 'thing-not-found'));
  const nowhere = `${storehouse.path}/buys/${NO_SUCH_ID}`;
  expect(await refusalOf(app, enter({}, buy.treasurer, nowhere))).toEqual(refused(404, 'thing-not-found'));
});

test('an invoice is entered by treasurer or coordinator, once something is ordered', async () => {
  expect(await refusalOf(app, enter({}, buy.households.Dell.caller))).toEqual(refused(403, 'duty-missing'));
  const fixed = await aFixedBuy(app, storehouse, { households: buy.households });
  const early = { supplierId: fixed.supplierId, lines: freight(5) };
  expect(await refusalOf(app, enter(early, buy.treasurer, fixed.path))).toEqual(
    refused(409, 'buy-stage-wrong'),
  );
});
