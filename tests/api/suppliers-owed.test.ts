import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { creditClaims } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse);
});
afterAll(() => app.close());

const read = async () => bodyOf(await buy.treasurer.get(`${storehouse.path}/suppliers-owed`));
const post = async (path: string, body: object) =>
  bodyOf(await buy.treasurer.post(`${storehouse.path}${path}`, body), 201);
const millOf = ({ suppliers }: { suppliers: { supplierId: string }[] }) =>
  suppliers.find(({ supplierId }) => supplierId === buy.supplierId);

// Job map 4.4, J2 to J5: billed 523.50, claims 25.00, credit note 25.00, then 498.50 is owed and paid.
test('a bill is owed, a claim stands beside it until it is granted, and a payment brings it to nothing', async () => {
  const billed = {
    billedMinorUnits: 52_350,
    creditedMinorUnits: 0,
    paidMinorUnits: 0,
    owedMinorUnits: 52_350,
  };
  expect(millOf(await read())).toMatchObject({ ...billed, claimedMinorUnits: 2500, lastPaidOn: null });
  await creditClaims(storehouse, buy);
  expect(await read()).toMatchObject({ owedMinorUnits: 49_850, claimedMinorUnits: 0 });
  const { supplierId } = buy;
  await post('/supplier-payments', { supplierId, minorUnits: 49_850, till: 'bank', onDay: '2026-08-30' });
  expect(millOf(await read())).toMatchObject({
    billedMinorUnits: 52_350,
    creditedMinorUnits: 2500,
    paidMinorUnits: 49_850,
    owedMinorUnits: 0,
    lastPaidOn: '2026-08-30',
  });
});

test('a payment that was taken back was never made', async () => {
  const { supplierId } = buy;
  const wish = { supplierId, minorUnits: 700, till: 'bank', isPrepayment: true };
  const { entryId } = await post('/supplier-payments', wish);
  expect(await read()).toMatchObject({ owedMinorUnits: 0, prepaidMinorUnits: 700 });
  await post(`/entries/${entryId}/reversal`, { reason: 'the wrong mill' });
  expect(millOf(await read())).toMatchObject({ paidMinorUnits: 49_850, owedMinorUnits: 0 });
});

test('what was paid before its bill lessens nothing that others are owed', async () => {
  const [carrier, mill] = [await aSupplier(storehouse), await aSupplier(storehouse)];
  const opened = { of: 'supplier', supplierId: mill, balanceMinorUnits: -900, reason: 'from the old book' };
  await post('/opening-balances', opened);
  const early = { supplierId: carrier, minorUnits: 300, till: 'bank', isPrepayment: true };
  await post('/supplier-payments', early);
  const body = await read();
  expect(body).toMatchObject({ owedMinorUnits: 900, prepaidMinorUnits: 300 });
  const { rows } = bodyOf(await buy.treasurer.get(`${storehouse.path}/trial-balance`));
  const payable = rows.find(({ number }: { number: string }) => number === '2000');
  expect(body.owedMinorUnits - body.prepaidMinorUnits).toBe(
    payable.creditMinorUnits - payable.debitMinorUnits,
  );
  const csv = await buy.treasurer.get(`${storehouse.path}/suppliers-owed?format=csv`);
  expect(csv.body.trim().split('\r\n')).toHaveLength(1 + body.suppliers.length);
});
