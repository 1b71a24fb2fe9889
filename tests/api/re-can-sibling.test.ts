import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

type Can = { id: string; code: string };

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const lead = () => hall.lead.caller;
const owner = () => hall.buy.households.Ashdown.caller;
const eat = (caller: Caller, { id }: Can) =>
  caller.post(at(`/containers/${id}/uses`), { grams: 10, to: 'eaten' });
const isHeld = async (can: Can) => {
  const { status, body } = await eat(owner(), can);
  if (status === 201) return false;
  expect([status, body.code]).toEqual([409, 'on-hold']);
  return true;
};
const find = (can: Can, finding: string) =>
  owner().post(at(`/containers/${can.id}/inspections`), {
    ...{ how: 'outside', findings: [finding], outcome: 'discard' },
  });

/** A packing day on which a can was filled anew after a bad seam, and another was closed once the machine was mended. */
async function aDay(): Promise<{ first: Can; anew: Can; beside: Can }> {
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await lead().post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  const pour = async (): Promise<Can> => {
    const body = aPourBody(hall, { name: 'Ashdown', grams: [1_000], targetGrams: 1_000 });
    return bodyOf(await lead().post(`${day}/pours`, body), 201).containers[0];
  };
  const first = await pour();
  bodyOf(await seamer.check(day, { serial: 1, measures: THICK }), 201);
  const answer = { containerIds: [first.id], disposition: 're-can', note: 'too thick' };
  bodyOf(await lead().post(at('/seal-holds/settling'), answer));
  for (const _ of [1, 2, 3]) bodyOf(await seamer.check(day, { occasion: 'clearing' }), 201);
  const beside = await pour();
  const wish = { containerKindId: hall.shelves.kinds['can-no-10'], treatment: 'none', note: '' };
  const containers = [{ containerId: first.id, spilledGrams: 0 }];
  const { moved } = bodyOf(await lead().post(at('/re-cannings'), { containers, ...wish }), 201);
  bodyOf(await seamer.check(day, { serial: 3 }), 201);
  const [anew] = await app.admin<Can[]>`select container_id as id, container_code as code from book.container
    where container_code = ${moved[0].newCode}`;
  if (!anew) throw new Error('the new can is there');
  return { first, anew, beside };
}

test('a bulge on a can that was filled anew holds what its line closed that day, and nothing of another day or of home', async () => {
  const { anew, beside } = await aDay();
  const other = await aDay();
  const atHome = await hall.shelves.aCan(owner(), hall.wheat.Ashdown, 500);
  bodyOf(await find(anew, 'bulge-hiss-spurt'), 201);
  expect(await isHeld(beside)).toBe(true);
  for (const can of [other.beside, other.anew, atHome]) expect(await isHeld(can)).toBe(false);
});

test('a leak beside it holds a can that was filled anew as one that its line closed that day', async () => {
  const { first, anew, beside } = await aDay();
  bodyOf(await find(beside, 'leak'), 201);
  expect(await isHeld(anew)).toBe(true);
  // Its old can is empty and ended; what is found on the new one is told of the new one alone.
  const inspections = async ({ id }: Can) =>
    bodyOf(await owner().get(at(`/containers/${id}/inspections`))).inspections;
  bodyOf(await find(anew, 'dented-seam'), 201);
  expect([(await inspections(anew)).length, (await inspections(first)).length]).toEqual([1, 0]);
});
