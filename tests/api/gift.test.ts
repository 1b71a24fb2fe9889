import { addDays } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let cans: GivenCan[];
let homePantry: string;
let makerPantry: string;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  cans = await commonCans(storehouse, [
    { food: 'rice-white-long', grams: 2_400, count: 4, stored: '2020-01' },
    { food: 'beans-pinto', grams: 2_200, count: 2, stored: '2020-01' },
  ]);
  const add = async (name: string, card: object, facts: object) =>
    bodyOf(await post('/pantries', aPantryWish(name, card, facts)), 201).id as string;
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  homePantry = await add('Takes what is home-packed', { ...late }, { distanceMetres: 9_000 });
  makerPantry = await add(
    'Sealed by a maker only',
    { ...late, acceptsHomePacked: false },
    { distanceMetres: 1_000 },
  );
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const post = (rest: string, body: unknown) => storehouse.coordinator.post(at(rest), body);
const get = async (rest: string) => bodyOf(await storehouse.coordinator.get(at(rest)));
/** The next Tuesday of the app's clock: both doors are open. */
const tuesday = () => {
  const today = app.clock.now.toISOString().slice(0, 10);
  const days = [0, 1, 2, 3, 4, 5, 6].find(
    (ahead) => new Date(`${addDays(today, ahead)}T00:00:00Z`).getUTCDay() === 2,
  );
  return addDays(today, days ?? 0);
};
const trip = (pantryId: string, capacityGrams = 100_000) => ({ pantryId, onDay: tuesday(), capacityGrams });
const match = async (...trips: object[]) => bodyOf(await post('/gift-matchings', { trips }), 201);
const signOut = (matchingId: string, more: object = {}) =>
  post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth', ...more });
const codes = (rows: readonly { code: string }[]) => rows.map(({ code }) => code).toSorted();
const queued = async (code: string) =>
  (await get('/giving-queue')).containers.find((row: { code: string }) => row.code === code);
/** Grams of common stock in its containers, and what was given, thrown away or fed away, summed from the movements. */
const balance = async () => {
  const rows = await app.admin<{ kind: string; grams: string }[]>`
    select a.vessel_kind as kind, sum(a.inflow - a.outflow) as grams from book.account a
    where a.kind = 'mass' group by 1`;
  return Object.fromEntries(rows.map(({ kind, grams }) => [kind, Number(grams)]));
};

describe('the matching', () => {
  test('tells for each container and trip every rule that forbids it, and takes nothing home-packed to makers-only', async () => {
    const matching = await match(trip(makerPantry), trip(homePantry));
    expect(matching.trips.map(({ grams }: { grams: number }) => grams)).toEqual([0, 14_000]);
    for (const lot of matching.lots) expect(lot.refusals).toEqual([['home-packed-not-taken'], []]);
    expect(matching.givenGrams).toBe(14_000);
    expect(await get(`/gift-matchings/${matching.id}`)).toEqual(matching);
  });

  test('loses nothing to the nearest door where the nearest door would lose some', async () => {
    const beans = cans.filter(({ grams }) => grams === 2_200);
    for (const { id } of beans)
      bodyOf(
        await storehouse.coordinator.put(at(`/containers/${id}/gift-facts`), {
          ...{
            sealedBy: 'maker',
            labelFacts: ['product', 'pack-date'],
            isTreatedSeed: false,
            isMouldy: false,
          },
        }),
      );
    // Beans may go to both. The nearer door has room for two tins; the farther one for four, and rice goes there alone.
    const matching = await match(trip(makerPantry, 4_400), trip(homePantry, 9_600));
    expect(matching.givenGrams).toBe(14_000);
    expect(matching.nearest.givenGrams).toBeLessThanOrEqual(14_000);
    expect(matching.trips.map(({ grams }: { grams: number }) => grams)).toEqual([4_400, 9_600]);
  });

  test('a trip goes on a day when the door is open, still to come, and once', async () => {
    const wish = trip(homePantry);
    const refuse = (trips: object[]) => refusalOf(app, () => post('/gift-matchings', { trips }));
    const closed = { ...wish, onDay: addDays(wish.onDay, 1) };
    expect(await refuse([closed])).toEqual(refused(400, 'invalid-input', 'trips.0.onDay'));
    expect(await refuse([{ ...wish, onDay: addDays(wish.onDay, -28) }])).toEqual(
      refused(400, 'invalid-input', 'trips.0.onDay'),
    );
    expect(await refuse([wish, wish])).toEqual(refused(400, 'invalid-input', 'trips'));
    expect(await refuse([{ ...wish, capacityGrams: 0 }])).toEqual(
      refused(400, 'invalid-input', 'trips.0.capacityGrams'),
    );
  });
});

describe('a manifest', () => {
  test('goes out, comes back with a receipt, and what was accepted has left the books; undone, all is back', async () => {
    const { id } = await match(trip(homePantry));
    const before = await balance();
    const manifest = bodyOf(await signOut(id), 201);
    expect(codes(manifest.lines)).toEqual(codes(cans));
    expect(JSON.stringify(manifest)).not.toMatch(/household/i);
    expect(await balance()).toEqual(before);
    expect(await queued(manifest.lines[0].code)).toMatchObject({ outOn: manifest.number });
    // What is out is on no second manifest, and goes down no ladder.
    expect(await refusalOf(app, () => signOut(id))).toMatchObject({ status: 409, code: 'gift-refused' });
    const step = () =>
      post(`/containers/${cans[0]?.id}/ladder-steps`, { to: 'composted', reason: 'weevils' });
    expect(await refusalOf(app, step)).toMatchObject({ status: 409, code: 'gift-refused' });

    app.clock.now = new Date(`${manifest.onDay}T20:00:00Z`);
    const back = manifest.lines[0];
    const receipt = { receivedOn: manifest.onDay, receiverDuty: 'intake desk' };
    const write = (version: number, more: object = {}) =>
      post(`/gift-manifests/${manifest.id}/receipt`, {
        ...{
          version,
          ...receipt,
          refused: [{ containerId: back.containerId, reason: 'a dent on the seam' }],
        },
        ...more,
      });
    expect(await refusalOf(app, () => write(7))).toEqual(refused(409, 'stale-version'));
    const stranger = { refused: [{ containerId: homePantry, reason: 'never saw it' }] };
    expect(await refusalOf(app, () => write(1, stranger))).toEqual(
      refused(400, 'invalid-input', 'refused.0.containerId'),
    );
    const early = { receivedOn: addDays(manifest.onDay, -1) };
    expect(await refusalOf(app, () => write(1, early))).toEqual(refused(400, 'invalid-input', 'receivedOn'));
    const received = bodyOf(await write(1));
    expect(received).toMatchObject({
      ...{ stage: 'received', grams: 14_000, refusedGrams: back.grams, acceptedGrams: 14_000 - back.grams },
    });
    const after = await balance();
    expect(after.given).toBe((before.given ?? 0) + 14_000 - back.grams);
    expect(after.container).toBe((before.container ?? 0) - 14_000 + back.grams);
    expect(await queued(back.code)).toMatchObject({
      ...{ outOn: null, grams: back.grams },
      cameBack: { pantry: 'Takes what is home-packed', onDay: manifest.onDay, reason: 'a dent on the seam' },
    });
    const year = await get(`/gift-year?year=${manifest.onDay.slice(0, 4)}`);
    const grams = 14_000 - back.grams;
    expect(year).toMatchObject({ all: { grams, meals: Math.floor(grams / 544) }, own: { grams: 0 } });

    expect(await refusalOf(app, () => write(received.version))).toMatchObject({ code: 'gift-refused' });
    const undo = { version: received.version, reason: 'the wrong slip' };
    bodyOf(await post(`/gift-manifests/${manifest.id}/receipt-undoing`, undo));
    const undone = await balance();
    expect(undone.given ?? 0).toBe(before.given ?? 0);
    expect(undone.container).toBe(before.container);
    const off = { version: received.version + 1, reason: 'the van broke down' };
    expect(bodyOf(await post(`/gift-manifests/${manifest.id}/calling-off`, off))).toMatchObject({
      stage: 'called-off',
    });
    expect(await queued(back.code)).toMatchObject({ outOn: null, cameBack: null });
  });

  test('is refused with the rule of it, when a card, a container or a day has moved on since the matching', async () => {
    const wish = trip(homePantry);
    const { id } = await match(wish);
    const [first] = cans;
    const say = (isMouldy: boolean) =>
      storehouse.coordinator.put(at(`/containers/${first?.id}/gift-facts`), {
        ...{ sealedBy: 'home', labelFacts: ['product', 'pack-date'], isTreatedSeed: false, isMouldy },
      });
    bodyOf(await say(true));
    expect(await refusalOf(app, () => signOut(id))).toEqual(refused(409, 'gift-refused', 'trip'));
    expect((await signOut(id)).body.detail).toBe(`${first?.code} was found mouldy.`);
    bodyOf(await say(false));
    const pantry = await get(`/pantries/${homePantry}`);
    const { version, writtenAt: _at, writtenBy: _by, ...card } = pantry.card;
    bodyOf(await storehouse.coordinator.put(at(`/pantries/${homePantry}/card`), { version, card }));
    expect((await signOut(id)).body.detail).toContain('has a newer card');
    expect(await refusalOf(app, () => signOut(id))).toEqual(refused(409, 'gift-refused', 'trip'));
  });
});

describe('the ladder', () => {
  test('treated or mouldy food is thrown away and reaches neither people nor animals, in the database too', async () => {
    const [, can] = cans;
    const facts = { sealedBy: 'home', labelFacts: [], isTreatedSeed: true, isMouldy: false };
    const said = await storehouse.coordinator.put(at(`/containers/${can?.id}/gift-facts`), facts);
    expect(bodyOf(said).steps).toEqual(['discard']);
    const step = (to: string) => post(`/containers/${can?.id}/ladder-steps`, { to, reason: 'red seed' });
    for (const to of ['animals', 'composted'])
      expect(await refusalOf(app, () => step(to))).toEqual(refused(409, 'gift-refused', 'to'));
    const forced = app.admin`
      insert into book.gift_line (storehouse_id, gift_manifest_id, container_id, position, owner_id, grams, eat_first_on, gift_closes_on)
      select l.storehouse_id, l.gift_manifest_id, ${can?.id ?? ''}, 99, l.owner_id, 1, l.eat_first_on, l.gift_closes_on
      from book.gift_line l limit 1`;
    await expect(forced).rejects.toMatchObject({ constraint_name: 'gift_is_fit' });
    const before = await balance();
    bodyOf(await step('discarded'), 201);
    const after = await balance();
    expect(after.discarded).toBe((before.discarded ?? 0) + (can?.grams ?? 0));
    expect(await queued(can?.code ?? '')).toBeUndefined();
  });

  test('what an inspection found decides, and a later one decides anew', async () => {
    const can = cans[2];
    const look = async (findings: string[], outcome: string) =>
      bodyOf(await post(`/containers/${can?.id}/inspections`, { how: 'outside', findings, outcome }), 201);
    const step = (to: string) => post(`/containers/${can?.id}/ladder-steps`, { to, reason: 'unfit' });
    const { id } = await match(trip(homePantry));
    const unlooked = (await queued(can?.code ?? '')).steps;

    await look(['mould'], 'discard');
    expect(await queued(can?.code ?? '')).toMatchObject({ steps: ['discard'], facts: { isMouldy: false } });
    for (const to of ['animals', 'composted'])
      expect(await refusalOf(app, () => step(to))).toEqual(refused(409, 'gift-refused', 'to'));
    expect(await refusalOf(app, () => signOut(id))).toEqual(refused(409, 'gift-refused', 'trip', 'trip'));
    expect((await signOut(id)).body.detail).toBe(
      `${can?.code} was found mouldy. What was found in ${can?.code} lets it go to no pantry.`,
    );

    await look(['webbing'], 'compost');
    expect((await queued(can?.code ?? '')).steps).toEqual(['compost', 'discard']);
    expect(await refusalOf(app, () => step('animals'))).toEqual(refused(409, 'gift-refused', 'to'));

    await look(['loose-seal'], 'kitchen-soon');
    expect((await queued(can?.code ?? '')).steps).not.toContain('pantry');
    const matching = await match(trip(homePantry));
    const ofCan = matching.lots.find((lot: { containers: { code: string }[] }) =>
      lot.containers.some(({ code }) => code === can?.code),
    );
    expect(ofCan.refusals).toEqual([['found-unfit']]);

    await look(['nothing-wrong'], 'table');
    expect((await queued(can?.code ?? '')).steps).toEqual(expect.arrayContaining(unlooked));
    bodyOf(await signOut(id), 201);
  });

  test('what is a household’s own is not there to be given', async () => {
    const NOBODY = '018f0000-0000-7000-8000-000000000000';
    const step = () => post(`/containers/${NOBODY}/ladder-steps`, { to: 'animals', reason: 'hens' });
    expect(await refusalOf(app, step)).toEqual(refused(404, 'thing-not-found'));
  });

  test('what closes first stands in front', async () => {
    const { containers } = await get('/giving-queue');
    const closes = containers.map(
      ({ giftClosesOn }: { giftClosesOn: string | null }) => giftClosesOn ?? '9999',
    );
    expect(closes).toEqual(closes.toSorted());
  });
});
