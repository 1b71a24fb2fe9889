import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aFeed, eventsOf, unfolded } from '../support/calendar.ts';
import { aSecretWorld, SECRETS, type SecretWorld, type Viewer } from '../support/secrets.ts';
import { aStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let world: SecretWorld;
beforeAll(async () => {
  app = await openTestApp();
  world = await aSecretWorld(app, await aStorehouse(app));
}, 180_000);
afterAll(() => app.close());

const VIEWERS = [
  'coordinator',
  'treasurer',
  'packing lead',
  'equipment keeper',
  'member',
  'reviewer',
] as const satisfies readonly Viewer[];

/** A calendar's text, its lines put together and without the ids, whose digits mean nothing. */
async function textOf(caller: Parameters<typeof aFeed>[1], wish: Record<string, unknown>): Promise<string> {
  const { path } = await aFeed(world.storehouse, caller, wish);
  return unfolded(bodyOf(await app.as().get(path), 200)).replaceAll(
    /[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/g,
    'id',
  );
}

/** Everybody's name here, and every household's. */
async function names(): Promise<string[]> {
  const rows = await app.admin<{ name: string }[]>`
    select name from book.household union select name from book.person`;
  return rows.map(({ name }) => name);
}

const wishes = () => [
  { scope: 'mine' },
  { scope: 'storehouse' },
  { scope: 'item', item: { kind: 'buy', id: world.buy.buyId } },
];

describe.for(VIEWERS)('the calendars of a %s', (viewer) => {
  test('hold nothing of a neighbour: no secret, no name, no hour of theirs', async () => {
    const { caller } = world.viewers[viewer];
    const all = await names();
    for (const wish of wishes()) {
      const text = await textOf(caller, wish);
      expect(Object.entries(SECRETS).filter(([, secret]) => text.includes(secret))).toEqual([]);
      expect(all.filter((name) => text.includes(name))).toEqual([]);
      expect(text).not.toContain('DTSTART:20260905T150000Z'); // when Dell fetches its food
    }
  });

  test('name only appointments of their own household beside everybody’s', async () => {
    const { caller, personId } = world.viewers[viewer];
    const [own] = await app.admin<{ household_id: string }[]>`
      select household_id from book.person where person_id = ${personId}`;
    const events = await eventsOf(app, await aFeed(world.storehouse, caller));
    const households = await app.admin<{ household_id: string }[]>`select household_id from book.household`;
    const named = households
      .map((row) => row.household_id)
      .filter((id) => events.some(({ uid }) => uid.includes(id)));
    expect(named.filter((id) => id !== own?.household_id)).toEqual([]);
  });
});

describe('the calendar of the household that has the secrets', () => {
  test('tells it its own hour and that it owes, and never how much', async () => {
    const { caller, householdId } = world.dell;
    const feed = await aFeed(world.storehouse, caller);
    const kinds = (await eventsOf(app, feed)).map(({ uid }) => uid.split('.')[0]);
    expect(kinds).toEqual(expect.arrayContaining(['pick-up', 'balance-due']));
    expect((await eventsOf(app, feed)).some(({ uid }) => uid.startsWith(`balance-due.${householdId}`))).toBe(
      true,
    );
    const text = await textOf(caller, { scope: 'mine' });
    expect(text).toContain('DTSTART:20260905T150000Z');
    expect(text).not.toMatch(/\$|USD|987654|98,765|\d[.,]\d\d\b/);
    expect(Object.entries(SECRETS).filter(([, secret]) => text.includes(secret))).toEqual([]);
  });

  test('tells nothing of its own where it may hang on a wall', async () => {
    for (const wish of wishes().slice(1)) {
      const text = await textOf(world.dell.caller, wish);
      expect(text).not.toMatch(/UID:(pick-up|balance-due|deposit-due)/);
    }
  });
});

test('what was told of one household is kept from every other by the table itself', async () => {
  await eventsOf(app, await aFeed(world.storehouse, world.dell.caller));
  const seenBy = (household: string) =>
    app.sql.begin(async (sql) => {
      await sql`select set_config('app.storehouse', ${world.storehouse.storehouseId}, true),
        set_config('app.household', ${household}, true)`;
      const rows = await sql<{ household_id: string | null }[]>`select household_id from book.calendar_event`;
      return rows.some((row) => row.household_id === world.dell.householdId);
    });
  expect(await seenBy(world.dell.householdId)).toBe(true);
  const { Corran } = world.buy.households;
  expect([await seenBy(Corran.householdId), await seenBy('')]).toEqual([false, false]);
});
