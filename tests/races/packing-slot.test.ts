import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

test('of all who ask for the last lines at once exactly as many get one as there are lines', async () => {
  const callers = Object.values(hall.buy.households).map(({ caller }) => caller);
  for (const lines of [1, 2, 3]) {
    const day = await aPackingSession(storehouse, hall, { lines });
    for (const caller of callers)
      bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4 })] }));
    const asked = await Promise.all(
      [...callers, ...callers].map((caller) =>
        caller.post(`${day}/slots`, { startsAt: '2026-12-05T18:00:00Z' }),
      ),
    );
    expect(asked.filter(({ status }) => status === 201)).toHaveLength(lines);
    const codes = new Set(asked.filter(({ status }) => status !== 201).map(({ body }) => body.code));
    expect([...codes].filter((code) => code !== 'line-taken' && code !== 'already-there')).toEqual([]);
  }
});

test('the database itself keeps two households from one line at one time', async () => {
  const day = await aPackingSession(storehouse, hall);
  const { Dell, Birchall } = hall.buy.households;
  const { storehouseId } = storehouse;
  const sessionId = day.split('/').at(-1) ?? '';
  const slot = (household: { householdId: string; personId: string }, from: string, until: string) =>
    app.admin`insert into book.packing_slot (storehouse_id, packing_session_id, household_id, line, starts_at, ends_at,
      state, asked_at, asked_by) values (${storehouseId}, ${sessionId}, ${household.householdId}, 1, ${from}, ${until},
      'booked', now(), ${household.personId})`;
  await slot(Dell, '2026-12-05T18:00:00Z', '2026-12-05T18:30:00Z');
  await expect(slot(Birchall, '2026-12-05T18:29:59Z', '2026-12-05T18:40:00Z')).rejects.toMatchObject({
    constraint_name: 'packing_slot_line_at_a_time',
  });
  await slot(Birchall, '2026-12-05T18:30:00Z', '2026-12-05T18:40:00Z'); // touching is no overlap
});
