import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
  day = await aPackingSession(storehouse, hall);
  bodyOf(await lead().post(`${day}/start`));
  for (const name of ['Ashdown', 'Dell'] as const) await bringWheat(hall, day, name);
});
afterAll(() => app.close());

type Suspect = {
  containerId: string;
  serial: number;
  state: string;
  spelled: string;
  disposition: string | null;
};
const lead = () => hall.lead.caller;
const at = (path: string) => `${storehouse.path}${path}`;
const pour = async (name: 'Ashdown' | 'Dell', cans: number) =>
  bodyOf(
    await lead().post(
      `${day}/pours`,
      aPourBody(hall, { name, grams: Array(cans).fill(10), targetGrams: 10 }),
    ),
    201,
  );
const watch = async () => bodyOf(await lead().get(`${day}/seals`));
const windowNow = async () => (await watch()).windows[0];
const lineNow = async () => (await watch()).lines[0];
const suspectsThat = async (states: readonly string[]): Promise<Suspect[]> =>
  (await windowNow()).suspects.filter(({ state }: Suspect) => states.includes(state));
const settle = (containerIds: readonly string[], disposition: string) =>
  lead().post(at('/seal-holds/settling'), { containerIds, disposition, note: 'looked at it' });
const noticesOf = async (name: 'Ashdown' | 'Dell') =>
  bodyOf(await hall.buy.households[name].caller.get(at('/notices'))).notices;

describe('the next check of a machine', () => {
  test('is the first, then due by time, by count and by another size of can, and not while nothing is closed', async () => {
    expect((await watch()).lines).toEqual([]); // nobody has checked a machine at this line
    bodyOf(await seamer.check(day, { occasion: 'first' }), 201);
    expect(await lineNow()).toMatchObject({ line: 1, why: null, closedSince: 0, containersLeft: 150 });
    app.clock.now = new Date(app.clock.now.getTime() + 60 * 60_000);
    expect((await lineNow()).why).toBeNull();
    await pour('Ashdown', 2);
    expect(await lineNow()).toMatchObject({ why: 'time', closedSince: 2, minutesLeft: 0 });
    bodyOf(await seamer.check(day, { serial: 2 }), 201);
    expect(await lineNow()).toMatchObject({ why: null, closedSince: 0, minutesLeft: 60 });
    const kindId = hall.shelves.kinds['can-no-2-5'];
    bodyOf(
      await lead().post(`${day}/pours`, {
        ...aPourBody(hall, { name: 'Ashdown', grams: [10], targetGrams: 10 }),
        containerKindId: kindId,
      }),
      201,
    );
    expect((await lineNow()).why).toBe('changeover');
    bodyOf(await seamer.check(day, { serial: 3, how: 'visual', measures: null }), 201);
    expect((await lineNow()).why).toBe('changeover'); // a look is no teardown
    bodyOf(await seamer.check(day), 201);
  });
});

describe('a window', () => {
  test('tells each owner which containers are theirs and what not to do, and is acknowledged', async () => {
    await pour('Ashdown', 4); // 4 to 7
    await pour('Dell', 4); // 8 to 11
    bodyOf(await seamer.check(day, { serial: 11, measures: THICK }), 201);
    const { suspects, nextToOpen, isDrift, check } = await windowNow();
    expect(suspects.map(({ serial }: Suspect) => serial)).toEqual([4, 5, 6, 7, 8, 9, 10, 11]);
    expect({ nextToOpen, isDrift, how: check.how }).toEqual({
      nextToOpen: 7,
      isDrift: true,
      how: 'teardown',
    });
    const [notice] = await noticesOf('Dell');
    expect(notice).toMatchObject({ kind: 'held', isSafety: true });
    for (const { spelled, serial } of suspects) expect(notice.words.includes(spelled)).toBe(serial >= 8);
    const read = { isAcknowledged: true };
    const reading = await hall.buy.households.Dell.caller.put(at(`/notices/${notice.id}/reading`), read);
    expect(bodyOf(reading).acknowledgedAt).not.toBeNull();
  });

  test('keeps what is in it from being eaten or given away, and out of what a household can count on', async () => {
    const { caller } = hall.buy.households.Dell;
    const { containerId } = (await windowNow()).suspects[4];
    const use = (to: string) => () => caller.post(at(`/containers/${containerId}/uses`), { grams: 5, to });
    for (const to of ['eaten', 'given'])
      expect(await refusalOf(app, use(to))).toEqual(refused(409, 'container-in-doubt'));
    expect(await refusalOf(app, () => caller.post(at(`/containers/${containerId}/kitchen`), {}))).toEqual(
      refused(409, 'container-in-doubt'),
    );
    const { onHold } = bodyOf(await caller.get(at('/coverage')));
    expect(onHold.reduce((sum: number, { grams }: { grams: number }) => sum + grams, 0)).toBe(40);
  });

  test('is halved by opening one, and only what passed is let go, once the machine runs again', async () => {
    bodyOf(await seamer.check(day, { serial: 7, occasion: 'suspect' }), 201);
    expect((await windowNow()).nextToOpen).toBe(9);
    bodyOf(await seamer.check(day, { serial: 9, occasion: 'suspect', measures: THICK }), 201);
    expect((await windowNow()).nextToOpen).toBe(8);
    bodyOf(await seamer.check(day, { serial: 8, occasion: 'suspect' }), 201);
    const { suspects, nextToOpen } = await windowNow();
    expect(nextToOpen).toBeNull();
    expect(suspects.map(({ state }: Suspect) => state)).toEqual([
      ...['cleared', 'cleared', 'cleared', 'opened', 'opened', 'bad', 'suspect', 'bad'],
    ]);
    const cleared = (await suspectsThat(['cleared'])).map(({ containerId }) => containerId);
    const doubted = (await suspectsThat(['opened', 'suspect', 'bad'])).map(({ containerId }) => containerId);
    expect(await refusalOf(app, () => settle(cleared, 'release'))).toEqual(refused(409, 'machine-is-out'));
    for (const _ of [1, 2, 3]) bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
    for (const one of doubted)
      expect(await refusalOf(app, () => settle([one], 'release'))).toEqual(refused(409, 'still-in-doubt'));
    bodyOf(await settle(cleared, 'release'));
    expect((await noticesOf('Ashdown'))[0]).toMatchObject({ kind: 'released', isSafety: false });
  });

  test('is answered for: what is thrown away leaves its owner’s account, and the owner is told', async () => {
    const { caller } = hall.buy.households.Dell;
    const [bad, ...others] = (await suspectsThat(['bad', 'suspect'])).map(({ containerId }) => containerId);
    bodyOf(await settle([bad ?? ''], 'discard'));
    expect(bodyOf(await caller.get(at(`/containers/${bad}`))).grams).toBe(0);
    expect((await noticesOf('Dell'))[0]).toMatchObject({ kind: 'held', isSafety: true });
    bodyOf(await settle(others, 'eat-now'));
    expect((await caller.post(at(`/containers/${others[0]}/uses`), { grams: 5, to: 'eaten' })).status).toBe(
      201,
    );
    const left = (await suspectsThat(['opened'])).map(({ containerId }) => containerId);
    expect(bodyOf(await settle(left, 're-can')).holds).toEqual([]);
    expect((await windowNow()).suspects.filter(({ disposition }: Suspect) => disposition === null)).toEqual(
      [],
    );
  });
});
