import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  aPackingSession,
  aPourBody,
  bringWheat,
  cansOf,
  openHall,
  type TestHall,
} from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

type Name = keyof TestHall['wheat'];
type Share = {
  householdId: string;
  putInGrams: number;
  containers: number;
  leftGrams: number;
  gotGrams: number;
};
type Run = { mixId: string | null; household: string; containers: number; fromSerial: number };

const NAMES = ['Ashdown', 'Birchall', 'Dell'] as const;
let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let lead: Caller;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  lead = hall.lead.caller;
  day = await aPackingSession(storehouse, hall, { name: 'Canning day' });
});
afterAll(() => app.close());

const callerOf = (name: Name) => hall.buy.households[name].caller;
const ownGramsOf = async (name: Name): Promise<number> => {
  const { bags } = bodyOf(await callerOf(name).get(`${storehouse.path}/own-bags`));
  return bags
    .filter(({ food }: { food: { id: string } }) => food.id === hall.wheatId)
    .reduce((sum: number, { grams }: { grams: number }) => sum + grams, 0);
};
const wish = (name: Name, facts: Record<string, unknown>, session = day) =>
  callerOf(name).put(`${session}/wishes`, { wishes: [{ ...cansOf(hall), ...facts }] });
const planOf = async (session = day) => bodyOf(await lead.get(`${session}/plan`)).lines[0];
const mixOf = async (session = day) => (await planOf(session)).mixes[0];
const post = (mix: { id: string; seen: string }, caller = lead, session = day) =>
  caller.post(`${session}/mixes`, { mixId: mix.id, seen: mix.seen });
const sum = (numbers: number[]) => numbers.reduce((all, one) => all + one, 0);

describe('a day on which several households agree', () => {
  test('shows one run of them, each with what it puts in and has of it, and nobody else’s', async () => {
    for (const name of NAMES) {
      const containers = Math.floor((await ownGramsOf(name)) / 2500);
      bodyOf(await wish(name, { containers, mayMix: name !== 'Birchall' }));
    }
    expect((await mixOf()).shares).toHaveLength(2);
    const containers = Math.floor((await ownGramsOf('Birchall')) / 2500);
    bodyOf(await wish('Birchall', { containers, mayMix: true }));
    const { runs, mixes } = await planOf();
    expect(mixes).toHaveLength(1);
    const [{ shares, containers: inAll, leftGrams }] = mixes;
    const puts = await Promise.all(NAMES.map(ownGramsOf));
    expect(shares.map(({ putInGrams }: Share) => putInGrams)).toEqual(puts);
    expect([inAll, leftGrams]).toEqual([Math.floor(sum(puts) / 2500), sum(puts) % 2500]);
    for (const { containers: own, leftGrams: left, putInGrams, gotGrams } of shares as Share[])
      expect(own * 2500 + left).toBe(putInGrams + gotGrams);
    expect(sum(shares.map(({ gotGrams }: Share) => gotGrams))).toBe(0);
    // One after the other without a gap, with the containers that are each one's in the mix.
    expect(runs.map((run: Run) => [run.mixId, run.household, run.containers])).toEqual(
      NAMES.map((name, at) => [mixes[0].id, name, shares[at].containers]),
    );
    expect(bodyOf(await lead.get(`${day}/supplies`)).containers).toBe(inAll);
  });

  test('moves nothing before it runs, for whoever may not, or after what was shown has changed', async () => {
    const mix = await mixOf();
    expect(bodyOf(await post(mix), 409).code).toBe('session-stage-wrong');
    bodyOf(await lead.post(`${day}/start`));
    expect(bodyOf(await post(mix, callerOf('Dell')), 403).code).toBe('duty-missing');
    expect(bodyOf(await post({ ...mix, seen: '0'.repeat(64) }), 409).code).toBe('mix-moved');
    expect(bodyOf(await post({ ...mix, id: hall.wheatId }), 404).code).toBe('thing-not-found');
    expect((await post({ ...mix, seen: 'x' })).status).toBe(400);
    expect(sum(await Promise.all(NAMES.map(ownGramsOf)))).toBe(
      sum(mix.shares.map(({ putInGrams }: Share) => putInGrams)),
    );
  });

  test('books what changes hands once, in the bags where it lies, and tells each its own figures', async () => {
    const mix = await mixOf();
    const before = await Promise.all(NAMES.map(ownGramsOf));
    const answers = await Promise.all([post(mix), post(mix)]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
    expect(await Promise.all(NAMES.map(ownGramsOf))).toEqual(
      before.map((grams, at) => grams + mix.shares[at].gotGrams),
    );
    const { notices } = bodyOf(await callerOf('Dell').get(`${storehouse.path}/notices`));
    expect(notices[0].words).toMatch(/^Your food runs together with others’/);
    const own = mix.shares[2] as Share;
    expect(notices[0].words).toContain(`Yours: containers ${own.containers}, left over ${own.leftGrams} g.`);
    const after = await mixOf();
    expect(after).toMatchObject({ id: mix.id, containers: mix.containers, shares: mix.shares });
    expect(after.postedId).not.toBeNull();
    expect(bodyOf(await post(after), 409).code).toBe('already-there');
    expect(bodyOf(await storehouse.coordinator.get(`${storehouse.path}/audit`)).holds).toBe(true);
  });

  test('can be given back until a bag of it stands at the line, and not once one does', async () => {
    const { postedId, shares } = await mixOf();
    const undo = (id: string) =>
      lead.post(`${day}/mixes/undoing`, { packingMixId: id, reason: 'run separately' });
    bodyOf(await undo(postedId), 201);
    expect(await Promise.all(NAMES.map(ownGramsOf))).toEqual(
      shares.map(({ putInGrams }: Share) => putInGrams),
    );
    expect(bodyOf(await undo(postedId), 409).code).toBe('already-reversed');
    const again = await mixOf();
    expect(again.postedId).toBeNull();
    bodyOf(await post(again), 201);
    const { postedId: newId } = await mixOf();
    await bringWheat(hall, day, 'Dell');
    expect(bodyOf(await undo(newId), 409).code).toBe('cannot-reverse');
  });

  test('then pours each household’s own containers from its own grams, as any other day does', async () => {
    const cans = aPourBody(hall, { name: 'Dell', grams: [2500], targetGrams: 2500 });
    const { containers } = bodyOf(await lead.post(`${day}/pours`, cans), 201);
    expect(containers).toHaveLength(1);
    const { shares } = await mixOf();
    expect(await ownGramsOf('Dell')).toBe(shares[2].putInGrams + shares[2].gotGrams - 2500);
  });
});

test('whoever brought a bag before anything was booked fills by itself', async () => {
  const other = await aPackingSession(storehouse, hall, { name: 'Another day' });
  for (const name of ['Ashdown', 'Birchall'] as const) {
    const containers = Math.floor((await ownGramsOf(name)) / 2500);
    bodyOf(await wish(name, { containers, mayMix: true }, other));
  }
  bodyOf(await lead.post(`${other}/start`));
  expect((await mixOf(other)).shares).toHaveLength(2);
  await bringWheat(hall, other, 'Ashdown');
  expect((await planOf(other)).mixes).toEqual([]);
});
