import { isCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { piecesOf, type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let households: GrainHouseholds;
let shelves: Shelves;
/** The wheat that each household was given most of: Ashdown and Birchall have whole bags of 22,680 g. */
let wheat: Record<keyof GrainHouseholds, TestPiece>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  households = buy.households;
  shelves = await shelvesOf(app, storehouse);
  const [Ashdown, Birchall, Corran, Dell] = await Promise.all(
    [households.Ashdown, households.Birchall, households.Corran, households.Dell].map((household) =>
      wheatOf(storehouse, buy, household),
    ),
  );
  if (!Ashdown || !Birchall || !Corran || !Dell) throw new Error('each of the four was given wheat');
  wheat = { Ashdown, Birchall, Corran, Dell };
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;

describe('filling containers from one’s own share of a bag', () => {
  // 29.79 US fl oz is 881.00 mL; at 0.811537 g/mL that is 714 g of wheat level (foods' own tests).
  test('makes 24 cans at once, each with a code of its own that carries its check character', async () => {
    const { caller, householdId } = households.Ashdown;
    const bag = wheat.Ashdown;
    expect(bag.grams).toBe(22_680);
    const filled = bodyOf(
      await shelves.pour(caller, bag, { kind: 'can-no-2-5', count: 24, gramsEach: 714 }),
      201,
    );
    expect(filled).toMatchObject({ grams: 17_136, warnings: [] });
    const codes: string[] = filled.containers.map(({ code }: { code: string }) => code);
    expect([codes.length, new Set(codes).size, codes.filter(isCode).length]).toEqual([24, 24, 24]);
    expect(await shelves.gramsIn(bag.bagId, householdId)).toBe(5_544); // 22,680 − 24 × 714
    const entry = bodyOf(await buy.treasurer.get(at(`/entries/${filled.entryId}`)));
    expect(entry).toMatchObject({ what: 'poured' });
    const shown = bodyOf(await caller.get(at(`/containers/${filled.containers[0].id}`)));
    expect(shown).toMatchObject({
      code: codes[0],
      grams: 714,
      packedOn: '2026-09-01',
      openedOn: null,
      kind: { code: 'can-no-2-5' },
      food: { code: 'wheat-hard-red-winter' },
    });
  });

  // Job map 6: of 52,164 g Ashdown fills 20 cans of 2,600 g and has 164 g left. Its wheat lies in three bags of one lot,
  // so a can that one bag leaves unfinished is topped up from the next.
  test('takes a whole share over its bags: 52,164 g are 20 cans of 2,600 g and 164 g', async () => {
    const second = await aSharedBuy(app, storehouse, { households });
    const { caller, householdId } = second.households.Ashdown;
    const pieces = await piecesOf(storehouse, second.splitIds.wheat, second.households.Ashdown);
    expect(pieces.reduce((sum, { grams }) => sum + grams, 0)).toBe(52_164);
    let cans = 0;
    let begun: { id: string; grams: number } | undefined;
    for (const bag of pieces) {
      let left = bag.grams;
      if (begun) {
        const grams = Math.min(2600 - begun.grams, left);
        bodyOf(await caller.post(at(`/containers/${begun.id}/pours`), { bagId: bag.bagId, grams }), 201);
        begun = undefined;
        cans += 1;
        left -= grams;
      }
      const count = Math.floor(left / 2600);
      const filled = bodyOf(await shelves.pour(caller, bag, { count, gramsEach: 2600 }), 201);
      expect(filled.warnings).toEqual(['Level is 2522 g; 2600 g need shaking down.']);
      cans += count;
      const rest = left - count * 2600;
      if (cans === 20) {
        expect(await shelves.gramsIn(bag.bagId, householdId)).toBe(164);
        break;
      }
      const { containers } = bodyOf(await shelves.pour(caller, bag, { gramsEach: rest }), 201);
      begun = { id: containers[0].id, grams: rest };
    }
    expect(cans).toBe(20);
  });

  test('is refused past what a container holds shaken down, in grams that a person can act on', async () => {
    const { caller } = households.Birchall;
    const call = () => shelves.pour(caller, wheat.Birchall, { gramsEach: 2725 });
    expect(await refusalOf(app, call)).toEqual(refused(422, 'over-capacity', 'gramsEach'));
    expect((await call()).body.detail).toBe('No. 10 can holds 2724 g of Hard red winter wheat at the most.');
    const { body } = await caller.post(
      at('/containers'),
      shelves.pourBody(wheat.Birchall, { gramsEach: 2725 }),
      { 'Accept-Language': 'es' },
    );
    const said = 'En Lata n.º 10 caben como mucho 2724 g de Trigo duro rojo de invierno.';
    expect([body.detail, body.fields[0].message]).toEqual([said, said]);
    const brimful = bodyOf(await shelves.pour(caller, wheat.Birchall, { gramsEach: 2724 }), 201);
    expect(brimful.warnings).toEqual(['Level is 2522 g; 2724 g need shaking down.']);
  });

  test('is refused beyond one’s own grams, however much a neighbour has in the same bag', async () => {
    const { caller } = households.Dell;
    const { grams } = wheat.Dell;
    const call = () =>
      shelves.pour(caller, wheat.Dell, { kind: 'pail-6-gallon-lined', gramsEach: grams + 1 });
    expect(await refusalOf(app, call)).toEqual(refused(409, 'not-enough-left', 'count'));
    expect((await call()).body).toMatchObject({
      leftGrams: grams,
      detail: `${grams} g in this bag are yours; ${grams + 1} g were asked for.`,
    });
    const none = await shelves.pour(caller, wheat.Ashdown); // a bag that Dell has nothing in
    expect(none.body).toMatchObject({ code: 'not-enough-left', leftGrams: 0 });
  });

  test('is refused for a day that is still to come, and dated back to one that was', async () => {
    const { caller } = households.Birchall;
    const later = { ...shelves.pourBody(wheat.Birchall), packedOn: '2026-09-02' };
    const call = () => caller.post(at('/containers'), later);
    expect(await refusalOf(app, call)).toEqual(refused(400, 'invalid-input', 'packedOn'));
    const earlier = await caller.post(at('/containers'), { ...later, packedOn: '2026-08-30' });
    const { id } = bodyOf(earlier, 201).containers[0];
    expect((await caller.get(at(`/containers/${id}`))).body.packedOn).toBe('2026-08-30');
  });

  test('says so when nobody knows how heavy the food lies, and books the fill all the same', async () => {
    const { caller } = households.Birchall;
    const kind = await storehouse.coordinator.post(at('/foods'), {
      foodCode: 'mystery-grain',
      nameEn: 'Mystery grain',
      foodGroup: 'grains',
      kilocaloriesPer100Grams: null,
      allergens: [],
      gluten: 'no',
      source: 'a sack without a label',
    });
    const stock = {
      foodId: bodyOf(kind, 201).id,
      originNote: 'a neighbour’s cellar',
      containerKindId: shelves.kinds['can-no-10'],
      count: 1,
      gramsEach: 9000,
      packedOn: '2020-01-01',
    };
    expect(bodyOf(await caller.post(at('/stock'), stock), 201).warnings).toEqual([
      'How heavy this food lies is not known, so the fill was not checked.',
    ]);
  });

  test('counts once however often it is sent', async () => {
    const { caller, householdId } = households.Birchall;
    const before = await shelves.gramsIn(wheat.Birchall.bagId, householdId);
    const key = { 'Idempotency-Key': 'pour once' };
    const first = await caller.post(at('/containers'), shelves.pourBody(wheat.Birchall), key);
    const again = await caller.post(at('/containers'), shelves.pourBody(wheat.Birchall), key);
    expect(again.body).toEqual(first.body);
    expect(await shelves.gramsIn(wheat.Birchall.bagId, householdId)).toBe(before - 1000);
  });
});

describe('pouring more into a container', () => {
  test('keeps to one lot (ledger-notes 6.8)', async () => {
    const { caller } = households.Ashdown;
    const [oats] = await piecesOf(storehouse, buy.splitIds.oats, households.Ashdown);
    const can = await shelves.aCan(caller, wheat.Ashdown);
    const call = () => caller.post(at(`/containers/${can.id}/pours`), { bagId: oats?.bagId, grams: 100 });
    expect(await refusalOf(app, call)).toEqual(refused(409, 'another-lot'));
  });

  test('keeps to the brim by all that is in it', async () => {
    const { caller } = households.Ashdown;
    const can = await shelves.aCan(caller, wheat.Ashdown, 2000);
    const path = at(`/containers/${can.id}/pours`);
    const call = () => caller.post(path, { bagId: wheat.Ashdown.bagId, grams: 725 });
    expect(await refusalOf(app, call)).toEqual(refused(422, 'over-capacity', 'grams'));
    const fits = await caller.post(path, { bagId: wheat.Ashdown.bagId, grams: 724 });
    expect([fits.status, fits.body.grams]).toEqual([201, 2724]);
  });

  test('never fills past the brim together: of two pours that fit alone, one is refused', async () => {
    const { caller } = households.Birchall;
    const can = await shelves.aCan(caller, wheat.Birchall, 2000);
    const more = { bagId: wheat.Birchall.bagId, grams: 500 };
    const answers = await Promise.all(
      [1, 2, 3].map(() => caller.post(at(`/containers/${can.id}/pours`), more)),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 422, 422]);
    expect((await caller.get(at(`/containers/${can.id}`))).body.grams).toBe(2500);
  });
});

describe('a bag on hold', () => {
  test('gives nothing until it is released: no pour, no top-up, no use', async () => {
    const { caller } = households.Birchall;
    const [bag] = await piecesOf(storehouse, buy.splitIds.beans, households.Birchall);
    if (!bag) throw new Error('Birchall was given beans');
    const can = await shelves.aCan(caller, bag);
    const lead = await aPackingLead(app, storehouse, households.Corran, 'Lee Corran');
    const held = await storehouse.coordinator.post(at(`/bags/${bag.bagId}/holds`), { reason: 'A smell.' });
    const use = { grams: 100, to: 'eaten' };
    for (const call of [
      () => shelves.pour(caller, bag),
      () => caller.post(at(`/containers/${can.id}/pours`), { bagId: bag.bagId, grams: 100 }),
      () => caller.post(at(`/bags/${bag.bagId}/uses`), use),
    ])
      expect(await refusalOf(app, call)).toEqual(refused(409, 'bag-on-hold'));
    const hold = at(`/holds/${bodyOf(held, 201).id}`);
    bodyOf(await lead.caller.post(`${hold}/release-request`, { finding: 'Only the sack smells.' }), 200);
    bodyOf(await storehouse.coordinator.post(`${hold}/release`), 200);
    expect((await shelves.pour(caller, bag)).status).toBe(201);
  });
});

describe('taking grams out for good', () => {
  test('opens a can on the day that it is first eaten from, and never takes more than is in it', async () => {
    const { caller, householdId } = households.Birchall;
    const can = await shelves.aCan(caller, wheat.Birchall);
    const uses = at(`/containers/${can.id}/uses`);
    const eaten = bodyOf(await caller.post(uses, { grams: 400, to: 'eaten' }), 201);
    expect(eaten).toMatchObject({ grams: 600, openedOn: '2026-09-01' });
    const call = () => caller.post(uses, { grams: 601, to: 'given' });
    expect(await refusalOf(app, call)).toEqual(refused(409, 'not-enough-left', 'grams'));
    expect((await call()).body.detail).toBe(`There are 600 g left in ${can.code}.`);
    expect(bodyOf(await caller.post(uses, { grams: 600, to: 'composted' }), 201).grams).toBe(0);
    const [gone] = await app.admin<{ eaten: number; composted: number }[]>`select
      sum(inflow) filter (where vessel_kind = 'eaten')::int as eaten,
      sum(inflow) filter (where vessel_kind = 'composted')::int as composted
      from book.account where owner_id = ${householdId}`;
    expect(gone).toEqual({ eaten: 400, composted: 600 });
  });

  test('goes for one’s own grams of a bag too', async () => {
    const { caller, householdId } = households.Corran;
    const { bagId, grams } = wheat.Corran;
    const uses = at(`/bags/${bagId}/uses`);
    const left = bodyOf(await caller.post(uses, { grams: 700, to: 'eaten' }), 201);
    expect(left).toMatchObject({ bagId, grams: grams - 700 });
    expect(await shelves.gramsIn(bagId, householdId)).toBe(grams - 700);
    const call = () => caller.post(uses, { grams: grams - 699, to: 'eaten' });
    expect(await refusalOf(app, call)).toEqual(refused(409, 'not-enough-left', 'grams'));
  });
});

describe('undoing a pour (ledger-notes 6.3)', () => {
  const undo = (caller: Caller, entryId: string) =>
    caller.post(at(`/pours/${entryId}/undoing`), { reason: 'the wrong bag' });

  test('puts every gram back into its bag, once', async () => {
    const { caller, householdId } = households.Birchall;
    const before = await shelves.gramsIn(wheat.Birchall.bagId, householdId);
    const { entryId, containers } = bodyOf(await shelves.pour(caller, wheat.Birchall, { count: 3 }), 201);
    bodyOf(await undo(caller, entryId), 201);
    expect(await shelves.gramsIn(wheat.Birchall.bagId, householdId)).toBe(before);
    for (const { id } of containers) expect((await caller.get(at(`/containers/${id}`))).body.grams).toBe(0);
    expect(await refusalOf(app, () => undo(caller, entryId))).toEqual(refused(409, 'already-reversed'));
    // Their labels are thrown away: nothing is poured under them again.
    const [can] = containers;
    const again = () =>
      caller.post(at(`/containers/${can.id}/pours`), { bagId: wheat.Birchall.bagId, grams: 100 });
    expect(await refusalOf(app, again)).toEqual(refused(409, 'label-used'));
  });

  test('is refused once one of its cans was eaten from, and names that can', async () => {
    const { caller } = households.Birchall;
    const { entryId, containers } = bodyOf(await shelves.pour(caller, wheat.Birchall, { count: 2 }), 201);
    const [, second] = containers;
    bodyOf(await caller.post(at(`/containers/${second.id}/uses`), { grams: 1, to: 'eaten' }), 201);
    expect(await refusalOf(app, () => undo(caller, entryId))).toEqual(refused(409, 'cannot-reverse'));
    expect((await undo(caller, entryId)).body.containers).toEqual([second.code]);
  });

  test('is for the household that poured, and for pours alone', async () => {
    const { entryId } = await shelves.aCan(households.Birchall.caller, wheat.Birchall);
    const foreign = () => undo(households.Corran.caller, entryId);
    expect(await refusalOf(app, foreign)).toEqual(refused(404, 'thing-not-found'));
    const [split] = await app.admin<{ entry_id: string }[]>`
      select entry_id from book.entry where what = 'split-made' limit 1`;
    const other = () => undo(households.Birchall.caller, split?.entry_id ?? '');
    expect(await refusalOf(app, other)).toEqual(refused(404, 'thing-not-found'));
  });
});

test('the book holds up to its audit after all of this', async () => {
  const audit = bodyOf(await buy.treasurer.get(at('/audit')));
  expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
