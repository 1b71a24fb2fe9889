import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import type { Shelves, TestCan, TestPiece } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let households: GrainHouseholds;
let shelves: Shelves;
let ashdowns: TestPiece;
let birchalls: TestPiece;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  households = hall.buy.households;
  shelves = hall.shelves;
  ({ Ashdown: ashdowns, Birchall: birchalls } = hall.wheat);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const look = (caller: Caller, { id }: { id: string }, wish: Record<string, unknown>) =>
  caller.post(at(`/containers/${id}/inspections`), { how: 'outside', ...wish });
const BULGED = { findings: ['bulge-hiss-spurt'], outcome: 'discard' };
const eat =
  (caller: Caller, { id }: { id: string }) =>
  () =>
    caller.post(at(`/containers/${id}/uses`), { grams: 10, to: 'eaten' });
const openHolds = async (caller: Caller) => bodyOf(await caller.get(at('/holds?open=true'))).holds;

let found: TestCan;
let own: TestCan;
let theirs: TestCan;
let eaten: TestCan;

test('a bulge puts what was closed with it on hold, whoever has it, and names nobody', async () => {
  const [ashdown, birchall] = [households.Ashdown.caller, households.Birchall.caller];
  found = await shelves.aCan(ashdown, ashdowns, 500);
  own = await shelves.aCan(ashdown, ashdowns, 500);
  theirs = await shelves.aCan(birchall, birchalls, 500);
  eaten = await shelves.aCan(birchall, birchalls, 500);
  bodyOf(await birchall.post(at(`/containers/${eaten.id}/uses`), { grams: 500, to: 'eaten' }), 201);
  bodyOf(await look(ashdown, found, { ...BULGED, isMovedOut: true }), 201);
  for (const call of [eat(ashdown, own), eat(birchall, theirs)])
    expect(await refusalOf(app, call)).toEqual(refused(409, 'on-hold'));
  const [hold, ...more] = await openHolds(birchall);
  expect(more).toEqual([]);
  expect(hold).toMatchObject({ scope: 'containers', about: '', heldBy: null, vessels: null, grams: null });
  const inSpanish = bodyOf(await birchall.get(at('/holds?open=true'), { 'Accept-Language': 'es' })).holds;
  expect(inSpanish[0]).toMatchObject({
    reason: hold.reason,
    sentence: expect.stringMatching(/^Se revisó un envase cerrado junto con él: /),
  });
  expect(inSpanish[0].sentence).not.toMatch(/Bulged/);
  const [seen] = await openHolds(storehouse.coordinator);
  expect(seen).toMatchObject({ heldBy: households.Ashdown.personId, vessels: 3, grams: 1000 });
  const { notices } = bodyOf(await birchall.get(at('/notices')));
  expect(notices[0]).toMatchObject({ kind: 'held', isSafety: true });
  expect(notices[0].words).toMatch(/Bulged.*You used some of it before: say what became of it\.$/);
  expect(JSON.stringify(notices)).not.toMatch(/Ashdown/);
  const spanish = bodyOf(await birchall.get(at('/notices'), { 'Accept-Language': 'es' })).notices;
  expect(spanish[0].words).toMatch(/^Un alimento que usted tiene está retenido: se revisó un envase/);
});

test('what is poured afterwards from the same bag is not held, and a second bulge holds it beside', async () => {
  const { caller } = households.Ashdown;
  const later = await shelves.aCan(caller, ashdowns, 500);
  expect((await eat(caller, later)()).status).toBe(201);
  bodyOf(await look(caller, own, BULGED), 201); // a held can is looked at like any other
  expect(await refusalOf(app, eat(caller, later))).toEqual(refused(409, 'on-hold'));
  const holds = await openHolds(storehouse.coordinator);
  // The later one and the first, empty one, which no hold had yet; what is held for a bulge already is in no second hold.
  expect(holds.map(({ vessels }: { vessels: number }) => vessels)).toEqual([3, 2]);
});

test('it ends by a written finding and two logins, and not by a look of one', async () => {
  const { caller } = households.Birchall;
  bodyOf(await look(caller, theirs, { findings: ['nothing-wrong'], outcome: 'table' }), 201);
  expect(await refusalOf(app, eat(caller, theirs))).toEqual(refused(409, 'on-hold'));
  for (const hold of await openHolds(storehouse.coordinator)) {
    const path = at(`/holds/${hold.id}`);
    const lead = hall.lead.caller;
    const alone = () => storehouse.coordinator.post(`${path}/release`);
    expect(await refusalOf(app, alone)).toEqual(refused(409, 'second-login-needed'));
    const silent = () => lead.post(`${path}/release-request`, { finding: ' ' });
    expect(await refusalOf(app, silent)).toEqual(refused(400, 'invalid-input', 'finding'));
    const finding = 'Both looked at every can from outside: flat ends, dry seams.';
    bodyOf(await lead.post(`${path}/release-request`, { finding }));
    expect(await refusalOf(app, () => lead.post(`${path}/release`))).toEqual(
      refused(409, 'second-login-needed'),
    );
    bodyOf(await storehouse.coordinator.post(`${path}/release`));
  }
  expect((await eat(caller, theirs)()).status).toBe(201);
  // What was found on it still stands, whatever became of the hold.
  expect(await refusalOf(app, eat(households.Ashdown.caller, own))).toEqual(
    refused(409, 'inspection-forbids', 'to'),
  );
});

test('what was closed on a packing day is held with what was closed that day alone', async () => {
  const { caller } = households.Ashdown;
  const lead = hall.lead.caller;
  const atHome = await shelves.aCan(caller, ashdowns, 500);
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await lead.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const pour = aPourBody(hall, { name: 'Ashdown', grams: [2_400, 2_400], targetGrams: 2_400 });
  const [first, second] = bodyOf(await lead.post(`${day}/pours`, pour), 201).containers;
  bodyOf(await look(caller, first, { findings: ['leak'], outcome: 'discard' }), 201);
  expect(await refusalOf(app, eat(caller, second))).toEqual(refused(409, 'on-hold'));
  expect((await eat(caller, atHome)()).status).toBe(201);
});
