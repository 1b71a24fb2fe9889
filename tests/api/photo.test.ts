import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bareJpeg } from '../../apps/api/src/features/photo/jpeg.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aJpeg } from '../support/jpeg.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let member: TestHousehold;
let lead: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  member = await aHousehold(app, storehouse, 'Marsh');
  lead = await aHousehold(app, storehouse, 'Lead', { duties: ['packing_lead'] });
});
afterAll(() => app.close());

const torn = () => buy.bags.wheat[5]?.id ?? '';
let pictures = 0;
const wish = (jpeg = aJpeg({ picture: [++pictures] })) => ({
  shows: 'bag',
  thingId: torn(),
  contentBase64: jpeg.toString('base64'),
  note: 'the seam',
});
const bytesOf = async (caller: TestHousehold['caller'], id: string) => {
  const answer = await caller.get(`${storehouse.path}/photos/${id}`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('Content-Type')).toBe('image/jpeg');
  const { content } = (await app.admin`select content from book.photo where photo_id = ${id}`)[0] ?? {};
  return content as Buffer;
};

test('a photo of a torn bag is kept with its size and note, and every member who sees the bag sees it', async () => {
  const photo = bodyOf(await lead.caller.post(`${buy.path}/photos`, wish()), 201);
  expect(photo).toMatchObject({
    ...{ shows: 'bag', thingId: torn(), widthPixels: 640, heightPixels: 480, note: 'the seam' },
    addedBy: lead.personId,
  });
  const query = `shows=bag&thingId=${torn()}`;
  const { photos } = bodyOf(await member.caller.get(`${buy.path}/photos?${query}`));
  expect(photos).toContainEqual(photo);
  expect(JSON.stringify(photos)).not.toContain('content');
  expect((await bytesOf(member.caller, photo.id)).subarray(0, 3)).toEqual(Buffer.from([0xff, 0xd8, 0xff]));
});

test('nothing that the camera wrote beside the picture is kept: no place, no time, no thumbnail, no tail', async () => {
  const telling = aJpeg({
    picture: [++pictures],
    segments: [
      [0xe1, 'Exif\0\0GPS 45.5 N 122.6 W'],
      [0xe1, 'http://ns.adobe.com/xap/1.0/\0<where>the hall</where>'],
      [0xe2, 'MPF\0a second picture'],
      [0xed, 'Photoshop 3.0\0by-line'],
      [0xfe, 'a comment with a name'],
    ],
    tail: 'a moving picture with sound',
  });
  const photo = bodyOf(await lead.caller.post(`${buy.path}/photos`, wish(telling)), 201);
  const kept = (await bytesOf(member.caller, photo.id)).toString('latin1');
  expect(kept).toContain('JFIF');
  for (const word of ['GPS', 'hall', 'second', 'by-line', 'comment', 'moving'])
    expect(kept).not.toContain(word);
});

test('whatever stands beside the picture, what is kept is the same', () => {
  const kind = fc.constantFrom(0xe1, 0xe2, 0xe3, 0xed, 0xef, 0xfe);
  const segments = fc.array(fc.tuple(kind, fc.string({ maxLength: 400 })), { maxLength: 6 });
  const plain = bareJpeg(aJpeg());
  expect(Buffer.from(plain?.content ?? [])).toEqual(aJpeg());
  fc.assert(
    fc.property(segments, fc.string(), (said, tail) => {
      expect(bareJpeg(aJpeg({ segments: said, tail }))).toEqual(plain);
    }),
  );
});

test('a JPEG that is cut off anywhere, or other bytes, is no photo', () => {
  const whole = aJpeg();
  for (let length = 0; length < whole.length; length += 1)
    expect({ length, jpeg: bareJpeg(whole.subarray(0, length)) }).toEqual({ length, jpeg: undefined });
  fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => bareJpeg(bytes) === undefined));
});

test('what is no photo, too large, or of another buy is refused at its field and changes nothing', async () => {
  const before = await fingerprintOf(app);
  const refuse = async (change: object) => {
    const { body } = await lead.caller.post(`${buy.path}/photos`, { ...wish(), ...change });
    return [body.code, body.fields?.[0]?.field];
  };
  const png = Buffer.from('\x89PNG\r\n', 'latin1').toString('base64');
  expect(await refuse({ contentBase64: png })).toEqual(['invalid-input', 'contentBase64']);
  expect(await refuse({ contentBase64: 'not base64!' })).toEqual(['invalid-input', 'contentBase64']);
  const large = aJpeg({ tail: 'x'.repeat(2 * 1024 * 1024) }).toString('base64');
  expect(await refuse({ contentBase64: large })).toEqual(['invalid-input', 'contentBase64']);
  expect(await refuse({ contentBase64: 'A'.repeat(4 * 1024 * 1024) })).toEqual(['body-too-large', undefined]);
  expect(await refuse({ thingId: buy.buyId })).toEqual(['thing-not-found', undefined]);
  expect(await fingerprintOf(app)).toEqual(before);
});

test('the same photo of the same thing is kept once, and a retry gets the first answer', async () => {
  const same = wish();
  const first = await lead.caller.post(`${buy.path}/photos`, same, { 'Idempotency-Key': 'photo-1' });
  const retried = await lead.caller.post(`${buy.path}/photos`, same, { 'Idempotency-Key': 'photo-1' });
  expect(retried.body).toEqual(first.body);
  expect((await lead.caller.post(`${buy.path}/photos`, same)).body.code).toBe('already-there');
  const other = await anotherStorehouse(app);
  const elsewhere = await aHousehold(app, other, 'Brook', { email: 'brook@example.org' });
  const { status } = await elsewhere.caller.get(`${other.path}/photos/${first.body.id}`);
  expect(status).toBe(404);
});

test('whoever took a photo or a coordinator takes it away, until the buy is closed', async () => {
  const at = (id: string) => `${storehouse.path}/photos/${id}`;
  const add = async () => bodyOf(await lead.caller.post(`${buy.path}/photos`, wish()), 201).id as string;
  const [mistake, second, stays] = [await add(), await add(), await add()];
  expect((await buy.treasurer.delete(at(mistake))).body.code).toBe('duty-missing');
  expect((await lead.caller.delete(at(mistake))).status).toBe(204);
  expect((await storehouse.coordinator.delete(at(second))).status).toBe(204);
  expect((await member.caller.get(at(mistake))).status).toBe(404);
  await creditClaims(storehouse, buy);
  bodyOf(await buy.treasurer.post(`${buy.path}/closing`), 201);
  expect((await lead.caller.delete(at(stays))).body.code).toBe('buy-stage-wrong');
  expect((await member.caller.get(at(stays))).status).toBe(200);
});
