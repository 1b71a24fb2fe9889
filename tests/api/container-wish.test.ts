import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, type TestBuy } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import type { TestHousehold } from '../support/household.ts';
import { aSharedBuy } from '../support/shared-buy.ts';
import { kindIdsOf } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let birchall: TestHousehold;
let buy: TestBuy;
let kinds: Record<string, string>;
const WHEAT = 'wheat-hard-red-winter';
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  birchall = households.Birchall;
  kinds = await kindIdsOf(storehouse);
  buy = await aBuy(app, storehouse);
  await aPledge(birchall.caller, buy, { wanted: 200 });
});
afterAll(() => app.close());

const pathOf = ({ path, lines }: Pick<TestBuy, 'path' | 'lines'>) =>
  `${path}/lines/${lines[WHEAT]}/container-wishes`;
type Wish = { containerKindId: string | undefined; grams: number | null };
const cans = (grams: number | null): Wish => ({ containerKindId: kinds['can-no-10'], grams });
const pails = (grams: number | null): Wish => ({ containerKindId: kinds['pail-6-gallon-lined'], grams });
const put = (caller: Caller, wishes: readonly Wish[], headers = {}) =>
  caller.put(pathOf(buy), { wishes }, headers);

describe('what a household wants its share in', () => {
  // 200 lb are 90,718 g. A No. 10 can holds 2,522 g of wheat level, so 120 lb (54,431 g) are 21 cans with 52,962 g; the
  // other 37,756 g fill two pails of 18,432 g, and 892 g fill none. A can is priced at 1.33 here.
  test('comes to whole containers, the odd remainder and what they cost: 120 lb in cans, the rest in lined pails', async () => {
    const { containerKinds } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/container-kinds`));
    const can = containerKinds.find(({ kindCode }: { kindCode: string }) => kindCode === 'can-no-10');
    const priced = { version: can.version, tareGrams: 305, priceMinorUnits: 133 };
    bodyOf(await storehouse.coordinator.put(`${storehouse.path}/container-kinds/${can.id}`, priced));
    const planned = bodyOf(await put(birchall.caller, [cans(54_431), pails(null)]));
    expect(planned).toMatchObject({
      food: { code: WHEAT },
      basis: 'pledged',
      shareGrams: 90_718,
      wishes: [
        { kind: { code: 'can-no-10' }, grams: 54_431 },
        { kind: { code: 'pail-6-gallon-lined' }, grams: null },
      ],
      plan: {
        containers: [
          { count: 21, gramsEach: 2522, grams: 52_962, costMinorUnits: 2793 },
          { count: 2, gramsEach: 18_432, grams: 36_864, costMinorUnits: null },
        ],
        remainderGrams: 892,
      },
    });
    expect(bodyOf(await birchall.caller.get(pathOf(buy)))).toEqual(planned);
  });

  test('is put in place of what was wished before, down to nothing at all', async () => {
    bodyOf(await put(birchall.caller, [cans(10_000), pails(null)]));
    expect(bodyOf(await put(birchall.caller, [pails(null)])).wishes).toHaveLength(1);
    expect(bodyOf(await put(birchall.caller, []))).toMatchObject({
      wishes: [],
      plan: { containers: [], remainderGrams: 90_718 },
    });
  });

  test('is its own: another household sees none of it, and plans for nothing while it has not pledged', async () => {
    bodyOf(await put(birchall.caller, [cans(null)]));
    expect(bodyOf(await storehouse.coordinator.get(pathOf(buy)))).toMatchObject({
      wishes: [],
      shareGrams: 0,
    });
  });

  test('is written down by a helper for the household that is helped', async () => {
    const grant = { personId: birchall.personId, days: 3 };
    const corran = households.Corran;
    bodyOf(
      await corran.caller.post(`${storehouse.path}/households/${corran.householdId}/helpers`, grant),
      201,
    );
    const headers = { 'Sheafbook-For-Household': corran.householdId };
    bodyOf(await put(birchall.caller, [pails(7_000)], headers));
    expect(bodyOf(await corran.caller.get(pathOf(buy))).wishes).toMatchObject([{ grams: 7_000 }]);
    const [row] = await app.admin<{ entered_by: string }[]>`
      select entered_by from book.container_wish where household_id = ${corran.householdId}`;
    expect(row?.entered_by).toBe(birchall.personId);
  });

  test('is refused when the rest comes before the last, when a kind is not there, or past twenty', async () => {
    const { caller } = birchall;
    const send = (wishes: readonly Wish[]) => refusalOf(app, () => put(caller, wishes));
    expect(await send([cans(null), pails(5_000)])).toEqual(refused(400, 'invalid-input', 'wishes'));
    expect(await send([{ containerKindId: buy.buyId, grams: null }])).toEqual(
      refused(404, 'thing-not-found'),
    );
    expect(await send(Array.from({ length: 21 }, () => cans(1)))).toEqual(
      refused(400, 'invalid-input', 'wishes'),
    );
    expect(await send([cans(0)])).toEqual(refused(400, 'invalid-input', 'wishes.0.grams'));
  });

  test('belongs to a line of that very buy', async () => {
    const other = await aBuy(app, storehouse);
    const crossed = `${other.path}/lines/${buy.lines[WHEAT]}/container-wishes`;
    const call = () => birchall.caller.put(crossed, { wishes: [] });
    expect(await refusalOf(app, call)).toEqual(refused(404, 'thing-not-found'));
    expect((await birchall.caller.get(crossed)).body.code).toBe('thing-not-found');
  });

  test('is one list even when two of a household send theirs at the same moment', async () => {
    const lists = [[cans(1_000), pails(null)], [pails(2_000)], [cans(3_000), cans(4_000), pails(null)]];
    const answers = await Promise.all(lists.map((wishes) => put(birchall.caller, wishes)));
    const codes = answers.map(({ status, body }) => (status === 200 ? 'fine' : body.code));
    expect(codes.filter((code) => code !== 'fine' && code !== 'busy-retry')).toEqual([]);
    expect(codes).toContain('fine');
    const kept = bodyOf(await birchall.caller.get(pathOf(buy))).wishes;
    const grams = kept.map((wish: { grams: number | null }) => wish.grams);
    expect(lists.map((wishes) => wishes.map((wish) => wish.grams))).toContainEqual(grams);
  });

  test('goes by what the split awarded, once there is one', async () => {
    const shared = await aSharedBuy(app, storehouse, { households });
    const path = `${shared.path}/lines/${shared.wheat}/container-wishes`;
    const planned = bodyOf(await households.Dell.caller.put(path, { wishes: [cans(null)] }));
    // Equal awards of 133,812 g leave Dell its whole claim of 30 lb: five cans of 2,522 g and 998 g.
    expect(planned).toMatchObject({ basis: 'awarded', shareGrams: 13_608, plan: { remainderGrams: 998 } });
  });
});
