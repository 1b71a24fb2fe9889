import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import {
  aPackingSession,
  aPourBody,
  bringWheat,
  cansOf,
  openHall,
  type TestHall,
} from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

// What a phone wrote down at the line and sent later keeps its own hour.
const MINUTE = 60_000;

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

const wait = (minutes: number) => {
  app.clock.now = new Date(app.clock.now.getTime() + minutes * MINUTE);
};
const ago = (minutes: number) => new Date(app.clock.now.getTime() - minutes * MINUTE).toISOString();
const at = (path: string) => `${storehouse.path}${path}`;

type Line = { day: string; seamer: TestSeamer; oldId: string };

/** A can that did not pass and is to go into a new one, on a machine that runs again. */
async function aLineThatReCans(name: string): Promise<Line> {
  const { caller } = hall.lead;
  const seamer = await aSeamer(storehouse, hall, name);
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const pour = aPourBody(hall, { name: 'Ashdown', grams: [50], targetGrams: 50 });
  const { containers } = bodyOf(await caller.post(`${day}/pours`, pour), 201);
  const [{ id: oldId }] = containers;
  bodyOf(await seamer.check(day, { serial: 1, measures: THICK }), 201);
  for (const _ of [1, 2, 3]) {
    wait(1);
    bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  }
  const answer = { containerIds: [oldId], disposition: 're-can', note: 'too thick' };
  bodyOf(await caller.post(at('/seal-holds/settling'), answer));
  wait(10);
  return { day, seamer, oldId };
}
const reCan = ({ oldId }: Line, wish: Record<string, unknown>) =>
  hall.lead.caller.post(at('/re-cannings'), {
    ...{ containers: [{ containerId: oldId }], containerKindId: hall.shelves.kinds['can-no-10'] },
    ...{ treatment: 'none', ...wish },
  });

test('a can that was filled anew before its machine stopped is taken late, is in doubt, and its owner hears of both', async () => {
  const line = await aLineThatReCans('First seamer');
  const doneAt = ago(5);
  bodyOf(await line.seamer.check(line.day, { measures: THICK }), 201);
  expect((await reCan(line, { doneAt: app.clock.now.toISOString() })).body.code).toBe('machine-is-out');
  bodyOf(await reCan(line, { doneAt }), 201);
  const { windows } = bodyOf(await hall.lead.caller.get(`${line.day}/seals`));
  const open = windows
    .flatMap(({ suspects }: { suspects: { serial: number; disposition: string | null }[] }) => suspects)
    .filter(({ disposition }: { disposition: string | null }) => disposition === null);
  expect(open).toMatchObject([{ serial: 2 }]);
  const { notices } = bodyOf(await hall.buy.households.Ashdown.caller.get(at('/notices')));
  const [held, moved] = notices;
  expect([held.kind, held.isSafety, moved.kind]).toEqual(['held', true, 'packing']);
  expect(held.words).toContain('was written down only now');
});

test('a can that was filled anew while its machine ran counts from that hour, and none from a time to come', async () => {
  const line = await aLineThatReCans('Second seamer');
  bodyOf(await line.seamer.check(line.day), 201);
  const doneAt = ago(5);
  bodyOf(await reCan(line, { doneAt }), 201);
  // The good check was made after it, so it stands behind it too.
  expect(bodyOf(await hall.lead.caller.get(`${line.day}/log`)).unchecked).toEqual([]);
  const other = await aLineThatReCans('Third seamer');
  expect(await refusalOf(app, () => reCan(other, { doneAt: ago(-40) }))).toEqual(
    refused(400, 'invalid-input', 'doneAt'),
  );
});

test('a household that was seen before its time was freed came at that hour, and gets the next time all the same', async () => {
  const { caller } = hall.buy.households.Dell;
  const hours = { startsAt: new Date(app.clock.now.getTime() + 60 * MINUTE).toISOString() };
  const endsAt = new Date(app.clock.now.getTime() + 300 * MINUTE).toISOString();
  const day = await aPackingSession(storehouse, hall, { ...hours, endsAt, setupMinutes: 0 });
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall)] }));
  const { id } = bodyOf(await caller.post(`${day}/slots`, { ...hours, orWait: false }), 201);
  wait(60);
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  wait(15);
  const seen = (minutes: number, isHere = true) =>
    hall.lead.caller.put(`${day}/slots/${id}/arrival`, { isHere, cameAt: ago(minutes) });
  expect(bodyOf(await seen(10))).toMatchObject({ state: 'booked', cameAt: ago(10) });
  expect(bodyOf(await seen(3, false))).toMatchObject({ cameAt: null });
  const cameAt = ago(10);
  await app.admin`update book.packing_slot set state = 'not-come', freed_at = ${app.clock.now}
    where packing_slot_id = ${id}`;
  wait(20);
  const late = bodyOf(await hall.lead.caller.put(`${day}/slots/${id}/arrival`, { isHere: true, cameAt }));
  expect(late).toMatchObject({ state: 'booked', cameAt, startsAt: app.clock.now.toISOString() });
  expect(await refusalOf(app, () => seen(-40))).toEqual(refused(400, 'invalid-input', 'cameAt'));
});
