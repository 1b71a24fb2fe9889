import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

// Job map 7.6: what a day has room for, and whom to ask for another time where more want a line at once than there are.
let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

type Name = 'Ashdown' | 'Birchall' | 'Corran';
async function wantsLine(day: string, name: Name, containers: number, startsAt: string) {
  const { caller } = hall.buy.households[name];
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers, gramsEach: 1000 })] }));
  return bodyOf(await caller.post(`${day}/slots`, { startsAt, orWait: true }), 201);
}
const planOf = async (day: string, query = '') => bodyOf(await hall.lead.caller.get(`${day}/plan${query}`));

test('the hours of a day hold so many containers at the pace of its people', async () => {
  const day = await aPackingSession(storehouse, hall);
  await wantsLine(day, 'Ashdown', 10, '2026-12-05T18:00:00Z');
  // Six hours less 30 minutes to set up, 15 of rest and 45 to clean down are 270 minutes: at 24 s, 27 s and 30 s a can.
  const capacityWith = async (people: number) => (await planOf(day, `?people=${people}`)).lines[0].capacity;
  expect([await capacityWith(6), await capacityWith(5), await capacityWith(4)]).toEqual([675, 600, 540]);
  expect(await capacityWith(1)).toBeNull();
});

test('where more want a line at once than there are, the shortest whose going is enough is the one to ask', async () => {
  const day = await aPackingSession(storehouse, hall);
  await wantsLine(day, 'Ashdown', 20, '2026-12-05T18:00:00Z'); // 8 minutes
  expect(await planOf(day)).toMatchObject({ linesNeeded: 1, toMove: null });
  const waits = await wantsLine(day, 'Birchall', 10, '2026-12-05T18:04:00Z'); // 4 minutes
  expect(waits.state).toBe('waiting');
  expect(await planOf(day)).toMatchObject({
    ...{ linesNeeded: 2, toMove: { slotId: waits.id, household: 'Birchall' } },
  });
  await wantsLine(day, 'Corran', 10, '2026-12-05T18:06:00Z');
  // At 18:06 all three want the line: whoever moves, the other two still want it at once.
  expect(await planOf(day)).toMatchObject({ linesNeeded: 3, toMove: null });
});
