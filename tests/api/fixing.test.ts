import { afterAll, beforeAll, expect, test } from 'vitest';
import { fillBuy } from '../../apps/api/src/features/fill/assemble.ts';
import { loadFillSolver } from '../../apps/api/src/features/fill/solver.ts';
import type { TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, type TestBuy } from '../support/buy.ts';
import {
  aFixedBuy,
  aGrainBuy,
  asksOf,
  changeRules,
  fixedBooksOf,
  fixedRefusalOf,
  type GrainHouseholds,
  openGrain,
} from '../support/fixed-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const fix = (buy: Pick<TestBuy, 'path'>, body: unknown = {}) =>
  storehouse.coordinator.post(`${buy.path}/fixing`, body);

const refusalOf = (buy: TestBuy, body: unknown = {}) => fixedRefusalOf(app, () => fix(buy, body));

async function allotmentsOf(buy: TestBuy, lineId: string) {
  const { allotments } = bodyOf(await storehouse.coordinator.get(`${buy.path}/allotments`));
  const rows = allotments.filter((row: { lineId: string }) => row.lineId === lineId);
  return Object.fromEntries(rows.map((row: { ownerId: string }) => [row.ownerId, row]));
}

test('the job map’s whole buy is fixed with its estimates and deposits', async () => {
  // Job map 4.3: estimate 523.50 at fixed, 178.00 / 156.35 / 132.00 / 57.15; deposits 72 / 63 / 53 / 23 = 211.00.
  const buy = await aGrainBuy(app, storehouse, { households });
  const [before] = await app.admin<{ count: string }[]>`select count(*) from book.entry`;
  const fixed = bodyOf(await fix(buy), 201);
  expect(fixed).toMatchObject({
    stage: 'fixed',
    goodsMinorUnits: 43_550,
    freightMinorUnits: 8800,
    levyMinorUnits: 0,
    totalMinorUnits: 52_350,
    missing: [],
    dropped: [],
  });
  expect(fixed.lines.map((line: { bags: { bags: number }[] }) => line.bags[0]?.bags)).toEqual([6, 3, 5]);
  expect(await asksOf(buy, households)).toEqual([
    ['Ashdown', 17_800, 7200],
    ['Birchall', 15_635, 6300],
    ['Corran', 13_200, 5300],
    ['Dell', 5715, 2300],
  ]);
  const [after] = await app.admin<{ count: string }[]>`select count(*) from book.entry`;
  expect(after).toEqual(before); // a promise moves no money
});

test('promises add up to the grams of the bags, and each household sees its own alone', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  const wheat = Object.values<{ grams: number }>(await allotmentsOf(buy, buy.wheat));
  // Six bags of 22,680 g shared 120/100/50/30 of 300 lb: all four come out whole.
  expect(wheat.map((row) => row.grams).toSorted((a, b) => b - a)).toEqual([54_432, 45_360, 22_680, 13_608]);
  const own = bodyOf(await households.Dell.caller.get(`${buy.path}/allotments`)).allotments;
  expect(new Set(own.map((row: { ownerId: string }) => row.ownerId))).toEqual(
    new Set([households.Dell.householdId]),
  );
});

test('the levy of the frozen rules stands in the estimate, and later rules change nothing', async () => {
  await changeRules(storehouse, { levyHundredthsOfPercent: 200 });
  const buy = await aGrainBuy(app, storehouse, { households });
  const fixed = bodyOf(await fix(buy), 201);
  expect(fixed).toMatchObject({ levyMinorUnits: 871, totalMinorUnits: 53_221 }); // 2 % of 435.50
  await changeRules(storehouse, { levyHundredthsOfPercent: 0, depositPercent: 90 });
  const read = bodyOf(await storehouse.coordinator.get(`${buy.path}/fill`));
  expect(read).toMatchObject({ isFixed: true, levyMinorUnits: 871, totalMinorUnits: 53_221 });
  await changeRules(storehouse, { depositPercent: 40 });
});

test('the stored answer is the same, byte for byte, when its inputs are run again or the buy is fixed again', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  const storedOf = async () => {
    const [stored] = await app.admin<
      { answer: string; inputs: string }[]
    >`select f.answer::text, i.inputs::text
      from book.buy b join book.fill f using (storehouse_id, fill_id) join book.fill_inputs i using (storehouse_id, fill_id)
      where b.buy_id = ${buy.buyId}`;
    return stored ?? { answer: '', inputs: '' };
  };
  const first = await storedOf();
  const rerun = fillBuy(JSON.parse(first.inputs), await loadFillSolver());
  const [normalised] = await app.admin<
    { answer: string }[]
  >`select ${JSON.stringify(rerun)}::text::jsonb::text as answer`;
  expect(normalised?.answer).toBe(first.answer);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/reopening`, { reason: 'one more look' }), 201);
  bodyOf(await fix(buy), 201);
  expect(await storedOf()).toEqual(first);
});

test('the order in which pledges come out of the database decides nothing', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  const [stored] = await app.admin<{ inputs: string }[]>`select i.inputs::text from book.buy b
    join book.fill_inputs i using (storehouse_id, fill_id) where b.buy_id = ${buy.buyId}`;
  const inputs = JSON.parse(stored?.inputs ?? '');
  const solver = await loadFillSolver();
  const shuffled = { ...inputs, pledges: inputs.pledges.toReversed() };
  expect(JSON.stringify(fillBuy(shuffled, solver))).toBe(JSON.stringify(fillBuy(inputs, solver)));
});

test('ceilings are frozen where only a fill or a review reads them, and each household learns that they were used', async () => {
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Dell.caller, buy, { wanted: 50, ceilingMinorUnits: 99 });
  bodyOf(await fix(buy), 201);
  const [stored] = await app.admin<{ answer: string }[]>`select f.answer::text from book.fill f
    where f.buy_id = ${buy.buyId}`;
  expect(stored?.answer).not.toMatch(/"ceiling":\s*\{/);
  const reads = await app.admin<{ what: string }[]>`select r.what from book.private_read r
    where r.household_id = ${households.Dell.householdId} and r.purpose = 'fixing a buy'`;
  expect(reads.map((read) => read.what)).toContain('ceilings');
});

test('before fixing, the coordinator is warned of each household that would be left out, and why', async () => {
  await changeRules(storehouse, { commonCapGrams: 0 });
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Birchall.caller, buy, { wanted: 50 });
  const dear = await aPledge(households.Corran.caller, buy, { wanted: 50, ceilingMinorUnits: 60 });
  const small = await aPledge(households.Dell.caller, buy, { wanted: 30 });
  const preview = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  const reasons = preview.dropped.map((one: { pledgeId: string; reason: string }) => [
    one.pledgeId,
    one.reason,
  ]);
  expect(new Map(reasons)).toEqual(
    new Map([
      [dear.id, 'ceiling'],
      [small.id, 'does-not-fit'],
    ]),
  );
  expect(preview).toMatchObject({ stage: 'gathering', isFixed: false, missing: [] });
  bodyOf(await fix(buy), 201);
  const rows = await allotmentsOf(buy, buy.lines[WHEAT] ?? '');
  expect(rows[households.Corran.householdId]).toMatchObject({
    isDropped: true,
    droppedBecause: 'ceiling',
    grams: 0,
  });
  expect(rows[households.Birchall.householdId]).toMatchObject({ isDropped: false, grams: 22_680 });
  const own = bodyOf(await households.Corran.caller.get(`${buy.path}/deposits/own`));
  expect(own.askedMinorUnits).toBeNull(); // nothing promised, nothing asked
});

test('only a coordinator looks at fixing and fixes, and only while the buy gathers', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  expect((await households.Corran.caller.get(`${buy.path}/fixing`)).body.code).toBe('duty-missing');
  expect((await households.Corran.caller.post(`${buy.path}/fixing`, {})).body.code).toBe('duty-missing');
  expect(await refusalOf(buy)).toMatchObject({ status: 409, code: 'buy-stage-wrong', isUnchanged: true });
  expect((await storehouse.coordinator.get(`${buy.path}/fixing`)).body.code).toBe('buy-stage-wrong');
});

test('a buy in which nobody would get anything is not fixed', async () => {
  const buy = await aBuy(app, storehouse);
  expect(await refusalOf(buy)).toMatchObject({
    code: 'buy-guard-unmet',
    missing: ['nothing-allotted'],
    isUnchanged: true,
  });
});

test('a look at fixing lists what is missing in the words that refuse it', async () => {
  const buy = await aBuy(app, storehouse);
  const { missing } = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  expect(missing).toEqual([{ code: 'nothing-allotted', words: 'Nobody would get anything.' }]);
  expect((await fix(buy)).body.missing).toEqual(missing);
});

test('a supplier’s minimum that the pledges don’t reach keeps the buy open, and the supplier is named', async () => {
  const buy = await aBuy(app, storehouse, {
    foods: [WHEAT, 'oats-rolled'],
    quote: { offers: [{ foodCode: WHEAT }], minimumGoodsMinorUnits: 50_000 },
  });
  await aPledge(households.Dell.caller, buy, { foodCode: WHEAT, wanted: 100 });
  const answer = await fix(buy);
  expect(answer.body.missing.map((one: { code: string }) => one.code)).toContain('supplier-minimum-not-met');
  expect(JSON.stringify(answer.body.missing)).toContain(buy.supplierId);
});

test('a quote that lapsed keeps the buy open', async () => {
  const buy = await aBuy(app, storehouse, { quote: { validUntil: '2026-09-25' } });
  await aPledge(households.Dell.caller, buy, { wanted: 50 });
  const preview = bodyOf(await storehouse.coordinator.get(`${buy.path}/fixing`));
  expect(preview.warnings).toMatchObject([{ code: 'quote-lapses-soon', validUntilOn: '2026-09-25' }]);
  const { now } = app.clock;
  app.clock.now = new Date('2026-09-26T15:00:00Z');
  expect(await refusalOf(buy)).toMatchObject({ missing: ['quote-lapsed'], isUnchanged: true });
  app.clock.now = now;
});

/** Birchall 30 of 20–40 and Dell 20 of 10–30 in one bag of 50 lb. */
async function aBuyToOverride() {
  const buy = await aBuy(app, storehouse);
  const birchall = await aPledge(households.Birchall.caller, buy, { least: 20, wanted: 30, most: 40 });
  const dell = await aPledge(households.Dell.caller, buy, {
    least: 10,
    wanted: 20,
    most: 30,
    ceilingMinorUnits: 80,
  });
  const { lines } = bodyOf(await storehouse.coordinator.get(`${buy.path}/fill`));
  const bagOfferId = lines[0].bags[0].bagOfferId;
  const override = (birchallUnits: number, dellUnits: number, bags = 1) => [
    {
      buyLineId: lines[0].lineId,
      bags: [{ bagOfferId, bags }],
      allotments: [
        { pledgeId: birchall.id, units: birchallUnits },
        { pledgeId: dell.id, units: dellUnits },
      ],
    },
  ];
  return { buy, override, lineId: lines[0].lineId };
}

test('a coordinator fixes other allotments with a written reason', async () => {
  const { buy, override, lineId } = await aBuyToOverride();
  const overrideReason = 'Dell has guests until the spring';
  const fixed = bodyOf(await fix(buy, { overrideReason, override: override(25, 25) }), 201);
  expect(fixed.baskets[0].certificate).toMatchObject({ isProvenBest: false });
  const rows = await allotmentsOf(buy, lineId);
  expect(rows[households.Dell.householdId]).toMatchObject({ units: 25, grams: 11_340 });
  const [stored] = await app.admin<{ override_reason: string }[]>`select override_reason from book.fill
    where buy_id = ${buy.buyId}`;
  expect(stored?.override_reason).toBe(overrideReason);
});

test.for([
  {
    because: 'no reason',
    reason: undefined,
    units: [25, 25],
    code: 'invalid-input',
    fields: ['overrideReason'],
  },
  {
    because: 'more than the bags hold',
    units: [40, 30],
    code: 'does-not-add-up',
    fields: ['override.0.allotments'],
  },
  {
    because: 'a rest that common stock does not take',
    units: [20, 20],
    code: 'does-not-add-up',
    fields: ['override.0.bags'],
  },
  {
    because: 'above a most',
    units: [15, 35],
    code: 'does-not-add-up',
    fields: ['override.0.allotments.0.units', 'override.0.allotments.1.units'],
  },
  {
    because: 'off the step',
    units: [27, 23],
    code: 'does-not-add-up',
    fields: ['override.0.allotments.0.units', 'override.0.allotments.1.units'],
  },
  {
    because: 'a negative mass',
    units: [-5, 55],
    code: 'invalid-input',
    fields: ['override.0.allotments.0.units', 'override.0.allotments.1.units'],
  },
])('an override is refused for $because', async ({ units, code, fields, ...rest }) => {
  await changeRules(storehouse, { commonCapGrams: 0 });
  const { buy, override } = await aBuyToOverride();
  const overrideReason = 'reason' in rest ? undefined : 'because we say so';
  const [birchall = 0, dell = 0] = units;
  const refusal = await refusalOf(buy, { overrideReason, override: override(birchall, dell) });
  expect(refusal).toMatchObject({ code, isUnchanged: true });
  expect(fields).toContain(refusal.fields[0]);
});

test('an override that breaks a ceiling is refused without telling the ceiling', async () => {
  const { buy, override } = await aBuyToOverride();
  // 36.00 for 50 lb is 0.72 a pound, within Dell's 0.80; two bags for 50 lb leave a bag to the common stock.
  const twoBags = await fix(buy, { overrideReason: 'more', override: override(30, 20, 2) });
  expect(twoBags.body.code).toBe('does-not-add-up');
  const corran = await aPledge(households.Corran.caller, buy, { wanted: 50, ceilingMinorUnits: 70 });
  const [line] = override(30, 20, 2);
  const served = [{ ...line, allotments: [...(line?.allotments ?? []), { pledgeId: corran.id, units: 50 }] }];
  const before = await fixedBooksOf(app);
  const answer = await fix(buy, { overrideReason: 'Corran too', override: served });
  expect(answer.body.missing).toMatchObject([{ code: 'price-above-ceiling', ids: [corran.id] }]);
  expect(JSON.stringify(answer.body)).not.toMatch(/\b(70|80)\b/);
  expect(await fixedBooksOf(app)).toBe(before);
});

test('a retry of fixing gets the first answer, and the buy is fixed once', async () => {
  const buy = await aGrainBuy(app, storehouse, { households });
  const key = { 'Idempotency-Key': 'fix-the-grain-buy' };
  const first = await storehouse.coordinator.post(`${buy.path}/fixing`, {}, key);
  const again = await storehouse.coordinator.post(`${buy.path}/fixing`, {}, key);
  expect([again.status, again.body]).toEqual([first.status, first.body]);
  const fills = await app.admin`select from book.fill where buy_id = ${buy.buyId}`;
  expect(fills).toHaveLength(1);
});

test('two coordinators’ screens fix a buy once', async () => {
  const buy = await aGrainBuy(app, storehouse, { households });
  const answers = await Promise.all([fix(buy), fix(buy)]);
  expect(answers.map((answer) => answer.status).toSorted()).toEqual([201, 409]);
  const moves =
    await app.admin`select from book.stage_move where buy_id = ${buy.buyId} and to_stage = 'fixed'`;
  expect(moves).toHaveLength(1);
});

test('a pledge that races with fixing is either in the fill or refused', async () => {
  const buy = await aBuy(app, storehouse);
  await aPledge(households.Birchall.caller, buy, { wanted: 50 });
  const [fixed, pledged] = await Promise.all([
    fix(buy),
    households.Dell.caller.post(`${buy.path}/pledges`, {
      buyLineId: buy.lines[WHEAT],
      leastGrams: 22_680,
      wantedGrams: 22_680,
      mostGrams: 22_680,
      wholeBags: false,
    }),
  ]);
  expect(fixed.status).toBe(201);
  const rows = await allotmentsOf(buy, buy.lines[WHEAT] ?? '');
  expect(households.Dell.householdId in rows).toBe(pledged.status === 201);
});
