import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
let day: string;
let cans: { id: string; code: string }[];
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
  day = await aPackingSession(storehouse, hall);
  bodyOf(await lead().post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const pour = aPourBody(hall, { name: 'Ashdown', grams: [2_400, 2_410, 2_420], targetGrams: 2_400 });
  cans = bodyOf(await lead().post(`${day}/pours`, pour), 201).containers;
  bodyOf(await seamer.check(day, { serial: 3, measures: THICK }), 201);
});
afterAll(() => app.close());

const lead = () => hall.lead.caller;
const owner = () => hall.buy.households.Ashdown.caller;
const at = (path: string) => `${storehouse.path}${path}`;
const can = (number: number) => cans[number - 1] as { id: string; code: string };
const reCan = (number: number, wish: Record<string, unknown> = {}, spilledGrams = 0) =>
  lead().post(at('/re-cannings'), {
    ...{ containers: [{ containerId: can(number).id, spilledGrams }], treatment: 'none', note: '' },
    ...{ containerKindId: hall.shelves.kinds['can-no-10'], ...wish },
  });
const answer = (numbers: readonly number[], disposition: string) =>
  lead().post(at('/seal-holds/settling'), {
    ...{ containerIds: numbers.map((number) => can(number).id), disposition, note: 'too thick' },
  });
const heldIn = async (id: string) => bodyOf(await owner().get(at(`/containers/${id}`)));
const idOf = async (code: string) => {
  const [row] = await app.admin<{ id: string }[]>`select container_id as id from book.container
    where container_code = ${code}`;
  return row?.id ?? '';
};
let moved: { id: string; newCode: string; grams: number; line: number; serial: number };

test('what is in doubt is answered for first, and what was answered otherwise goes into no new can', async () => {
  expect(await refusalOf(app, () => reCan(1))).toMatchObject({ status: 409, code: 'container-in-doubt' });
  bodyOf(await answer([3], 'eat-now'));
  expect(await refusalOf(app, () => reCan(3))).toMatchObject({
    ...{ code: 'invalid-input', fields: ['containers.0.containerId'] },
  });
  bodyOf(await answer([1, 2], 're-can'));
  expect(await refusalOf(app, () => reCan(1))).toMatchObject({ code: 'machine-is-out' });
  for (const _ of [1, 2, 3]) bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
});

test('a can too small, or more spilt than there is, is refused and nothing moves', async () => {
  expect(
    await refusalOf(app, () => reCan(1, { containerKindId: hall.shelves.kinds['jar-quart'] })),
  ).toMatchObject({
    ...{ code: 'over-capacity', fields: ['containerKindId'] },
  });
  expect(await refusalOf(app, () => reCan(1, {}, 2_400))).toMatchObject({
    ...{ code: 'not-enough-left', fields: ['containers.0.spilledGrams'] },
  });
});

test('its grams move into a new can of the same owner and lot; what was spilt is spilt, and the owner is told', async () => {
  const before = await heldIn(can(1).id);
  [moved] = bodyOf(await reCan(1, {}, 15), 201).moved;
  expect(moved).toMatchObject({ oldCode: can(1).code, grams: 2_385, line: 1, serial: 4 });
  const after = await heldIn(await idOf(moved.newCode));
  expect(after).toMatchObject({ grams: 2_385, lotId: before.lotId, food: before.food });
  expect((await heldIn(can(1).id)).grams).toBe(0);
  const { notices } = bodyOf(await owner().get(at('/notices')));
  expect(notices[0].words).toMatch(/^What was in doubt stands in new containers now: /);
  const { findings } = bodyOf(await storehouse.coordinator.get(at('/audit')));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});

test('its old code has ended: it is neither filled again nor moved twice', async () => {
  const { bagId } = hall.wheat.Ashdown;
  const fill = () => owner().post(at(`/containers/${can(1).id}/pours`), { bagId, grams: 10 });
  expect(await refusalOf(app, fill)).toMatchObject({ status: 409, code: 'container-ended' });
  expect(await refusalOf(app, () => reCan(1))).toMatchObject({ code: 'already-there' });
});

test('two that move one can at once move it once', async () => {
  const answers = await Promise.all([reCan(2), reCan(2)]);
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
  const { windows } = bodyOf(await lead().get(`${day}/seals`));
  expect(
    windows[0].suspects.map(({ movedTo }: { movedTo: { grams: number } | null }) => movedTo?.grams ?? null),
  ).toEqual([2_385, 2_410, null]);
});

test('its owner reads what to do with each, and where the rest is now; a neighbour reads nothing of it', async () => {
  const { doubts } = bodyOf(await owner().get(at('/own-doubts')));
  expect(
    doubts.map(({ serial, disposition, grams, newCode }: Record<string, unknown>) => [
      ...[serial, disposition, grams, newCode !== null],
    ]),
  ).toEqual([
    [1, 're-can', 0, true],
    [2, 're-can', 0, true],
    [3, 'eat-now', 2_420, false],
  ]);
  const { items } = bodyOf(await owner().get(at('/next-steps')));
  const own = items.filter(({ kind }: { kind: string }) => kind === 'own-doubts');
  expect(own).toMatchObject([
    { words: 'The seal of a container of yours is in doubt: read what to do with it.' },
  ]);
  expect(bodyOf(await hall.buy.households.Dell.caller.get(at('/own-doubts'))).doubts).toEqual([]);
});

test('it is taken back once, by a reversing entry, and not after the new can was opened', async () => {
  const undo = (id: string) => lead().post(at(`/re-cannings/${id}/undoing`), { reason: 'the wrong can' });
  bodyOf(await undo(moved.id), 201);
  expect([(await heldIn(can(1).id)).grams, (await heldIn(await idOf(moved.newCode))).grams]).toEqual([
    2_400, 0,
  ]);
  expect(await refusalOf(app, () => undo(moved.id))).toMatchObject({ code: 'already-reversed' });
  [moved] = bodyOf(await reCan(1), 201).moved;
  const use = at(`/containers/${await idOf(moved.newCode)}/uses`);
  bodyOf(await owner().post(use, { grams: 5, to: 'eaten' }), 201);
  expect(await refusalOf(app, () => undo(moved.id))).toMatchObject({ code: 'cannot-reverse' });
});

describe('a can that was filled anew', () => {
  let inDoubt: string;
  const line = async () => bodyOf(await lead().get(`${day}/seals`));
  const holdOf = (fromSerial: number, toSerial: number) =>
    lead().post(at('/holds'), {
      of: { scope: 'session', sessionId: day.split('/').at(-1), line: 1, fromSerial, toSerial },
      reason: 'A lid that came loose.',
    });

  test('has the next serial of its line, one that was taken back keeps its own, and the line goes on after it', async () => {
    expect(moved).toMatchObject({ line: 1, serial: 6 }); // 4 was taken back, 5 is the second can
    expect((await line()).lines).toMatchObject([{ line: 1, closedSince: 2 }]);
    const pour = aPourBody(hall, { name: 'Ashdown', grams: [2_400], targetGrams: 2_400 });
    const [closed] = bodyOf(await lead().post(`${day}/pours`, pour), 201).containers;
    expect(closed.serial).toBe(7);
    const twice = app.admin`update book.packing_pour set serial = 6 where container_id = ${closed.id}`;
    await expect(twice).rejects.toMatchObject({ constraint_name: 'line_serial_once' });
  });

  test('keeps the day from being signed until a good check stands behind it', async () => {
    const { unchecked } = bodyOf(await lead().get(`${day}/log`));
    expect(unchecked).toMatchObject([{ line: 1, fromSerial: 5, toSerial: 7 }]);
  });

  test('is reached by a hold of its serials, and one that was taken back is not', async () => {
    const hold = bodyOf(await holdOf(4, 6), 201);
    const reached = await app.admin<{ serial: number }[]>`
      select c.serial from book.hold_vessel v join book.line_closed c on c.container_id = v.vessel_id
      where v.hold_id = ${hold.id} order by c.serial`;
    expect(reached.map(({ serial }) => serial)).toEqual([5, 6]);
    expect(await refusalOf(app, () => holdOf(4, 4))).toMatchObject({ code: 'nothing-to-hold' });
  });

  test('is in doubt after a check that fails, unless it was taken back, and its owner reads so', async () => {
    bodyOf(await seamer.check(day, { serial: 7, measures: THICK }), 201);
    const { windows } = await line();
    expect(windows.at(-1).check).toMatchObject({ serial: 7, passed: false });
    expect(windows.at(-1).suspects.map(({ serial }: { serial: number }) => serial)).toEqual([5, 6, 7]);
    const { doubts } = bodyOf(await owner().get(at('/own-doubts')));
    const open = doubts.filter(({ disposition }: { disposition: string | null }) => disposition === null);
    expect(open.map(({ serial, grams }: Record<string, unknown>) => [serial, grams])).toEqual([
      ...[
        [5, 2_410],
        [6, 2_395],
        [7, 2_400],
      ],
    ]);
    inDoubt = open[0].containerId;
  });

  test('is not taken back while it is held, and the book adds up', async () => {
    const { movedTo } = (await line()).windows[0].suspects[1];
    expect(movedTo.containerId).toBe(inDoubt);
    const undo = at(`/re-cannings/${movedTo.reCanningId}/undoing`);
    const refusal = await refusalOf(app, () => lead().post(undo, { reason: 'too late' }));
    expect(refusal).toMatchObject({ status: 409, code: 'on-hold' });
    const { findings } = bodyOf(await storehouse.coordinator.get(at('/audit')));
    expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
  });
});
