import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aLandedBuy, aPackingLead, type TestBag } from '../support/landed-buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aPlainBuy, type PlainWish, splitPlain, type TestPlainBuy } from '../support/plain-buy.ts';
import { chargeOf, splitGrain } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';
const POUND_50 = 22_680; // grams of a bag of 50 lb

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

type Share = { name: string; isCommonStock: boolean; awardGrams: number; pieces: { grams: number }[] };
const awardsOf = (sheet: { shares: Share[] }) =>
  Object.fromEntries(
    sheet.shares.map((share) => [share.isCommonStock ? 'common' : share.name, share.awardGrams]),
  );

/** Households by name want so many pounds (or kilograms) of wheat, and so many bags of 50 came. */
function aWheatBuy(
  wants: Partial<Record<keyof GrainHouseholds, number>>,
  bags: number | PlainWish['foods'][number]['bags'],
  wish: Partial<PlainWish> & { wholeBags?: boolean } = {},
): Promise<TestPlainBuy> {
  const { wholeBags = false, ...rest } = wish;
  const pledges = Object.entries(wants).map(([name, wanted]) => ({
    by: households[name as keyof GrainHouseholds].caller,
    wanted,
    wholeBags,
  }));
  const came = typeof bags === 'number' ? Array.from({ length: bags }, () => ({})) : bags;
  return aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    foods: [{ pledges, bags: came }],
    ...rest,
  });
}

const splitPath = (buy: TestPlainBuy, code = WHEAT) => `${buy.path}/lines/${buy.lines[code]}/splits`;
const split = async (buy: TestPlainBuy, rule?: string, code = WHEAT) =>
  bodyOf(await storehouse.coordinator.post(splitPath(buy, code), rule ? { rule } : {}), 201);

test('the buy’s frozen rule splits unless another is named, and a food is split once', async () => {
  const buy = await aWheatBuy({ Ashdown: 100, Corran: 50 }, 2);
  const sheet = await split(buy);
  expect(sheet).toMatchObject({ rule: 'proportional', roundNo: 1, landedGrams: 2 * POUND_50 });
  expect(awardsOf(sheet)).toEqual({ Ashdown: 30_240, Corran: 15_120 });
  const again = await refusalOf(app, () => storehouse.coordinator.post(splitPath(buy), {}));
  expect(again).toMatchObject({ status: 409, code: 'already-split', isUnchanged: true });
});

test('two who split one food at once split it once', async () => {
  const buy = await aWheatBuy({ Ashdown: 50, Dell: 50 }, 1);
  const both = await Promise.all(
    ['proportional', 'first-come'].map((rule) => storehouse.coordinator.post(splitPath(buy), { rule })),
  );
  expect(both.map((answer) => answer.status).toSorted()).toEqual([201, 409]);
  const { splits } = bodyOf(await storehouse.coordinator.get(`${buy.path}/splits`));
  expect(splits).toHaveLength(1);
  const [bag] = buy.bags;
  const [row] = await app.admin<{ shared: string }[]>`
    select sum(a.inflow - a.outflow) as shared from book.account a join book.owner o using (storehouse_id, owner_id)
    where a.vessel_id = ${bag?.id ?? ''} and o.kind = 'household'`;
  expect(Number(row?.shared)).toBe(POUND_50);
});

test('nothing is split before the landing, nor out of a bag that nobody weighed', async () => {
  const buy = await aWheatBuy({ Ashdown: 50 }, [{ isUnweighed: true }], { isLanded: false });
  const early = await refusalOf(app, () => storehouse.coordinator.post(splitPath(buy), {}));
  expect(early).toMatchObject({ status: 409, code: 'buy-stage-wrong', isUnchanged: true });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/landing`));
  const unweighed = await refusalOf(app, () => storehouse.coordinator.post(splitPath(buy), {}));
  expect(unweighed).toMatchObject({ status: 409, code: 'buy-guard-unmet', isUnchanged: true });
  const { missing } = (await storehouse.coordinator.post(splitPath(buy), {})).body;
  expect(missing).toMatchObject([{ code: 'bag-not-weighed', ids: [buy.bags[0]?.id] }]);
});

test('bad input, strangers and members are refused, and the books are as they were', async () => {
  const buy = await aWheatBuy({ Ashdown: 50 }, 1);
  const other = await anotherStorehouse(app);
  const path = splitPath(buy);
  const elsewhere = `${buy.path}/lines/${storehouse.storehouseId}/splits`;
  const { coordinator } = storehouse;
  const refusals = [
    [() => coordinator.post(path, { rule: 'by-eye' }), 400, 'invalid-input', ['rule']],
    [() => coordinator.post(path, { grams: 1_000_000 }), 400, 'invalid-input', ['grams']],
    [() => coordinator.post(path, '{'), 400, 'not-json', []],
    [() => coordinator.post(path, {}, { 'Idempotency-Key': '' }), 400, 'idempotency-key-missing', []],
    [() => coordinator.post(elsewhere, {}), 404, 'thing-not-found', []],
    [() => households.Dell.caller.post(path, {}), 403, 'duty-missing', []],
    [() => buy.treasurer.post(path, {}), 403, 'duty-missing', []],
    [() => other.coordinator.post(path, {}), 404, 'storehouse-not-found', []],
    [
      () => other.coordinator.post(path.replace(storehouse.storehouseId, other.storehouseId), {}),
      404,
      'thing-not-found',
      [],
    ],
  ] as const;
  for (const [call, status, code, fields] of refusals)
    expect(await refusalOf(app, call)).toEqual({ status, code, fields: [...fields], isUnchanged: true });
});

test('a food of which nothing came has nothing to split', async () => {
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    foods: [
      { pledges: [{ by: households.Ashdown.caller, wanted: 50 }], bags: [{}] },
      { foodCode: 'oats-rolled', pledges: [{ by: households.Dell.caller, wanted: 50 }], bags: [] },
    ],
  });
  const refused = await refusalOf(app, () => storehouse.coordinator.post(splitPath(buy, 'oats-rolled'), {}));
  expect(refused).toMatchObject({ status: 409, code: 'not-enough-left', isUnchanged: true });
});

test('whole bags stay whole: seven of ten go 3, 2, 1 and 1', async () => {
  // Job map 5.4: claims of 4, 3, 2 and 1 bags; the exact 2.8, 2.1, 1.4 and 0.7 round to the largest remainders.
  const wants = { Ashdown: 200, Birchall: 150, Corran: 100, Dell: 50 };
  const buy = await aWheatBuy(wants, 7, { wholeBags: true });
  const sheet = await split(buy, 'proportional');
  expect(awardsOf(sheet)).toEqual({
    Ashdown: 3 * POUND_50,
    Birchall: 2 * POUND_50,
    Corran: POUND_50,
    Dell: POUND_50,
  });
  expect(sheet).toMatchObject({ stepGrams: POUND_50, pieceCount: 7 });
});

test('common stock’s unfilled mass claims nothing: what is missing is missing there first', async () => {
  // Job map 5.6, I3 with a cap of 25 lb: 30, 25 and 20 lb in two bags, 25 lb of them unfilled. One bag lost 10 lb.
  const by = (name: keyof GrainHouseholds) => households[name].caller;
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    rules: { commonCapGrams: 11_340 },
    foods: [
      {
        pledges: [
          { by: by('Ashdown'), wanted: 30 },
          { by: by('Birchall'), least: 20, wanted: 25 },
          { by: by('Corran'), least: 15, wanted: 15, most: 20 },
        ],
        bags: [{}, { netGrams: POUND_50 - 4536 }],
      },
    ],
  });
  const sheet = await split(buy, 'proportional');
  const pounds = (count: number) => Math.round(count * 453.592_37);
  const { common, ...claimed } = awardsOf(sheet);
  expect(claimed).toEqual({ Ashdown: pounds(30), Birchall: pounds(25), Corran: pounds(20) });
  expect(common).toBe(2 * POUND_50 - 4536 - pounds(30) - pounds(25) - pounds(20));
});

test('a bag on hold is short until two release it; then it goes by the same rule to those who went short', async () => {
  const lead = await aPackingLead(app, storehouse, households.Corran);
  const buy = await aWheatBuy({ Ashdown: 100, Corran: 50 }, 3);
  const held = buy.bags[2] as TestBag;
  const reason = 'It smells of diesel.';
  const { id } = bodyOf(await lead.caller.post(`${storehouse.path}/bags/${held.id}/holds`, { reason }), 201);
  const first = await split(buy, 'equal-awards');
  expect(awardsOf(first)).toEqual({ Ashdown: POUND_50, Corran: POUND_50 });
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  expect(chargeOf(charges)).toEqual({ Ashdown: 5400, Corran: 5400 }); // 108.00 by what they got so far
  const closing = bodyOf(await buy.treasurer.get(`${buy.path}/closing`));
  expect(closing.missing).toMatchObject([{ code: 'mass-unassigned', grams: POUND_50 }]);
  const nothing = await refusalOf(app, () => storehouse.coordinator.post(splitPath(buy), {}));
  expect(nothing).toMatchObject({ status: 409, code: 'already-split', isUnchanged: true });

  const finding = 'Aired for a day, nothing left to smell.';
  bodyOf(await lead.caller.post(`${storehouse.path}/holds/${id}/release-request`, { finding }));
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/holds/${id}/release`));
  const otherRule = await refusalOf(app, () =>
    storehouse.coordinator.post(splitPath(buy), { rule: 'first-come' }),
  );
  expect(otherRule).toMatchObject({ status: 409, code: 'rule-frozen', fields: ['rule'], isUnchanged: true });
  const second = await split(buy);
  expect(second).toMatchObject({ rule: 'equal-awards', roundNo: 2 });
  expect(awardsOf(second)).toEqual({ Ashdown: POUND_50, Corran: 0 });
  // Nothing is short in the end, so the two rounds together leave nobody with a carry.
  const carries = [first, second].map((sheet) =>
    sheet.shares.map((share: { carryChangeGrams: number }) => share.carryChangeGrams),
  );
  expect(carries).toEqual([
    [7560, -7560], // of 22,680 g that were missing Ashdown bore all, and 2/3 would have been its part
    [-7560, 7560],
  ]);
  const recharged = bodyOf(await storehouse.coordinator.post(`${buy.path}/recharging`), 201);
  expect(chargeOf(recharged)).toEqual({ Ashdown: 7200, Corran: 3600 });
  expect(bodyOf(await buy.treasurer.post(`${buy.path}/closing`), 201).stage).toBe('closed');
});

test('a split is undone while all of it stands in its bags, and never twice', async () => {
  const buy = await aWheatBuy({ Ashdown: 100, Dell: 50 }, 2);
  const undo = (id: string) => storehouse.coordinator.post(`${storehouse.path}/splits/${id}/undoing`);
  const first = await split(buy);
  const undone = bodyOf(await undo(first.id));
  expect(undone.undoneAt).toBe('2026-09-01T15:00:00.000Z');
  const twice = await refusalOf(app, () => undo(first.id));
  expect(twice).toMatchObject({ status: 409, code: 'already-reversed', isUnchanged: true });
  const second = await split(buy, 'first-come');
  expect(second).toMatchObject({ roundNo: 1, rule: 'first-come' });
  expect(awardsOf(second)).toEqual({ Ashdown: 2 * POUND_50, Dell: 0 });

  const { containerKinds } = bodyOf(
    await storehouse.coordinator.get(`${storehouse.path}/container-kinds?limit=200`),
  );
  const pail = containerKinds.find((kind: { kindCode: string }) => kind.kindCode.includes('pail'));
  const pour = { bagId: buy.bags[0]?.id, containerKindId: pail.id, count: 1, gramsEach: 5000 };
  bodyOf(await households.Ashdown.caller.post(`${storehouse.path}/containers`, pour), 201);
  const gone = await refusalOf(app, () => undo(second.id));
  expect(gone).toMatchObject({ status: 409, code: 'cannot-reverse', isUnchanged: true });
  expect((await undo(second.id)).body.bags).toMatchObject([{ bagId: buy.bags[0]?.id }]);
});

test('a split can’t be undone once the buy is shared out', async () => {
  const buy = await aWheatBuy({ Ashdown: 50 }, 1);
  const { id } = await split(buy);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  const late = await refusalOf(app, () =>
    storehouse.coordinator.post(`${storehouse.path}/splits/${id}/undoing`),
  );
  expect(late).toMatchObject({ status: 409, code: 'buy-stage-wrong', isUnchanged: true });
});

test('who bore more than its part before is spared next time, within a group of foods', async () => {
  const pledges = Object.values(households).map(({ caller }) => ({ by: caller, wanted: 50 }));
  const aSweetBuy = (foodCode: string) =>
    aPlainBuy(app, storehouse, {
      treasurer: households.Birchall.caller,
      foods: [{ foodCode, pledges, bags: [{}, {}, {}] }],
    });
  // First come, 3 of 4 bags: Dell bears all 22,680 g, and 5670 would have been each one's part.
  const sugar = await aSweetBuy('sugar-granulated');
  const first = await split(sugar, 'first-come', 'sugar-granulated');
  expect(first.shares.map((share: { carryChangeGrams: number }) => share.carryChangeGrams)).toEqual([
    -5670, -5670, -5670, 17_010,
  ]);
  // Honey is of the same group. Targets are 11,340 for three and −11,340 for Dell, who can't bear less than nothing; so
  // all go down by 3780, to 7560 for each of the three.
  const honey = await aSweetBuy('honey');
  const second = await split(honey, 'rotation-of-loss', 'honey');
  expect(awardsOf(second)).toEqual({ Ashdown: 15_120, Birchall: 15_120, Corran: 15_120, Dell: POUND_50 });
});

test('need-first fills the emptiest larder first, and keeps what it read to itself', async () => {
  // Job map 5.2, in kilograms: needs of 4, 3, 2 and 1 a day, stocks of 400, 60, 80 and 90, claims of 200, 150, 100 and
  // 50, of which 400 came: everyone is brought to 128 days as far as the claims reach.
  const foodIds = await foodIdsOf(storehouse);
  const { containerKinds } = bodyOf(
    await storehouse.coordinator.get(`${storehouse.path}/container-kinds?limit=200`),
  );
  const pail = containerKinds.find((kind: { kindCode: string }) => kind.kindCode.includes('pail'));
  const larders = { Ashdown: [4, 400], Birchall: [3, 60], Corran: [2, 80], Dell: [1, 90] } as const;
  for (const [name, [dailyKilograms, stockKilograms]] of Object.entries(larders)) {
    const { householdId, caller } = households[name as keyof GrainHouseholds];
    const own = `${storehouse.path}/households/${householdId}`;
    bodyOf(await caller.post(`${own}/eaters`, { name: `${name}’s one eater`, birthOn: '1980' }), 201);
    const guidelines = [{ foodGroup: 'legumes', gramsPerAdultYear: dailyKilograms * 365_000 }];
    const plan = { needBasis: 'guideline', targetDays: 365, targetGroups: ['legumes'], addYear: false };
    bodyOf(await caller.put(`${own}/plan`, { version: 0, ...plan, guidelines }));
    const stock = {
      foodId: foodIds['beans-black'],
      originNote: 'Bought at the market.',
      containerKindId: pail.id,
      count: stockKilograms / 5,
      gramsEach: 5000,
      packedOn: '2026-08-01',
    };
    bodyOf(await caller.post(`${storehouse.path}/stock`, stock), 201);
  }
  const wants = { Ashdown: 200, Birchall: 150, Corran: 100, Dell: 50 };
  const buy = await aPlainBuy(app, storehouse, {
    treasurer: households.Birchall.caller,
    massUnit: 'kg',
    foods: [
      {
        foodCode: 'beans-black',
        pledges: Object.entries(wants).map(([name, wanted]) => ({
          by: households[name as keyof GrainHouseholds].caller,
          wanted,
        })),
        bags: Array.from({ length: 8 }, () => ({})),
      },
    ],
  });
  const comparison = `${buy.path}/lines/${buy.lines['beans-black']}/split-comparison`;
  const own = bodyOf(await households.Dell.caller.get(comparison));
  const needFirst = own.rules.find((rule: { rule: string }) => rule.rule === 'need-first');
  expect(needFirst.shares).toMatchObject([{ name: 'Dell', claimGrams: 50_000, awardGrams: 38_000 }]);
  expect(needFirst.ratioRange).toEqual({ leastHundredthsOfPercent: 5600, mostHundredthsOfPercent: 10_000 });

  const sheet = await split(buy, 'need-first', 'beans-black');
  expect(awardsOf(sheet)).toEqual({ Ashdown: 112_000, Birchall: 150_000, Corran: 100_000, Dell: 38_000 });
  expect(sheet.sentence).not.toContain('128'); // no level of coverage
  expect(JSON.stringify(sheet)).not.toMatch(/stockUnits|dailyNeed/);
  const kept = await app.admin`select 1 from book.split where answer::text ~ 'stockUnits|dailyNeedUnits'`;
  expect(kept).toEqual([]);
  // Without the task the policy shows no inputs, to the app's own role as well.
  const rows = await app.sql.begin(async (sql) => {
    await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
    return sql`select inputs from book.split_inputs`;
  });
  expect(rows).toHaveLength(0);
  const rerun = await storehouse.coordinator.get(`${storehouse.path}/splits/${sheet.id}/re-run`);
  expect(rerun.body).toMatchObject({ rule: 'need-first', isSame: true });
  const { householdId, caller } = households.Birchall;
  const looks = bodyOf(await caller.get(`${storehouse.path}/households/${householdId}/private-reads`));
  const purposes = looks.privateReads.map((look: { purpose: string }) => look.purpose);
  for (const purpose of [
    'comparing the rules of a split',
    'splitting by need first',
    'running a split again',
  ])
    expect(purposes).toContain(purpose);
});

test('the six rules stand side by side, with what each household would pay', async () => {
  const buy = await aLandedBuy(app, storehouse, { households });
  const path = `${buy.path}/lines/${buy.wheat}/split-comparison`;
  const { rules, isEstimate } = bodyOf(await storehouse.coordinator.get(path));
  const awards = Object.fromEntries(
    rules.map((rule: { rule: string; shares: Share[] }) => [
      rule.rule,
      rule.shares.map((share) => share.awardGrams),
    ]),
  );
  // 133,812 g on claims of 54,432, 45,360, 22,680 and 13,608 g: 2268 g are missing.
  expect(awards).toMatchObject({
    proportional: [53_525, 44_604, 22_302, 13_381], // 59/60 of each, rounded to the largest remainders
    'equal-awards': [52_164, 45_360, 22_680, 13_608],
    'equal-losses': [53_865, 44_793, 22_113, 13_041], // 567 less each
    'first-come': [54_432, 45_360, 22_680, 11_340],
  });
  const equal = rules.find((rule: { rule: string }) => rule.rule === 'equal-awards');
  expect(equal.shares.map((share: { goodsMinorUnits: number }) => share.goodsMinorUnits)).toEqual([
    8280, 7200, 3600, 2160,
  ]);
  expect(isEstimate).toBe(false);
  // Sums to the bills under every rule: beans count as promised while they are not split.
  for (const { shares } of rules) {
    const paid = shares.reduce(
      (sum: number, share: { buyMinorUnits: number }) => sum + share.buyMinorUnits,
      0,
    );
    expect(paid).toBe(49_850);
  }
  await splitGrain(storehouse, buy);
  const after = await storehouse.coordinator.get(path);
  expect([after.status, after.body.code]).toEqual([409, 'already-split']);
});

test('a member sees their own share and the range of all, on the sheet as in the list', async () => {
  const buy = await aWheatBuy({ Ashdown: 100, Dell: 50 }, 2);
  const { id } = await split(buy, 'equal-awards');
  await splitPlain(storehouse, await aWheatBuy({ Corran: 50 }, 1));
  const sheet = bodyOf(await households.Dell.caller.get(`${storehouse.path}/splits/${id}`));
  expect(sheet.shares.map((share: Share) => share.name)).toEqual(['Dell']);
  expect(sheet.ratioRange).toEqual({ leastHundredthsOfPercent: 5000, mostHundredthsOfPercent: 10_000 });
  const { splits } = bodyOf(await households.Corran.caller.get(`${buy.path}/splits`));
  expect(splits.map((known: { shares: unknown[] }) => known.shares)).toEqual([[]]);
  const rerun = await households.Dell.caller.get(`${storehouse.path}/splits/${id}/re-run`);
  expect(rerun.body.code).toBe('duty-missing');
});
