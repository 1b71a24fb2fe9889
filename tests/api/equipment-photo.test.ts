import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  anItem,
  aShed,
  book,
  bringBack,
  handOut,
  type TestItem,
  type TestShed,
} from '../support/equipment.ts';
import type { TestHousehold } from '../support/household.ts';
import { aHousehold } from '../support/household.ts';
import { aJpeg } from '../support/jpeg.ts';
import { refusalOf } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';

let app: TestApp;
let shed: TestShed;
let sealer: TestItem;
let loanId: string;
beforeAll(async () => {
  app = await openTestApp();
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  shed = await aShed(app);
  sealer = await anItem(shed, { depositMinorUnits: 0 });
  const booked = bodyOf(await book(shed.hale.caller, sealer, ['2026-09-01T11:00', '2026-09-02T11:00']), 201);
  loanId = bodyOf(await handOut(shed.hale.caller, shed, booked.id, sealer), 201).id;
});
afterAll(() => app.close());

let pictures = 0;
const wish = (more: object = {}, jpeg = aJpeg({ picture: [++pictures] })) => ({
  contentBase64: jpeg.toString('base64'),
  ...more,
});
const add = ({ caller }: TestHousehold, more: object = {}) =>
  caller.post(`${sealer.path}/photos`, wish(more));
const photosOf = async ({ caller }: TestHousehold, query = '') =>
  bodyOf(await caller.get(`${sealer.path}/photos${query}`)).photos;
const open = async ({ caller }: TestHousehold, id: string) =>
  (await caller.get(`${shed.path}/photos/${id}`)).status;

test('the keeper shows a thing and its parts, and every member sees them; nobody else adds any', async () => {
  const whole = bodyOf(await add(shed.keeper), 201);
  expect(whole).toMatchObject({
    ...{ shows: 'equipment', thingId: sealer.id, buyId: null, partId: null, loanId: null, moment: null },
    ...{ widthPixels: 640, heightPixels: 480, addedBy: shed.keeper.personId },
  });
  const [chuck] = sealer.parts;
  const part = bodyOf(await add(shed.keeper, { partId: chuck?.id, note: 'the worn side' }), 201);
  expect(part).toMatchObject({ partId: chuck?.id, note: 'the worn side' });
  expect(await photosOf(shed.moss)).toEqual([whole, part]);
  expect(await open(shed.moss, part.id)).toBe(200);
  const member = await refusalOf(app, () => add(shed.moss));
  expect(member).toMatchObject({ code: 'duty-missing', isUnchanged: true });
});

test('nothing that a camera writes beside the picture is kept', async () => {
  const telling = aJpeg({ picture: [++pictures], segments: [[0xe1, 'Exif\0\0GPS 45.5 N 122.6 W']] });
  const { id } = bodyOf(await shed.keeper.caller.post(`${sealer.path}/photos`, wish({}, telling)), 201);
  const [row] = await app.admin`select content from book.photo where photo_id = ${id}`;
  expect(Buffer.from(row?.content ?? 'GPS').toString('latin1')).not.toContain('GPS');
});

test('how it went out and came back is shown by borrower and keeper, and seen by nobody else', async () => {
  const out = bodyOf(await add(shed.hale, { loan: { loanId, moment: 'out' } }), 201);
  expect(out).toMatchObject({ loanId, moment: 'out', partId: null, shows: 'equipment' });
  const back = bodyOf(await add(shed.keeper, { loan: { loanId, moment: 'back' } }), 201);
  const query = `?loanId=${loanId}`;
  expect(await photosOf(shed.hale, query)).toEqual([out, back]);
  expect(await photosOf(shed.keeper, query)).toEqual([out, back]);
  expect((await photosOf(shed.moss)).map(({ id }: { id: string }) => id)).not.toContain(out.id);
  expect((await shed.moss.caller.get(`${sealer.path}/photos${query}`)).body.code).toBe('not-your-household');
  expect([await open(shed.hale, out.id), await open(shed.moss, out.id)]).toEqual([200, 403]);
  const stranger = await refusalOf(app, () => add(shed.moss, { loan: { loanId, moment: 'out' } }));
  expect(stranger).toMatchObject({ code: 'not-your-household', isUnchanged: true });
  const path = `${shed.path}/households/${shed.hale.householdId}/private-reads`;
  const { privateReads } = bodyOf(await shed.hale.caller.get(path));
  expect(privateReads).toContainEqual(expect.objectContaining({ what: 'loans' }));
});

test('what is no photo, too large, or of another thing is refused at its field and changes nothing', async () => {
  const other = await anItem(shed, { name: 'Roller' });
  const refuse = async (more: object) => {
    const { code, fields, isUnchanged } = await refusalOf(app, () => add(shed.keeper, more));
    expect(isUnchanged).toBe(true);
    return [code, fields?.[0]];
  };
  const png = Buffer.from('\x89PNG\r\n', 'latin1').toString('base64');
  expect(await refuse({ contentBase64: png })).toEqual(['invalid-input', 'contentBase64']);
  const large = aJpeg({ tail: 'x'.repeat(2 * 1024 * 1024) }).toString('base64');
  expect(await refuse({ contentBase64: large })).toEqual(['invalid-input', 'contentBase64']);
  expect((await refuse({ contentBase64: 'A'.repeat(4 * 1024 * 1024) }))[0]).toBe('body-too-large');
  expect((await refuse({ partId: other.parts[0]?.id }))[0]).toBe('thing-not-found');
  expect((await refuse({ loan: { loanId: shed.hale.householdId, moment: 'out' } }))[0]).toBe(
    'thing-not-found',
  );
  const both = { partId: sealer.parts[0]?.id, loan: { loanId, moment: 'out' } };
  expect(await refuse(both)).toEqual(['invalid-input', 'partId']);
  const elsewhere = await refusalOf(app, () =>
    shed.keeper.caller.post(`${other.path}/photos`, wish({ loan: { loanId, moment: 'out' } })),
  );
  expect(elsewhere).toMatchObject({ code: 'thing-not-found', isUnchanged: true });
});

test('the same photo of the same thing is kept once, and no other storehouse finds it', async () => {
  const same = wish();
  const send = (key: string) =>
    shed.keeper.caller.post(`${sealer.path}/photos`, same, { 'Idempotency-Key': key });
  const first = await send('gear-photo-1');
  expect((await send('gear-photo-1')).body).toEqual(first.body);
  expect((await send('gear-photo-2')).body.code).toBe('already-there');
  const other = await anotherStorehouse(app);
  const { caller } = await aHousehold(app, other, 'Brook', { email: 'brook@example.org' });
  expect((await caller.get(`${other.path}/photos/${first.body.id}`)).status).toBe(404);
  const foreign = `${other.path}/equipment/${sealer.id}/photos`;
  expect((await caller.get(foreign)).status).toBe(404);
});

test('whoever took it takes it away, until the loan is settled; then it stays', async () => {
  const loan = { loanId, moment: 'back' };
  const at = (id: string) => `${shed.path}/photos/${id}`;
  const mistake = bodyOf(await add(shed.hale, { loan }), 201).id;
  const stays = bodyOf(await add(shed.hale, { loan }), 201).id;
  const thing = bodyOf(await add(shed.keeper), 201).id;
  expect((await shed.moss.caller.delete(at(mistake))).body.code).toBe('duty-missing');
  expect((await shed.hale.caller.delete(at(mistake))).status).toBe(204);
  bodyOf(await bringBack(shed.hale.caller, shed, loanId, sealer), 201);
  expect((await shed.hale.caller.delete(at(stays))).body.code).toBe('not-out');
  expect(await open(shed.hale, stays)).toBe(200);
  expect((await shed.keeper.caller.delete(at(thing))).status).toBe(204);
});

test('the next borrower’s check-out ends what a photo can tell of the loan before', async () => {
  const press = await anItem(shed, { name: 'Press', depositMinorUnits: 0, postMinutes: 0 }, []);
  const lend = async ({ caller }: TestHousehold, times: readonly [string, string]) => {
    const { id } = bodyOf(await book(caller, press, times), 201);
    return bodyOf(await handOut(caller, shed, id, press), 201).id as string;
  };
  const shoot = ({ caller }: TestHousehold, loan: object) =>
    caller.post(`${press.path}/photos`, wish({ loan }));
  const loanOf = async ({ caller }: TestHousehold, id: string) =>
    bodyOf(await caller.get(`${shed.path}/loans/${id}`));
  const now = app.clock.now;
  const first = await lend(shed.hale, ['2026-09-01T11:00', '2026-09-01T12:00']);
  bodyOf(await shoot(shed.hale, { loanId: first, moment: 'out' }), 201);
  app.clock.now = new Date(now.getTime() + 3_600_000);
  bodyOf(await bringBack(shed.hale.caller, shed, first, press), 201);
  const back = bodyOf(await shoot(shed.hale, { loanId: first, moment: 'back' }), 201);
  expect(await loanOf(shed.hale, first)).toMatchObject({ outAgainAt: null });
  app.clock.now = new Date(now.getTime() + 2 * 3_600_000);
  const second = await lend(shed.moss, ['2026-09-01T13:00', '2026-09-01T14:00']);
  for (const moment of ['out', 'back'])
    for (const who of [shed.hale, shed.keeper]) {
      const late = await refusalOf(app, () => shoot(who, { loanId: first, moment }));
      expect(late).toMatchObject({ code: 'not-out', isUnchanged: true });
    }
  expect(await loanOf(shed.hale, first)).toMatchObject({ outAgainAt: app.clock.now.toISOString() });
  // What was taken in time stays with its own loan; the next one begins with none.
  const seen = async (loan: string) =>
    bodyOf(await shed.keeper.caller.get(`${press.path}/photos?loanId=${loan}`)).photos;
  expect(await seen(first)).toHaveLength(2);
  expect(await seen(first)).toContainEqual(back);
  expect(await seen(second)).toEqual([]);
  const own = bodyOf(await shoot(shed.moss, { loanId: second, moment: 'out' }), 201);
  expect(await seen(second)).toEqual([own]);
  app.clock.now = now;
});

test('the database keeps a photo to one thing, and a loan’s to the piece that was lent', async () => {
  const { id } = bodyOf(await add(shed.keeper), 201);
  const change = (facts: Record<string, string | null | undefined>) =>
    app.admin`update book.photo set ${app.admin(facts)} where photo_id = ${id}`;
  await expect(change({ equipment_item_id: null })).rejects.toThrow(/photo_shows_one_thing/);
  await expect(change({ loan_id: loanId })).rejects.toThrow(/photo_of_loan_whole/);
  const other = await anItem(shed, { name: 'Dolly' });
  await expect(change({ equipment_part_id: other.parts[0]?.id })).rejects.toThrow(/photo_part_fk/);
  const [unit] = other.units;
  const asLoan = { loan_id: loanId, moment: 'out', equipment_unit_id: unit?.id };
  await expect(change(asLoan)).rejects.toThrow(/photo_(unit|loan)_fk/);
});
