import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { anIntake } from '../support/inspection-bodies.ts';
import { kindIdsOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let lead: TestHousehold;
let facts: { foodId: string | undefined; containerKindId: string | undefined };
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  lead = await aHousehold(app, storehouse, 'Lead', { duties: ['packing_lead'] });
  const foodId = (await foodIdsOf(storehouse))['wheat-hard-red-winter'];
  facts = { foodId, containerKindId: (await kindIdsOf(storehouse))['can-no-10'] };
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const gift = (wish: Record<string, unknown> = {}, answers: Record<string, unknown> = {}) => {
  const whole = anIntake({ ...facts, gramsEach: 2500, ...wish });
  return { ...whole, answers: { ...whole.answers, ...answers } };
};
const takeIn = (caller: Caller, ...wish: Parameters<typeof gift>) =>
  caller.post(at('/intakes'), gift(...wish));

describe('a gift', () => {
  test('becomes a lot of its own in coded containers, weighed into the book', async () => {
    const took = bodyOf(await takeIn(birchall.caller, { count: 3 }), 201);
    expect(took).toMatchObject({ verdict: 'known', reasons: [], grams: 7500 });
    const shown = bodyOf(await birchall.caller.get(at(`/containers/${took.containers[2].id}`)));
    expect(shown).toMatchObject({ grams: 2500, lotId: took.lotId, packedOn: '2024-05-01' });
    expect(JSON.stringify(shown)).not.toMatch(/aunt/i);
  });

  // Job map 10.6: an unknown on who packed it, where it stood or what it stood near.
  test.for([
    [{ packedBy: 'unknown' }, ['packed-unknown']],
    [{ summers: 'unknown' }, ['place-unknown']],
    [{ harm: 'unknown' }, ['harm-unknown']],
    [{ harm: 'wet', pests: 'yes' }, ['was-wet', 'pests-seen']],
  ] as const)('of which %o is said has no known history', async ([answers, reasons]) => {
    const took = bodyOf(await takeIn(birchall.caller, {}, answers), 201);
    expect(took.verdict).toBe('unknown-history');
    expect(took.reasons.map(({ code }: { code: string }) => code)).toEqual(reasons);
    const moves =
      await app.admin`select 1 from book.container_move where container_id = ${took.containers[0].id}`;
    expect(moves.length).toBe(0); // so that the book reckons it as warm
  });

  test('whose kind, make and pests nobody knows keeps its history, and stood as warm as was said', async () => {
    const answers = { packedHow: 'unknown', pests: 'unknown', opened: 'unknown', summers: 'garage' };
    const took = bodyOf(await takeIn(birchall.caller, {}, answers), 201);
    expect(took.verdict).toBe('known');
    const moves = await app.admin`select told_tenths, moved_on::text from book.container_move
      where container_id = ${took.containers[0].id}`;
    expect(moves).toMatchObject([{ told_tenths: 280, moved_on: '2024-05-01' }]);
  });

  test('that stood near chemicals is refused with the reason, and one from tomorrow', async () => {
    const poisoned = () => takeIn(birchall.caller, {}, { harm: 'chemicals' });
    expect(await refusalOf(app, poisoned)).toEqual(refused(422, 'intake-refused', 'answers.harm'));
    expect((await poisoned()).body.detail).toMatch(/^It stood near fuel, paint or poison/);
    const tomorrow = () => takeIn(birchall.caller, { packedOn: '2026-09-02' });
    expect(await refusalOf(app, tomorrow)).toEqual(refused(400, 'invalid-input', 'packedOn'));
    const brimful = () => takeIn(birchall.caller, { gramsEach: 2725 });
    expect(await refusalOf(app, brimful)).toEqual(refused(422, 'over-capacity', 'gramsEach'));
  });
});

describe('a gift to the store', () => {
  test('is common stock, taken in by whoever packs or runs the store', async () => {
    const plain = () => takeIn(birchall.caller, { of: 'common' });
    expect(await refusalOf(app, plain)).toEqual(refused(403, 'duty-missing'));
    const took = bodyOf(await takeIn(lead.caller, { of: 'common', count: 2 }), 201);
    const { stock } = bodyOf(await storehouse.coordinator.get(at('/common-stock')));
    const codes = stock.map(({ code }: { code: string }) => code).toSorted();
    expect(codes).toEqual(took.containers.map(({ code }: { code: string }) => code).toSorted());
    const looked = { how: 'outside', findings: ['nothing-wrong'], outcome: 'table' };
    const path = at(`/containers/${took.containers[0].id}/inspections`);
    expect((await lead.caller.post(path, looked)).status).toBe(201);
    expect((await birchall.caller.post(path, looked)).body.code).toBe('thing-not-found');
  });

  test('keeps its donor apart: only a coordinator reads it, and the reading is written down', async () => {
    const donor = 'Mrs. Quill, Mill Lane';
    const took = bodyOf(await takeIn(lead.caller, { of: 'common', donor }), 201);
    const list = bodyOf(await lead.caller.get(at('/intakes?of=common')));
    expect(list.intakes[0]).toMatchObject({ lotId: took.lotId, verdict: 'known' });
    expect(JSON.stringify([took, list])).not.toMatch(/Quill/);
    const read = (caller: Caller, purpose = 'a recall of its mark') =>
      caller.post(at(`/intakes/${took.lotId}/donor-readings`), { purpose });
    expect(await refusalOf(app, () => read(lead.caller))).toEqual(refused(403, 'duty-missing'));
    const mute = () => read(storehouse.coordinator, ' ');
    expect(await refusalOf(app, mute)).toEqual(refused(400, 'invalid-input', 'purpose'));
    expect(bodyOf(await read(storehouse.coordinator), 201)).toEqual({ lotId: took.lotId, donor });
    const written = await app.admin`select purpose from book.donor_reading where lot_id = ${took.lotId}`;
    expect(written).toMatchObject([{ purpose: 'a recall of its mark' }]);
    const seen = await app.sql.begin(async (sql) => {
      await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
      return (await sql`select 1 from book.intake_donor`).length;
    });
    expect(seen).toBe(0); // without the task the book itself shows none
  });

  test('of a household’s own is nobody’s to ask about', async () => {
    const took = bodyOf(await takeIn(birchall.caller), 201);
    const call = () =>
      storehouse.coordinator.post(at(`/intakes/${took.lotId}/donor-readings`), { purpose: 'curious' });
    expect(await refusalOf(app, call)).toEqual(refused(404, 'thing-not-found'));
  });
});

describe('small tests', () => {
  test('tell of the lot how many seeds sprouted, apart from whether it is safe', async () => {
    const took = bodyOf(await takeIn(birchall.caller, { count: 2 }), 201);
    const [first, second] = took.containers;
    const wish = { kind: 'sprout', seeds: { laid: 30, sprouted: 20 } };
    const made = bodyOf(await birchall.caller.post(at(`/containers/${first.id}/small-tests`), wish), 201);
    expect(made.tests).toMatchObject([
      {
        seeds: { laid: 30, sprouted: 20, percent: 66 },
        tells: { en: expect.stringMatching(/not of safety/) },
      },
    ]);
    const loaf = { kind: 'bake', note: 'Flat, good taste' };
    bodyOf(await birchall.caller.post(at(`/containers/${second.id}/small-tests`), loaf), 201);
    const { tests } = bodyOf(await birchall.caller.get(at(`/containers/${first.id}/inspections`)));
    expect(tests.map(({ kind }: { kind: string }) => kind)).toEqual(['bake', 'sprout']);
  });

  test.for([
    [{ kind: 'sprout' }, 'seeds'],
    [{ kind: 'bake', note: 'x', seeds: { laid: 1, sprouted: 1 } }, 'seeds'],
    [{ kind: 'sprout', seeds: { laid: 5, sprouted: 6 } }, 'seeds.sprouted'],
    [{ kind: 'cook' }, 'note'],
  ] as const)('are refused with %o', async ([wish, field]) => {
    const [can] = bodyOf(await takeIn(birchall.caller), 201).containers;
    const call = () => birchall.caller.post(at(`/containers/${can.id}/small-tests`), wish);
    expect(await refusalOf(app, call)).toEqual(refused(400, 'invalid-input', field));
  });
});
