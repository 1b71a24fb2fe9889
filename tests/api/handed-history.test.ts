import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { offersOf } from '../support/offer.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let giver: TestHousehold;
let taker: TestHousehold;
let stock: TestStock;
let vault: string;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  giver = await aHousehold(app, storehouse, 'Birchall');
  taker = await aHousehold(app, storehouse, 'Eames');
  stock = await stockOf(storehouse, giver);
  const facts = { kind: 'cellar', isLit: false, isDamp: false, isRodentProof: true };
  const place = { of: 'household', name: 'Grandmother’s vault', ...facts };
  vault = bodyOf(await giver.caller.post(at('/places'), place), 201).id;
  const months = ['2022', '2023', '2024', '2025', '2026'].flatMap((year) =>
    Array.from({ length: year === '2026' ? 8 : 12 }, (_, month) => ({
      month: `${year}-${String(month + 1).padStart(2, '0')}`,
      tenthsCelsius: 120,
    })),
  );
  bodyOf(await giver.caller.put(at(`/places/${vault}/months`), { months }));
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const offers = () => offersOf(app, storehouse);
const keepingOf = async (caller: Caller, id: string) =>
  bodyOf(await caller.get(at(`/containers/${id}/keeping`)));
const aCan = () => stock.bringCan({ packedOn: '2022-01-01', gramsEach: 2_000 });

test('a can that changes hands keeps how warm it stood, and not where', async () => {
  const [cool, unknown] = [await aCan(), await aCan()];
  const move = { containerIds: [cool.id], placeId: vault, movedOn: '2022-01-01' };
  bodyOf(await giver.caller.post(at('/container-moves'), move), 201);
  const before = await keepingOf(giver.caller, cool.id);
  expect(before.stays).toMatchObject([
    { place: { name: 'Grandmother’s vault' }, steadyTenths: 120, known: 'read' },
  ]);

  const { id: offerId } = bodyOf(await offers().offer(giver.caller, [cool.id, unknown.id]), 201);
  bodyOf(await offers().claim(taker.caller, offerId, [cool.id, unknown.id]), 201);
  const after = await keepingOf(taker.caller, cool.id);
  const guessed = await keepingOf(taker.caller, unknown.id);
  expect(after.stays).toMatchObject([
    { ...before.stays[0], place: null },
    { fromOn: '2026-09-01', place: null, known: 'unknown' },
  ]);
  expect(guessed.stays[0]).toMatchObject({ known: 'unknown' });
  expect(after.stays[0].usedDays).toBeLessThan(guessed.stays[0].usedDays / 3);
  expect(after.keeping.likelyDays).toBeGreaterThan(guessed.keeping.likelyDays);

  for (const path of [
    `/containers/${cool.id}/keeping`,
    `/containers/${cool.id}/moves`,
    '/places',
    '/rotation',
  ]) {
    const seen = JSON.stringify(bodyOf(await taker.caller.get(at(path))));
    expect(seen).not.toContain('vault');
    expect(seen).not.toContain(vault);
  }
  // Only the days on which it stood there: what the place is like since is its household's own.
  const months = [{ month: '2021-06', tenthsCelsius: 300 }];
  bodyOf(await giver.caller.put(at(`/places/${vault}/months`), { months }));
  const rows = await app.admin.begin(async (tx) => {
    await tx`set local role sheafbook_app`;
    await tx`select set_config('app.storehouse', ${storehouse.storehouseId}, true),
      set_config('app.household', ${taker.householdId}, true), set_config('app.task', '', true)`;
    const [direct] = await tx`select count(*)::int as count from book.place_warmth where place_id = ${vault}`;
    const kept =
      await tx`select from_on::text from book.list_kept_warmth(${storehouse.storehouseId}, ${[cool.id]}::uuid[])
      order by 1`;
    const [task] = await tx`select current_setting('app.task') as task`;
    return { direct: direct?.count, first: kept[0]?.from_on, count: kept.length, task: task?.task };
  });
  expect(rows).toEqual({ direct: 0, first: '2022-01-01', count: 56, task: '' });
});

const lookAt = (caller: Caller, id: string, found: Record<string, unknown>) =>
  caller.post(at(`/containers/${id}/inspections`), {
    ...{ how: 'outside', kernels: null, note: 'Ida saw it behind the stove', isMovedOut: false },
    ...found,
  });
const inspectionsOf = async (caller: Caller, id: string) =>
  bodyOf(await caller.get(at(`/containers/${id}/inspections`))).inspections;

test('whoever takes a can reads what was found on it before, and neither who looked, what they noted, nor who moved it', async () => {
  const can = await aCan();
  const move = { containerIds: [can.id], placeId: vault, movedOn: '2022-03-01' };
  bodyOf(await giver.caller.post(at('/container-moves'), move), 201);
  bodyOf(await lookAt(giver.caller, can.id, { findings: ['surface-rust'], outcome: 'kitchen-soon' }), 201);
  const giversName = bodyOf(await giver.caller.get(at(`/containers/${can.id}/moves`))).moves[0].movedBy;
  expect(giversName).toContain('Birchall');
  offers().after(1);
  const { id: offerId } = bodyOf(await offers().offer(giver.caller, [can.id]), 201);
  expect((await taker.caller.get(at(`/containers/${can.id}/inspections`))).status).toBe(404);
  bodyOf(await offers().claim(taker.caller, offerId, [can.id]), 201);

  const [look, ...none] = await inspectionsOf(taker.caller, can.id);
  expect(none).toEqual([]);
  expect(look).toMatchObject({
    ...{ how: 'outside', outcome: { code: 'kitchen-soon' }, findings: [{ code: 'surface-rust' }] },
    ...{ isOwn: false, note: '', entryId: null, inspectedOn: expect.any(String) },
  });
  const { container } = bodyOf(await taker.caller.get(at(`/containers/${can.id}/inspections`)));
  expect(container.lastInspectedOn).toBe(look.inspectedOn);
  const { moves } = bodyOf(await taker.caller.get(at(`/containers/${can.id}/moves`)));
  expect(moves).toMatchObject([
    { movedOn: '2022-03-01', place: null, movedBy: null },
    { place: null, movedBy: expect.stringContaining('Eames') },
  ]);
  for (const path of ['keeping', 'moves', 'inspections'])
    expect(JSON.stringify(bodyOf(await taker.caller.get(at(`/containers/${can.id}/${path}`))))).not.toMatch(
      /Birchall|stove/,
    );
  // The next look is the new household's own, and the old one has nothing of it any more.
  bodyOf(await lookAt(taker.caller, can.id, { findings: ['nothing-wrong'], outcome: 'table' }), 201);
  expect((await inspectionsOf(taker.caller, can.id)).map(({ isOwn }: { isOwn: boolean }) => isOwn)).toEqual([
    true,
    false,
  ]);
  for (const path of ['moves', 'inspections'])
    expect((await giver.caller.get(at(`/containers/${can.id}/${path}`))).status).toBe(404);
});

test('what its household finds on a can that stands offered keeps it from whoever would take it', async () => {
  const can = await aCan();
  const { id: offerId } = bodyOf(await offers().offer(giver.caller, [can.id]), 201);
  bodyOf(await lookAt(giver.caller, can.id, { findings: ['rodent-marks'], outcome: 'discard' }), 201);
  const taken = await offers().claim(taker.caller, offerId, [can.id]);
  expect([taken.status, taken.body.code]).toEqual([409, 'inspection-forbids']);
});

test('the database tells the looks at a can to its household, and to no other', async () => {
  const can = await aCan();
  bodyOf(await lookAt(giver.caller, can.id, { findings: ['rodent-marks'], outcome: 'discard' }), 201);
  const asked = (householdId: string) =>
    app.admin.begin(async (tx) => {
      await tx`set local role sheafbook_app`;
      await tx`select set_config('app.storehouse', ${storehouse.storehouseId}, true),
        set_config('app.household', ${householdId}, true), set_config('app.task', '', true)`;
      const looks = await tx`select findings, note, is_own
        from book.list_looks(${storehouse.storehouseId}, ${[can.id]}::uuid[])`;
      const [task] = await tx`select current_setting('app.task') as task`;
      return { looks: [...looks], task: task?.task };
    });
  const own = { findings: ['rodent-marks'], note: 'Ida saw it behind the stove', is_own: true };
  expect(await asked(giver.householdId)).toEqual({ looks: [own], task: '' });
  expect(await asked(taker.householdId)).toEqual({ looks: [], task: '' });
});

test('what a household found on what it handed over keeps it from the pantries, and nobody reads who found it', async () => {
  // Young ones, so that they are not past their day when the offer is over.
  const young = () => stock.bringCan({ packedOn: '2026-07-01', gramsEach: 2_000 });
  const [sound, mouldy] = [await young(), await young()];
  bodyOf(await offers().offer(giver.caller, [sound.id, mouldy.id], { goesToPantry: true }), 201);
  offers().after(22 * 24);
  const queue = async () => {
    const { containers } = bodyOf(await storehouse.coordinator.get(at('/giving-queue')));
    return new Map<string, { steps: string[] }>(containers.map((row: { id: string }) => [row.id, row]));
  };
  expect((await queue()).get(mouldy.id)?.steps).toEqual((await queue()).get(sound.id)?.steps);
  expect((await queue()).get(mouldy.id)?.steps).toContain('own-kitchen');
  const looked = {
    ...{ how: 'outside', findings: ['rodent-marks'], outcome: 'discard', kernels: null },
    ...{ note: 'Ida saw it', isMovedOut: false },
  };
  bodyOf(await giver.caller.post(at(`/containers/${mouldy.id}/inspections`), looked), 201);
  const found = (await queue()).get(mouldy.id);
  for (const step of ['own-kitchen', 'members', 'pantry']) expect(found?.steps).not.toContain(step);
  expect(found?.steps).toContain('discard');
  expect((await queue()).get(sound.id)?.steps).toContain('own-kitchen');
  expect((await queue()).get(sound.id)?.steps).not.toContain('members'); // they were asked, and the offer is over
  expect(JSON.stringify(found)).not.toMatch(/Ida|Birchall/);
  const inspections = await storehouse.coordinator.get(at(`/containers/${mouldy.id}/inspections`));
  expect(inspections.status).toBe(404);
});
