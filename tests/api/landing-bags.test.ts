import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anOrderedBuy, type GrainHouseholds, openGrain, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aLandedBuy, type GrainFood, offersOf, receiveBags } from '../support/landed-buy.ts';
import { gramsIn } from '../support/landing-books.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const coordinator = () => storehouse.coordinator;
const sheetOf = async (buy: TestGrainBuy) => bodyOf(await coordinator().get(`${buy.path}/landing`));
const bagAt = (id: string) => `${storehouse.path}/bags/${id}`;

describe('a bag', () => {
  let buy: TestGrainBuy;
  let offers: Record<GrainFood, string>;
  beforeAll(async () => {
    buy = await anOrderedBuy(app, storehouse, { households });
    offers = await offersOf(storehouse, buy);
  });
  const receive = (bags: Parameters<typeof receiveBags>[2]['bags'], arrivedOn?: string) =>
    receiveBags(app, storehouse, { buy, offers, bags, arrivedOn });
  const refuse = {
    decision: 'refused',
    condition: 'dry',
    note: 'Ours is another.',
    moistureTenthsPercent: null,
  };

  test('that the scale agrees with is booked at its declared net, and else at what was weighed', async () => {
    // Job map 2.9 and 6: the tolerance of a bag of 22,680 g is 226 g (1 %).
    const { bags } = await receive({
      wheat: [{ netGrams: 22_454 }, { netGrams: 22_453 }, { netGrams: 22_907 }],
    });
    expect(bags.wheat.map((bag) => bag.netGrams)).toEqual([22_680, 22_453, 22_907]);
  });

  test('that is over the order lands all the same, and the sheet says so', async () => {
    await receive({ oats: [{}, {}, {}, {}] });
    const line = (await sheetOf(buy)).lines.find((one: { buyLineId: string }) => one.buyLineId === buy.oats);
    expect(line).toMatchObject({
      orderedBags: 3,
      countedBags: 4,
      shortBags: 0,
      overBags: 1,
      netGrams: 4 * 22_680,
    });
  });

  test('that is wrong and refused keeps its number, has no mass, and is proposed for a claim at its price', async () => {
    const before = await gramsIn(app, buy.beans, 'bag');
    const wrong = { condition: 'wrong', decision: 'refused', note: 'Pinto beans.' } as const;
    const { bags } = await receive({ beans: [{}, {}, {}, {}, wrong] });
    expect(await gramsIn(app, buy.beans, 'bag')).toBe(before + 4 * 11_340);
    expect(bags.beans[4]).toMatchObject({ bagNo: 5, decision: 'refused', leftGrams: 0 });
    const proposed = (await sheetOf(buy)).proposedClaims;
    const ofBeans = proposed.filter((claim: { buyLineId: string }) => claim.buyLineId === buy.beans);
    expect(ofBeans).toMatchObject([{ kind: 'wrong', minorUnits: 2140, shortBags: 1 }]);
  });

  test('left unweighed is booked as declared until the scale says otherwise, once', async () => {
    const { bags } = await receive({ wheat: [{ isUnweighed: true }] });
    const [bag] = bags.wheat;
    expect(bag).toMatchObject({ netGrams: 22_680, grossGrams: null, weighedAt: null });
    const weigh = (body: Record<string, unknown>) =>
      coordinator().put(`${bagAt(bag?.id ?? '')}/weight`, body);
    const supplier = await gramsIn(app, buy.wheat, 'supplier');
    const first = bodyOf(await weigh({ version: 1, grossGrams: 22_250 }));
    // No tare was given, so a woven bag's 250 g is taken off (job map 6): 22,000 g, 680 g less than booked.
    expect(first).toMatchObject({ netGrams: 22_000, tareGrams: 250, leftGrams: 22_000, version: 2 });
    expect(await gramsIn(app, buy.wheat, 'supplier')).toBe(supplier + 680);
    const again = await weigh({ version: 2, grossGrams: 22_300 });
    expect([again.status, again.body.code]).toEqual([409, 'bag-already-weighed']);
    const corrected = bodyOf(
      await weigh({ version: 2, grossGrams: 22_300, reason: 'The scale stood askew.' }),
    );
    expect(corrected).toMatchObject({ netGrams: 22_050, leftGrams: 22_050, version: 3 });
    expect(await gramsIn(app, buy.wheat, 'supplier')).toBe(supplier + 630);
  });

  test('refused after all goes back by entries that name what they undo, and can be accepted again', async () => {
    const { bags } = await receive({ wheat: [{ isUnweighed: true }] });
    const id = bags.wheat[0]?.id ?? '';
    bodyOf(
      await coordinator().put(`${bagAt(id)}/weight`, { version: 1, grossGrams: 20_250, tareGrams: 250 }),
    );
    const supplier = await gramsIn(app, buy.wheat, 'supplier');
    const edit = { ...refuse, isExemptFromWeighing: false };
    expect(bodyOf(await coordinator().put(bagAt(id), { ...edit, version: 2 }))).toMatchObject({
      leftGrams: 0,
    });
    expect(await gramsIn(app, buy.wheat, 'supplier')).toBe(supplier + 20_000);
    const entries = await app.admin`select e.what, r.what as undoes from book.entry e
      left join book.entry r on r.storehouse_id = e.storehouse_id and r.entry_id = e.reverses_id
      where e.subject_id = ${id} order by e.entry_no`;
    expect(entries).toEqual([
      { what: 'bag-landed', undoes: null },
      { what: 'bag-weighed', undoes: null },
      { what: 'bag-refused', undoes: 'bag-weighed' },
      { what: 'bag-refused', undoes: 'bag-landed' },
    ]);
    const accepted = bodyOf(
      await coordinator().put(bagAt(id), { ...edit, decision: 'accepted', version: 3 }),
    );
    expect(accepted).toMatchObject({ leftGrams: 20_000, netGrams: 20_000 });
    expect(bodyOf(await coordinator().put(bagAt(id), { ...edit, version: 4 }))).toMatchObject({
      leftGrams: 0,
    });
    expect(await gramsIn(app, buy.wheat, 'supplier')).toBe(supplier + 20_000);
  });

  test('of which something was lost can’t be refused any more', async () => {
    const { bags } = await receive({ wheat: [{}] });
    const id = bags.wheat[0]?.id ?? '';
    const loss = { grams: 180, to: 'sampled', because: 'Looked at under the lamp.' };
    expect(bodyOf(await coordinator().post(`${bagAt(id)}/loss`, loss), 201)).toMatchObject({
      leftGrams: 22_500,
    });
    expect(await gramsIn(app, buy.wheat, 'sampled')).toBe(180);
    const answer = await coordinator().put(bagAt(id), { ...refuse, isExemptFromWeighing: false, version: 1 });
    expect([answer.status, answer.body.code]).toEqual([409, 'cannot-reverse']);
    expect(answer.body).toMatchObject({ netGrams: 22_680, unassignedGrams: 22_500 });
  });

  test('is of the lot that its line and the supplier’s mark name', async () => {
    const { bags } = await receive({
      wheat: [
        { supplierMark: 'K-77' },
        { supplierMark: 'K-78', harvestYear: 2025 },
        { supplierMark: 'K-77', harvestYear: 2026 },
      ],
    });
    const [one, other, same] = bags.wheat;
    expect(one?.lotId).toBe(same?.lotId);
    expect(other?.lotId).not.toBe(one?.lotId);
    expect(bodyOf(await coordinator().get(bagAt(one?.id ?? '')))).toMatchObject({
      supplierMark: 'K-77',
      harvestYear: 2026, // read off the third bag, and true of the lot
    });
  });

  test('shared by two that weighs less than booked takes it off both in proportion', async () => {
    const landed = await aLandedBuy(app, storehouse, { households });
    bodyOf(await coordinator().post(`${landed.path}/lines/${landed.oats}/splits`, {}), 201);
    // Oats 40 + 10 lb fill one bag of 50 lb: 18,144 g of Birchall and 4,536 g of Dell (job map 5.7, fewest cuts).
    const pieces = await app.admin<{ bag_id: string; version: number }[]>`
      select p.bag_id, b.version from book.share_piece p join book.bag b using (storehouse_id, bag_id)
      where p.owner_id = ${households.Dell.householdId} and b.buy_line_id = ${landed.oats}`;
    const { bag_id: bagId = '', version = 0 } = pieces[0] ?? {};
    const weigh = { version, grossGrams: 22_250 + 49, tareGrams: 250, reason: 'It felt light.' };
    const weighed = bodyOf(await coordinator().put(`${bagAt(bagId)}/weight`, weigh));
    // 22,680 − 22,049 = 631 g: by 18,144 and 4,536 exactly 504.8 and 126.2, so 505 and 126.
    expect(weighed).toMatchObject({ netGrams: 22_680, leftGrams: 22_049, grossGrams: 22_299 });
    const owned = await app.admin`select a.owner_id, a.vessel_kind, (a.inflow - a.outflow)::int as grams
      from book.account a where a.unit_id = ${weighed.lotId} and a.vessel_kind in ('bag', 'unexplained')
        and (a.vessel_id = ${bagId} or a.vessel_kind = 'unexplained')
        and a.owner_id in (${households.Birchall.householdId}, ${households.Dell.householdId})`;
    const gramsOf = (ownerId: string, kind: string) =>
      owned.find((row) => row.owner_id === ownerId && row.vessel_kind === kind)?.grams;
    expect(gramsOf(households.Birchall.householdId, 'bag')).toBe(18_144 - 505);
    expect(gramsOf(households.Dell.householdId, 'bag')).toBe(4_536 - 126);
    expect(gramsOf(households.Birchall.householdId, 'unexplained')).toBe(505);
  });

  test('that arrived on a day whose books are closed by now lands today and names the day', async () => {
    app.clock.now = new Date('2026-09-03T15:00:00Z');
    bodyOf(
      await households.Birchall.caller.post(`${storehouse.path}/periods`, { throughOn: '2026-09-02' }),
      201,
    );
    const { bags } = await receive({ wheat: [{}] }, '2026-09-02');
    const [entry] =
      await app.admin`select on_day::text, note from book.entry where subject_id = ${bags.wheat[0]?.id ?? ''}`;
    expect(entry).toEqual({ on_day: '2026-09-03', note: 'Arrived on 2026-09-02.' });
  });
});
