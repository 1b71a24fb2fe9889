import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { grantDuty } from '../support/household.ts';
import { aLandedBuy, aPackingLead, GRAIN_BAGS, type TestLandedBuy } from '../support/landed-buy.ts';
import { gramsIn, refusalOf, refused } from '../support/landing-books.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let packingLead: Caller;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  const wheat = [...GRAIN_BAGS.wheat.slice(0, 4), { condition: 'wet' }, { condition: 'odour' }] as const;
  buy = await aLandedBuy(app, storehouse, { bags: { ...GRAIN_BAGS, wheat }, hasClaims: false });
  packingLead = (await aPackingLead(app, storehouse, buy.households.Corran)).caller;
});
afterAll(() => app.close());

const coordinator = () => storehouse.coordinator;
const at = (path: string) => `${storehouse.path}${path}`;
const bagId = (position: number) => buy.bags.wheat[position]?.id ?? '';
const openHolds = async () => bodyOf(await coordinator().get(at('/holds?open=true'))).holds;
const holdOf = async (id: string) => (await openHolds()).find((hold: { bagId: string }) => hold.bagId === id);
const splitWheat = async () =>
  bodyOf(await coordinator().post(`${buy.path}/lines/${buy.wheat}/splits`, { rule: 'proportional' }), 201);
const sharedGrams = async () => {
  const [row] = await app.admin<
    { grams: string }[]
  >`select coalesce(sum(p.grams), 0) as grams from book.share_piece p
    join book.bag b using (storehouse_id, bag_id) where b.buy_line_id = ${buy.wheat}`;
  return Number(row?.grams);
};

test('a bag that came wet or with an odour lands, and is on hold at once', async () => {
  expect(await gramsIn(app, buy.wheat, 'bag')).toBe(6 * 22_680);
  const reasons = (await openHolds()).map((hold: { bagNo: number; reason: string }) => [
    hold.bagNo,
    hold.reason,
  ]);
  expect(new Map(reasons)).toEqual(
    new Map([
      [5, 'It came in wet.'],
      [6, 'It came in with an odour.'],
    ]),
  );
});

test('its claim is proposed at its whole price, since the window does not wait for the finding', async () => {
  const { proposedClaims } = bodyOf(await coordinator().get(`${buy.path}/landing`));
  const ofWheat = proposedClaims.filter((claim: { buyLineId: string }) => claim.buyLineId === buy.wheat);
  expect(ofWheat).toMatchObject([{ kind: 'damage', minorUnits: 2 * 3600, lostGrams: 2 * 22_680 }]);
});

test('it is tested and swept up, but neither fed nor composted', async () => {
  const lose = (to: string) => () =>
    coordinator().post(at(`/bags/${bagId(4)}/loss`), { grams: 100, to, because: 'A handful.' });
  expect(await refusalOf(app, lose('composted'))).toEqual(refused(409, 'bag-on-hold'));
  expect(await refusalOf(app, lose('animals'))).toEqual(refused(409, 'bag-on-hold'));
  bodyOf(await lose('sampled')(), 201);
  expect(await gramsIn(app, buy.wheat, 'sampled')).toBe(100);
});

test('it counts as short until it is released', async () => {
  await splitWheat();
  expect(await sharedGrams()).toBe(4 * 22_680);
});

test('a release takes a finding and two people, packing lead and coordinator', async () => {
  const { id } = await holdOf(bagId(4));
  const agree = (caller: Caller) => () => caller.post(at(`/holds/${id}/release`));
  expect(await refusalOf(app, agree(packingLead))).toEqual(refused(409, 'second-login-needed'));
  const ask = (finding: string) => () => coordinator().post(at(`/holds/${id}/release-request`), { finding });
  expect(await refusalOf(app, ask('  '))).toEqual(refused(400, 'invalid-input', 'finding'));
  bodyOf(await ask('Dried through; 11.5 % of moisture.')());
  expect(await refusalOf(app, agree(coordinator()))).toEqual(refused(409, 'second-login-needed'));
  expect(await refusalOf(app, agree(buy.households.Dell.caller))).toEqual(refused(403, 'duty-missing'));
  await grantDuty(storehouse, buy.households.Dell.personId, 'coordinator');
  // Two coordinators are two people and one duty.
  expect(await refusalOf(app, agree(buy.households.Dell.caller))).toEqual(
    refused(409, 'second-login-needed'),
  );
  const released = bodyOf(await agree(packingLead)());
  expect(released).toMatchObject({ ended: 'released', finding: 'Dried through; 11.5 % of moisture.' });
  expect(released.releasedBy).not.toBe(released.releaseAskedBy);
  expect(await refusalOf(app, agree(packingLead))).toEqual(refused(409, 'hold-ended'));
  expect(await refusalOf(app, ask('Again.'))).toEqual(refused(409, 'hold-ended'));
});

test('a released bag is split like a late delivery', async () => {
  await splitWheat();
  expect(await sharedGrams()).toBe(4 * 22_680 + 22_680 - 100);
});

test('a bag is put on hold once, however many do it at once', async () => {
  const hold = () => packingLead.post(at(`/bags/${bagId(0)}/holds`), { reason: 'Moths in the next bag.' });
  const answers = await Promise.all([hold(), hold(), hold()]);
  expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 409, 409]);
  expect(await refusalOf(app, hold)).toEqual(refused(409, 'bag-already-held'));
});

test('a bag on hold is thrown away whole, whoever owns it, and that ends the hold', async () => {
  const owned = await app.admin<
    { owner_id: string; grams: string }[]
  >`select owner_id, inflow - outflow as grams
    from book.account where vessel_id = ${bagId(0)} and inflow > outflow order by owner_id`;
  expect(owned.length).toBeGreaterThan(0);
  const discard = (id: string) => () =>
    packingLead.post(at(`/bags/${id}/discard`), { finding: 'Larvae throughout.' });
  const gone = bodyOf(await discard(bagId(0))(), 201);
  expect(gone).toMatchObject({ leftGrams: 0, isOnHold: false });
  const discarded = await app.admin`select owner_id, inflow - outflow as grams from book.account
    where unit_id = ${gone.lotId} and vessel_kind = 'discarded' and inflow > outflow order by owner_id`;
  expect([...discarded]).toEqual([...owned]);
  const { holds } = bodyOf(await coordinator().get(at('/holds')));
  expect(holds.find((hold: { bagId: string }) => hold.bagId === bagId(0))).toMatchObject({
    ended: 'nothing-left',
    finding: 'Larvae throughout.',
    releasedBy: null,
  });
  expect(await refusalOf(app, discard(bagId(0)))).toEqual(refused(409, 'hold-ended'));
});

test('a bag on hold that is refused after all goes back, and that ends the hold too', async () => {
  const edit = { condition: 'odour', decision: 'refused', note: 'Diesel.', moistureTenthsPercent: null };
  const body = { ...edit, isExemptFromWeighing: false, version: 1 };
  expect(bodyOf(await coordinator().put(at(`/bags/${bagId(5)}`), body))).toMatchObject({
    leftGrams: 0,
    isOnHold: false,
  });
  const hold = () => coordinator().post(at(`/bags/${bagId(5)}/holds`), { reason: 'Diesel.' });
  expect(await refusalOf(app, hold)).toEqual(refused(409, 'not-enough-left'));
});

test('a hold says why, by whom who may, of a bag that is there', async () => {
  const hold =
    (caller: Caller, reason: string, id = bagId(1)) =>
    () =>
      caller.post(at(`/bags/${id}/holds`), { reason });
  expect(await refusalOf(app, hold(packingLead, ''))).toEqual(refused(400, 'invalid-input', 'reason'));
  expect(await refusalOf(app, hold(buy.households.Birchall.caller, 'x'))).toEqual(
    refused(403, 'duty-missing'),
  );
  expect(await refusalOf(app, hold(packingLead, 'x', '01890a5d-ac96-774b-bcce-b302099a8057'))).toEqual(
    refused(404, 'thing-not-found'),
  );
  expect(await refusalOf(app, hold(packingLead, 'x', 'bag-7'))).toEqual(refused(404, 'thing-not-found'));
});
