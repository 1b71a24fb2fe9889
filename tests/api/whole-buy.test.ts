import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { GRAIN_DEPOSITS } from '../support/fixed-buy.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { balancesOf, chargeOf, creditClaims, sharesOf, splitGrain } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// One buy from quote to closed, through the routes alone; the tests are its stages and run in order. Every figure is the
// job map's: section 4.3 (awards and charges), 4.4 (journal), 4.7 (late credit), 5.5 and 6 (grams).
let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let splitIds: Record<'wheat' | 'oats' | 'beans', string>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse);
  splitIds = await splitGrain(storehouse, buy);
});
afterAll(() => app.close());

const sheetOf = async (food: 'wheat' | 'oats' | 'beans') =>
  bodyOf(await storehouse.coordinator.get(`${storehouse.path}/splits/${splitIds[food]}`));
const awardsOf = (sheet: { shares: { name: string; awardGrams: number }[] }) =>
  Object.fromEntries(sheet.shares.map(({ name, awardGrams }) => [name, awardGrams]));

/** The clearing account after each entry that touched it. */
async function clearingPath(): Promise<number[]> {
  const rows = await app.admin<{ balance: string }[]>`
    select sum(sum(case when m.destination_id = a.account_id then m.amount else -m.amount end)) over (order by e.entry_no)
      as balance
    from book.account a join book.movement m on a.account_id in (m.source_id, m.destination_id)
    join book.entry e on e.entry_id = m.entry_id
    where a.kind = 'buy_clearing' and a.cause_id = ${buy.buyId} group by e.entry_no order by e.entry_no`;
  return rows.map((row) => Number(row.balance));
}

test('short wheat goes by equal awards, short beans in proportion, and nobody goes short of oats', async () => {
  // 115, 100, 50 and 30 lb of wheat; 40, 28, 20 and 12 lb of beans are 18,144, 12,700.8, 9,072 and 5,443.2 g.
  expect(awardsOf(await sheetOf('wheat'))).toEqual({
    Ashdown: 52_164,
    Birchall: 45_360,
    Corran: 22_680,
    Dell: 13_608,
  });
  expect(awardsOf(await sheetOf('oats'))).toEqual({
    Ashdown: 13_608,
    Birchall: 18_144,
    Corran: 31_752,
    Dell: 4_536,
  });
  const beans = await sheetOf('beans');
  expect(awardsOf(beans)).toEqual({ Ashdown: 18_144, Birchall: 12_701, Corran: 9072, Dell: 5443 });
  const birchall = beans.shares.find((share: { name: string }) => share.name === 'Birchall');
  expect(birchall).toMatchObject({ exactAward: '63504/5', gotSpareGram: true });
});

test('every gram of every bag is somebody’s, and no bag is cut more than it must be', async () => {
  for (const food of ['wheat', 'oats', 'beans'] as const) {
    const sheet = await sheetOf(food);
    const pieces = sheet.shares.flatMap(
      (share: { pieces: { bagId: string; grams: number }[] }) => share.pieces,
    );
    for (const bag of buy.bags[food]) {
      const ofBag = pieces.filter((piece: { bagId: string }) => piece.bagId === bag.id);
      const grams = ofBag.reduce((sum: number, piece: { grams: number }) => sum + piece.grams, 0);
      expect(grams).toBe(bag.netGrams);
    }
    expect(sheet).toMatchObject({ isFewestPieces: true, pieceCount: pieces.length });
  }
});

test('each kept split comes out the same, to the byte, when it is run again', async () => {
  for (const splitId of Object.values(splitIds)) {
    const again = await storehouse.coordinator.get(`${storehouse.path}/splits/${splitId}/re-run`);
    expect(again.body).toMatchObject({ id: splitId, isSame: true, methodVersion: 1 });
  }
});

test('sharing out charges every cent of the bills, line by line', async () => {
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(sharesOf(charges, `goods:${buy.wheat}`)).toEqual({
    Ashdown: 8280,
    Birchall: 7200,
    Corran: 3600,
    Dell: 2160,
  });
  expect(sharesOf(charges, `goods:${buy.oats}`)).toEqual({
    Ashdown: 2250,
    Birchall: 3000,
    Corran: 5250,
    Dell: 750,
  });
  expect(sharesOf(charges, `goods:${buy.beans}`)).toEqual({
    Ashdown: 3424,
    Birchall: 2397,
    Corran: 1712,
    Dell: 1027,
  });
  expect(sharesOf(charges, 'freight:by-weight')).toEqual({
    Ashdown: 1494,
    Birchall: 1356,
    Corran: 1130,
    Dell: 420,
  });
  const perHousehold = { Ashdown: 1100, Birchall: 1100, Corran: 1100, Dell: 1100 };
  expect(sharesOf(charges, 'freight:per-household')).toEqual(perHousehold);
  expect(chargeOf(charges)).toEqual({ Ashdown: 16_548, Birchall: 15_053, Corran: 12_792, Dell: 5457 });
  expect(charges).toMatchObject({ stage: 'shared-out', chargedMinorUnits: 49_850, clearingMinorUnits: 0 });
});

test('the odd cents fall by the largest remainder', async () => {
  const { lines } = bodyOf(await storehouse.coordinator.get(`${buy.path}/charges`));
  const spares = lines.flatMap(
    (line: { costLine: string; shares: { name: string; gotSpareUnit: boolean }[] }) =>
      line.shares
        .filter((share) => share.gotSpareUnit)
        .map((share) => `${line.costLine.split(':')[0]} ${share.name}`),
  );
  expect(spares).toEqual(['goods Birchall', 'freight Ashdown', 'freight Dell']); // the starred cents of section 4.3
});

test('charges, splits and pick-ups come as CSV too', async () => {
  const csv = async (list: string) =>
    (await storehouse.coordinator.get(`${buy.path}/${list}?format=csv`)).body.trim().split('\r\n');
  expect(await csv('charges')).toHaveLength(1 + 5 * 4); // a header, and five cost lines for four households
  expect(await csv('splits')).toContain('beans-black,1,proportional,,1,Ashdown,,22680,18144,18144');
  expect(await csv('pick-ups')).toEqual(['']);
});

test('the clearing account goes from the claims over the bills to nothing', async () => {
  // Claims of 3.60 and 21.40 are raised before the invoice of 523.50 comes; then 498.50 is charged.
  expect(await clearingPath()).toEqual([-360, -2500, 49_850, 0]);
});

test('deposits are applied, and each household owes the rest', async () => {
  expect(await balancesOf(app, buy.households)).toMatchObject({
    Ashdown: 9348,
    Birchall: 8753,
    Corran: 7492,
    Dell: 3157,
    bank: Object.values(GRAIN_DEPOSITS).reduce((sum, deposit) => sum + deposit, 0),
    supplier: -52_350,
    supplier_claim: 2500,
  });
});

test('the buy closes once the claims are settled, and only by the treasurer', async () => {
  const early = await buy.treasurer.post(`${buy.path}/closing`);
  expect([early.status, early.body.code]).toEqual([409, 'buy-guard-unmet']);
  expect(early.body.missing).toMatchObject([{ code: 'claim-open', count: 2 }]);
  await creditClaims(storehouse, buy);
  expect((await storehouse.coordinator.post(`${buy.path}/closing`)).body.code).toBe('duty-missing');
  const closed = bodyOf(await buy.treasurer.post(`${buy.path}/closing`), 201);
  expect(closed).toMatchObject({ stage: 'closed', isReady: true, clearingMinorUnits: 0, unassignedGrams: 0 });
});

test('every account is at nothing once the supplier and the households have paid', async () => {
  const payment = { supplierId: buy.supplierId, minorUnits: 49_850, till: 'bank', invoiceId: buy.invoiceId };
  bodyOf(await buy.treasurer.post(`${storehouse.path}/supplier-payments`, payment), 201);
  for (const [name, minorUnits] of [
    ['Ashdown', 9348],
    ['Birchall', 8753],
    ['Corran', 7492],
    ['Dell', 3157],
  ] as const) {
    const { householdId } = buy.households[name];
    bodyOf(
      await buy.treasurer.post(`${storehouse.path}/payments`, { householdId, minorUnits, till: 'bank' }),
      201,
    );
  }
  expect(await balancesOf(app, buy.households)).toEqual({});
});

test('the database holds the clearing account and the deposits at nothing from then on', async () => {
  const accounts = await app.admin<{ kind: string; closed: boolean }[]>`
    select kind, closed from book.account where cause_id = ${buy.buyId} order by kind`;
  expect(accounts).toHaveLength(5);
  expect(accounts.every((account) => account.closed)).toBe(true);
});

test('goodwill of 4.00 on the wheat, after the close, comes back by the wheat’s own weights', async () => {
  const { lines } = bodyOf(await buy.treasurer.get(`${buy.path}/charges`));
  const wheat = lines.find((line: { costLine: string }) => line.costLine === `goods:${buy.wheat}`);
  const credit = { chargeLineId: wheat.id, minorUnits: 400, till: 'bank', reason: 'Goodwill of the mill.' };
  const charges = bodyOf(await buy.treasurer.post(`${buy.path}/late-credits`, credit), 201);
  expect(sharesOf(charges, `late:goods:${buy.wheat}`)).toEqual({
    Ashdown: -156,
    Birchall: -135,
    Corran: -68,
    Dell: -41,
  });
  expect(await balancesOf(app, buy.households)).toEqual({
    bank: 400,
    Ashdown: -156,
    Birchall: -135,
    Corran: -68,
    Dell: -41,
  });
  expect(charges).toMatchObject({ stage: 'closed', clearingMinorUnits: 0 });
});
