import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { GOOD, LIMITS } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let sessionId: string;
let day: string;
let machineId: string;
let canId: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  day = await aPackingSession(storehouse, hall);
  sessionId = day.split('/').at(-1) ?? '';
  canId = hall.shelves.kinds['can-no-10'] ?? '';
  bodyOf(await lead().post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  machineId = bodyOf(await lead().post(at('/seal-machines'), { name: 'Seamer', kind: 'can-seamer' }), 201).id;
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const lead = () => hall.lead.caller;
const pour = (cans: number) =>
  lead().post(
    `${day}/pours`,
    aPourBody(hall, { name: 'Ashdown', grams: Array(cans).fill(10), targetGrams: 10 }),
  );
const seals = async () => bodyOf(await lead().get(at('/seals')));

const check = (wish: Record<string, unknown>) =>
  lead().post(at('/seal-checks'), {
    ...{ machineId, sessionId, line: 1, containerKindId: canId, how: 'teardown', looksGood: true },
    ...{ measures: GOOD, serial: null, ...wish },
  });

test('a teardown without the maker’s limits is refused, and limits that run backwards are none', async () => {
  const call = () => check({});
  expect(await refusalOf(app, call)).toEqual(refused(409, 'seam-limits-missing'));
  const backwards = () => lead().put(at(`/seam-limits/${canId}`), { ...LIMITS, widthMost: 109 });
  expect(await refusalOf(app, backwards)).toEqual(refused(400, 'invalid-input', 'widthMost'));
  bodyOf(await lead().put(at(`/seam-limits/${canId}`), LIMITS));
  expect((await seals()).limits).toMatchObject([{ containerKindId: canId, widthMost: 120 }]);
});

test('a check is of a container that is closed, and measured where it is torn down', async () => {
  const ahead = () => check({ serial: 1 });
  expect(await refusalOf(app, ahead)).toEqual(refused(400, 'invalid-input', 'serial'));
  const bare = () => check({ measures: null });
  expect(await refusalOf(app, bare)).toEqual(refused(400, 'invalid-input', 'measures'));
});

// Job map 7.8: a good teardown of serial 150; the fault is found when serial 230 has just closed: 151 to 230, 80 cans.
describe('a seam that fails', () => {
  test('stops the machine and holds the 80 cans since the last good teardown, and says who has them', async () => {
    bodyOf(await pour(150), 201);
    expect(bodyOf(await check({ serial: 150 }), 201).check).toMatchObject({ passed: true, suspects: null });
    bodyOf(await pour(80), 201);
    bodyOf(await check({ serial: 200, how: 'visual', measures: null }), 201); // a look vouches for no teardown
    const failed = bodyOf(await check({ serial: 230, measures: { ...GOOD, thicknessMils: 66 } }), 201);
    expect(failed.check).toMatchObject({
      passed: false,
      faults: [{ measure: 'thickness', found: 66, least: 55, most: 62 }],
      suspects: { fromSerial: 151, toSerial: 230 },
    });
    expect(failed.machine.outSince).not.toBeNull();
    const serials = failed.holds.map(({ serial }: { serial: number }) => serial);
    expect([serials.length, serials[0], serials.at(-1)]).toEqual([80, 151, 230]);
    expect(new Set(failed.holds.map((hold: { household: { name: string } }) => hold.household.name))).toEqual(
      new Set(['Ashdown']),
    );
  });

  test('leaves what is in doubt closed to more food, and what a good check stands behind open', async () => {
    const { holds } = await seals();
    const { caller } = hall.buy.households.Ashdown;
    const more = { bagId: hall.wheat.Ashdown.bagId, grams: 1 };
    const call = () => caller.post(at(`/containers/${holds[0].containerId}/pours`), more);
    expect(await refusalOf(app, call)).toEqual(refused(409, 'container-in-doubt'));
    const { containers } = bodyOf(await caller.get(at('/containers?limit=200')));
    const held = new Set(holds.map(({ containerId }: { containerId: string }) => containerId));
    const standing = containers.find(
      ({ id, grams }: { id: string; grams: number }) => !held.has(id) && grams === 10,
    );
    expect((await caller.post(at(`/containers/${standing.id}/pours`), more)).status).toBe(201);
  });

  test('lets the machine run after three good teardowns in a row, a fourth after one more fault', async () => {
    const outAfter = async (wish: Record<string, unknown>) =>
      bodyOf(await check(wish), 201).machine.outSince !== null;
    const containerIds = [(await seals()).holds[0].containerId]; // 151
    const release = () =>
      lead().post(at('/seal-holds/settling'), { containerIds, disposition: 'release', note: 'opened one' });
    expect(await refusalOf(app, release)).toEqual(refused(409, 'machine-is-out'));
    expect(await outAfter({})).toBe(true);
    expect(await outAfter({})).toBe(true);
    expect(await outAfter({ looksGood: false })).toBe(true);
    expect(await outAfter({})).toBe(true);
    expect(await outAfter({ how: 'visual', measures: null })).toBe(true);
    expect(await outAfter({})).toBe(true);
    expect(await outAfter({})).toBe(false);
    expect(await refusalOf(app, release)).toEqual(refused(409, 'still-in-doubt'));
    bodyOf(await check({ serial: 190 }), 201);
    expect((await release()).status).toBe(200);
  });

  test('each can in doubt is answered for once, and another’s hold is none', async () => {
    const { holds } = await seals();
    const [one] = holds;
    const settle = () =>
      lead().post(at('/seal-holds/settling'), {
        ...{ containerIds: [one.containerId], disposition: 're-can', note: 'the seam is thick' },
      });
    const { settled, holds: left } = bodyOf(await settle());
    expect(settled).toBe(1);
    expect(left.some(({ containerId }: { containerId: string }) => containerId === one.containerId)).toBe(
      false,
    );
    expect(await refusalOf(app, settle)).toEqual(refused(404, 'thing-not-found'));
  });
});

test('two checks at once both count, and the second finds the machine out', async () => {
  const answers = await Promise.all([check({ looksGood: false }), check({ looksGood: false })]);
  expect(answers.map(({ status }) => status)).toEqual([201, 201]);
  const { checks } = bodyOf(await lead().get(`${day}/seal-checks`));
  expect(checks.slice(-2).map(({ passed }: { passed: boolean }) => passed)).toEqual([false, false]);
  expect((await seals()).machines[0].outSince).not.toBeNull();
});
