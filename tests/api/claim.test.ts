import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { aFixedBuy, type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aLandedBuy, claimGrain, type TestLandedBuy } from '../support/landed-buy.ts';
import { balanceOfKind, clearingOf, refusalOf, refused } from '../support/landing-books.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const NO_SUCH_ID = '01890a5d-ac96-774b-bcce-b302099a8057';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const supplierOwes = (buy: TestLandedBuy) =>
  balanceOfKind(app, { kind: 'supplier', ownerId: buy.supplierId });
const claimed = (claimId: string) => balanceOfKind(app, { kind: 'supplier_claim', causeId: claimId });

// Job map 4.4, J2 to J4: invoice 523.50, claims 25.00, credit note 25.00; the supplier is then owed 498.50.
describe('the claims of the whole buy', () => {
  let buy: TestLandedBuy;
  let claims: { torn: string; short: string };
  beforeAll(async () => {
    buy = await aLandedBuy(app, storehouse, { households });
    claims = buy.claims ?? { torn: '', short: '' };
  });

  test('stand against the supplier and take 25.00 off the buy', async () => {
    expect([await claimed(claims.torn), await claimed(claims.short)]).toEqual([360, 2140]);
    expect(await clearingOf(app, buy.buyId)).toBe(52_350 - 2_500);
    expect(await supplierOwes(buy)).toBe(-52_350);
  });

  test('are credited by a note, and the supplier is owed that much less', async () => {
    const credit = (id: string, minorUnits: number) =>
      buy.treasurer.post(at(`/claims/${id}/credit`), { minorUnits });
    const torn = bodyOf(await credit(claims.torn, 360), 201);
    expect(torn).toMatchObject({ state: 'credited', creditedMinorUnits: 360, settledOn: '2026-09-01' });
    bodyOf(await credit(claims.short, 2140), 201);
    expect([await claimed(claims.torn), await claimed(claims.short)]).toEqual([0, 0]);
    expect(await supplierOwes(buy)).toBe(-49_850);
    expect(await clearingOf(app, buy.buyId)).toBe(49_850);
  });

  test('are settled once', async () => {
    const credit = () => buy.treasurer.post(at(`/claims/${claims.torn}/credit`), { minorUnits: 360 });
    expect(await refusalOf(app, credit)).toEqual(refused(409, 'claim-settled'));
    const refusal = () => buy.treasurer.post(at(`/claims/${claims.torn}/refusal`), { because: 'Too late.' });
    expect(await refusalOf(app, refusal)).toEqual(refused(409, 'claim-settled'));
  });
});

describe('a claim', () => {
  let buy: TestLandedBuy;
  beforeAll(async () => {
    buy = await aLandedBuy(app, storehouse, { households, hasClaims: false });
  });

  test('granted in part, in money, puts the rest back on the buy in the same entry', async () => {
    const { short } = await claimGrain(buy);
    const [bank, clearing] = [await balanceOfKind(app, { kind: 'bank' }), await clearingOf(app, buy.buyId)];
    const grant = { minorUnits: 1500, till: 'bank', note: 'They met us half-way.' };
    const settled = bodyOf(await buy.treasurer.post(at(`/claims/${short}/credit`), grant), 201);
    expect(settled).toMatchObject({ minorUnits: 2140, state: 'credited', creditedMinorUnits: 1500 });
    expect(await balanceOfKind(app, { kind: 'bank' })).toBe(bank + 1500);
    expect(await clearingOf(app, buy.buyId)).toBe(clearing + 640);
    expect(await claimed(short)).toBe(0);
    const entries =
      await app.admin`select what, note from book.entry where subject_id = ${short} order by entry_no`;
    expect(entries).toMatchObject([
      { what: 'claim-raised' },
      { what: 'claim-credited', note: 'They met us half-way.' },
    ]);
  });

  test('refused while the buy is open is a cost of the buy again', async () => {
    const { claims } = bodyOf(await buy.treasurer.get(`${buy.path}/claims`));
    const torn = claims.find((claim: { kind: string }) => claim.kind === 'damage');
    const clearing = await clearingOf(app, buy.buyId);
    const refusal = { because: 'Signed for as whole.' };
    expect(bodyOf(await buy.treasurer.post(at(`/claims/${torn.id}/refusal`), refusal), 201)).toMatchObject({
      state: 'refused',
      creditedMinorUnits: 0,
    });
    expect(await clearingOf(app, buy.buyId)).toBe(clearing + 360);
  });

  test('that outlives its buy is a loss of the storehouse when it is refused', async () => {
    const { id } = bodyOf(await raise(buy.treasurer, { minorUnits: 300 })(), 201);
    const [losses, clearing] = [
      await balanceOfKind(app, { kind: 'losses' }),
      await clearingOf(app, buy.buyId),
    ];
    // No buy closes over an open claim, so the stage is set by hand, as an import might bring it.
    await app.admin`update book.buy set stage = 'closed' where buy_id = ${buy.buyId}`;
    bodyOf(await buy.treasurer.post(at(`/claims/${id}/refusal`), { because: 'The mill is gone.' }), 201);
    expect(await balanceOfKind(app, { kind: 'losses' })).toBe(losses + 300);
    expect(await clearingOf(app, buy.buyId)).toBe(clearing);
    await app.admin`update book.buy set stage = 'landed' where buy_id = ${buy.buyId}`;
  });

  test('is settled once, however many settle it at once', async () => {
    const { id } = bodyOf(await raise(buy.treasurer, { minorUnits: 300 })(), 201);
    const before = await supplierOwes(buy);
    const answers = await Promise.all([
      buy.treasurer.post(at(`/claims/${id}/credit`), { minorUnits: 300 }),
      storehouse.coordinator.post(at(`/claims/${id}/credit`), { minorUnits: 200 }),
      storehouse.coordinator.post(at(`/claims/${id}/credit`), { minorUnits: 100 }),
    ]);
    expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 409, 409]);
    const { creditedMinorUnits } = bodyOf(await buy.treasurer.get(at(`/claims/${id}`)));
    expect(await supplierOwes(buy)).toBe(before + creditedMinorUnits);
    expect(await claimed(id)).toBe(0);
  });

  const raise =
    (caller: Caller, change: Record<string, unknown>, path = buy.path) =>
    () =>
      caller.post(`${path}/claims`, {
        supplierId: buy.supplierId,
        buyLineId: buy.oats,
        kind: 'damage',
        minorUnits: 100,
        because: 'Dusty.',
        ...change,
      });

  test.for([
    { why: 'nothing', change: { minorUnits: 0 }, field: 'minorUnits' },
    { why: 'less than nothing', change: { minorUnits: -360 }, field: 'minorUnits' },
    { why: 'half a cent', change: { minorUnits: 0.5 }, field: 'minorUnits' },
    { why: 'more than a number holds', change: { minorUnits: 2 ** 53 }, field: 'minorUnits' },
    { why: 'no amount', change: { minorUnits: undefined }, field: 'minorUnits' },
    { why: 'no reason', change: { because: '' }, field: 'because' },
    { why: 'a kind nobody knows', change: { kind: 'sadness' }, field: 'kind' },
    { why: 'damage to no food', change: { buyLineId: null }, field: 'buyLineId' },
    { why: 'the freight of one food', change: { kind: 'freight' }, field: 'buyLineId' },
    { why: 'an unknown field', change: { urgent: true }, field: 'urgent' },
  ])('for $why is refused', async ({ change, field }) => {
    expect(await refusalOf(app, raise(buy.treasurer, change))).toEqual(refused(400, 'invalid-input', field));
  });

  test('is never more than the thing costs, with what was claimed before', async () => {
    // Oats cost 112.50, whatever was granted of the claims above, and the freight 88.00.
    const tooMuch = raise(buy.treasurer, { minorUnits: 11_251 });
    expect(await refusalOf(app, tooMuch)).toEqual(refused(422, 'does-not-add-up', 'minorUnits'));
    const freight = { kind: 'freight', buyLineId: null };
    expect(await refusalOf(app, raise(buy.treasurer, { ...freight, minorUnits: 8_801 }))).toEqual(
      refused(422, 'does-not-add-up', 'minorUnits'),
    );
    bodyOf(await raise(buy.treasurer, { ...freight, minorUnits: 8_000 })(), 201);
    expect(await refusalOf(app, raise(buy.treasurer, { ...freight, minorUnits: 801 }))).toEqual(
      refused(422, 'does-not-add-up', 'minorUnits'),
    );
    bodyOf(await raise(buy.treasurer, { ...freight, minorUnits: 800 })(), 201);
  });

  test('is in the book’s currency', async () => {
    expect(await refusalOf(app, raise(buy.treasurer, { currency: 'EUR' }))).toEqual(
      refused(422, 'currency-mixed', 'currency'),
    );
  });

  test('is against somebody the buy came from, about a food of it', async () => {
    const stranger = await aSupplier(storehouse);
    expect(await refusalOf(app, raise(buy.treasurer, { supplierId: stranger }))).toEqual(
      refused(400, 'invalid-input', 'supplierId'),
    );
    expect(await refusalOf(app, raise(buy.treasurer, { supplierId: NO_SUCH_ID }))).toEqual(
      refused(404, 'thing-not-found'),
    );
    expect(await refusalOf(app, raise(buy.treasurer, { buyLineId: NO_SUCH_ID }))).toEqual(
      refused(404, 'thing-not-found', 'buyLineId'),
    );
  });

  test('is raised by treasurer or coordinator, once something is ordered', async () => {
    expect(await refusalOf(app, raise(households.Corran.caller, {}))).toEqual(refused(403, 'duty-missing'));
    const fixed = await aFixedBuy(app, storehouse, { households });
    const early = { supplierId: fixed.supplierId, buyLineId: fixed.oats };
    expect(await refusalOf(app, raise(buy.treasurer, early, fixed.path))).toEqual(
      refused(409, 'buy-stage-wrong'),
    );
  });

  test('is not granted beyond what it asks, nor on a day to come or of closed books', async () => {
    const { id } = bodyOf(await raise(buy.treasurer, { minorUnits: 100 })(), 201);
    const credit = (body: object) => () => buy.treasurer.post(at(`/claims/${id}/credit`), body);
    expect(await refusalOf(app, credit({ minorUnits: 101 }))).toEqual(
      refused(422, 'does-not-add-up', 'minorUnits'),
    );
    expect(await refusalOf(app, credit({ minorUnits: 0 }))).toEqual(
      refused(400, 'invalid-input', 'minorUnits'),
    );
    expect(await refusalOf(app, credit({ minorUnits: 50, currency: 'CAD' }))).toEqual(
      refused(422, 'currency-mixed', 'currency'),
    );
    expect(await refusalOf(app, credit({ minorUnits: 50, onDay: '2026-09-31' }))).toEqual(
      refused(400, 'invalid-input', 'onDay'),
    );
    expect(await refusalOf(app, credit({ minorUnits: 50, onDay: '2026-09-02' }))).toEqual(
      refused(400, 'invalid-input', 'onDay'),
    );
    bodyOf(await buy.treasurer.post(at('/periods'), { throughOn: '2026-08-31' }), 201);
    expect(await refusalOf(app, credit({ minorUnits: 50, onDay: '2026-08-30' }))).toEqual(
      refused(409, 'period-closed', 'onDay'),
    );
    const lost = () => buy.treasurer.post(at(`/claims/${NO_SUCH_ID}/credit`), { minorUnits: 1 });
    expect(await refusalOf(app, lost)).toEqual(refused(404, 'thing-not-found'));
  });
});
