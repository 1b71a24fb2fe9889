import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let seamer: TestSeamer;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  seamer = await aSeamer(storehouse, hall);
});
afterAll(() => app.close());

type Name = keyof GrainHouseholds;
type Spell = { blocks: { stations: string[]; names: string[]; missing: number }[]; resting: string[] };
const come = (day: string, name: Name, said: Record<string, unknown> = {}) =>
  hall.buy.households[name].caller.put(`${day}/hand`, { isComing: true, ...said });
const planOf = async (day: string) => bodyOf(await hall.lead.caller.get(`${day}/plan`));
const spellsOf = async (day: string): Promise<Spell[]> => (await planOf(day)).spells;

/** A day with cans to fill, planned for so many people. */
async function aDay(people: number): Promise<string> {
  const day = await aPackingSession(storehouse, hall, { peopleALine: people });
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes: [cansOf(hall)] }));
  return day;
}

test('who is under 16 may not say to be trained at the machine, and never stands at it (job map 7.5)', async () => {
  const day = await aDay(3);
  const call = () => come(day, 'Dell', { isUnder16: true, maySeam: true });
  expect(await refusalOf(app, call)).toMatchObject(refused(409, 'too-young-for-machine', 'maySeam'));
  const spanish = await hall.buy.households.Dell.caller.put(
    `${day}/hand`,
    { isComing: true, isUnder16: true, maySeam: true },
    { 'Accept-Language': 'es' },
  );
  expect(spanish.body.title).toMatch(/^Ningún menor de 16 trabaja en la cerradora/);
  bodyOf(await come(day, 'Dell', { isUnder16: true }));
  bodyOf(await come(day, 'Birchall', { mayLift: false }));
  bodyOf(await come(day, 'Ashdown', { mayLift: true }));
  const [spell] = await spellsOf(day);
  expect(spell?.blocks.map(({ missing }) => missing)).toEqual([0, 1, 0]); // nobody of them is trained
  const { crew } = await planOf(day);
  expect(crew.hands.map((hand: { isUnder16: boolean }) => hand.isUnder16)).toContain(true);
  const { hand } = bodyOf(await hall.buy.households.Dell.caller.get(day));
  expect(hand).toMatchObject({ isUnder16: true, seatedOnly: false, maySeam: false });
});

test('whoever said to be under 16 writes down no check of a seal, nor does the book take one', async () => {
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await hall.lead.caller.put(`${day}/hand`, { isComing: true, isUnder16: true }));
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  expect(await refusalOf(app, () => seamer.check(day))).toMatchObject({
    status: 409,
    code: 'too-young-for-machine',
  });
  const other = await aPackingSession(storehouse, hall);
  bodyOf(await hall.lead.caller.post(`${other}/start`));
  bodyOf(await seamer.check(other), 201); // of another day nobody said so
  const past = () => app.admin`insert into book.seal_check
    select (jsonb_populate_record(c, jsonb_build_object('seal_check_id', uuidv7(),
      'packing_session_id', ${day.split('/').at(-1) ?? ''}::text))).*
    from book.seal_check c where packing_session_id = ${other.split('/').at(-1) ?? ''}`;
  await expect(past()).rejects.toMatchObject({ constraint_name: 'seal_check_operator_old_enough' });
  const trained = () => app.admin`update book.packing_hand set may_seam = true where is_under_16`;
  await expect(trained()).rejects.toMatchObject({ constraint_name: 'packing_hand_old_enough_to_seam' });
});

test('who works seated sits at the scale, the absorbers or the labels, and never fills or closes (job map 7.5)', async () => {
  const day = await aDay(3); // filling to absorbers, the seamer, labels and boxes: one each
  bodyOf(await come(day, 'Ashdown', { seatedOnly: true, maySeam: true }));
  bodyOf(await come(day, 'Birchall', { maySeam: true }));
  bodyOf(await come(day, 'Dell', { maySeam: true }));
  const spells = await spellsOf(day);
  for (const { blocks } of spells) {
    expect(blocks.map(({ missing }) => missing)).toEqual([0, 0, 0]);
    expect(blocks[2]?.names).toEqual([expect.stringContaining('Ashdown')]);
  }
});

test('where who came stood is kept as the day is signed, and the next day begins them elsewhere (job map 7.5)', async () => {
  const names = ['Ashdown', 'Birchall', 'Dell'] as const;
  const first = await aDay(3);
  for (const name of names) bodyOf(await come(first, name, { maySeam: true }));
  const before = (await spellsOf(first))[0]?.blocks.map((block) => block.names[0]);
  const { crew } = await planOf(first);
  bodyOf(await hall.lead.caller.post(`${first}/start`));
  for (const { personId } of crew.hands)
    bodyOf(await hall.lead.caller.put(`${first}/hands/${personId}`, { state: 'came' }));
  bodyOf(await hall.lead.caller.post(`${first}/signing`), 201);
  const later = { startsAt: '2026-12-06T17:00:00Z', endsAt: '2026-12-06T23:00:00Z' };
  const next = await aPackingSession(storehouse, hall, { peopleALine: 3, ...later });
  bodyOf(await hall.buy.households.Dell.caller.put(`${next}/wishes`, { wishes: [cansOf(hall)] }));
  for (const name of names) bodyOf(await come(next, name, { maySeam: true }));
  const after = (await spellsOf(next))[0]?.blocks.map((block) => block.names[0]);
  expect(after?.toSorted()).toEqual(before?.toSorted());
  for (const [at, name] of (before ?? []).entries()) expect(after?.[at]).not.toBe(name);
});
