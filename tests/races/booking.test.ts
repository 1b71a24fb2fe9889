import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';

let app: TestApp;
let shed: TestShed;
let borrowers: TestHousehold[];
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  borrowers = [shed.hale, shed.moss];
  for (const name of ['Orr', 'Pell', 'Quill', 'Rudd']) borrowers.push(await aHousehold(app, shed, name));
});
afterAll(() => app.close());

const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
/** Households take turns, so that no two of a round are turned away for having booked already alone. */
const nth = (at: number) => borrowers[at % borrowers.length] ?? shed.hale;

async function overlaps(): Promise<number> {
  const [row] = await app.admin<{ count: number }[]>`
    select count(*)::int as count from book.booking a join book.booking b on a.equipment_unit_id = b.equipment_unit_id
      and a.booking_id < b.booking_id and a.blocked_from < b.blocked_to and b.blocked_from < a.blocked_to
    where a.state in ('offered', 'booked', 'out', 'returned') and b.state in ('offered', 'booked', 'out', 'returned')`;
  return row?.count ?? -1;
}

test('of 200 clients that want the sealer for one day exactly one gets it', async () => {
  const sealer = await anItem(shed, { name: 'Sealer' });
  const answers = await Promise.all(
    Array.from({ length: 200 }, (_, at) => book(nth(at).caller, sealer, SATURDAY)),
  );
  const won = answers.filter(({ status }) => status === 201);
  expect(won).toHaveLength(1);
  const codes = new Set(answers.filter(({ status }) => status !== 201).map(({ body }) => body.code));
  expect([...codes].filter((code) => !['equipment-taken', 'already-booked'].includes(code))).toEqual([]);
  expect(codes.has('equipment-taken')).toBe(true);
  expect(await overlaps()).toBe(0);
});

test('of two who want the last dolly at once one gets it', async () => {
  const dollies = await anItem(shed, { name: 'Dolly', units: 2 }, []);
  expect((await book(shed.hale.caller, dollies, SATURDAY)).status).toBe(201);
  const [one, two] = await Promise.all([nth(1), nth(2)].map(({ caller }) => book(caller, dollies, SATURDAY)));
  expect([one?.status, two?.status].toSorted()).toEqual([201, 409]);
  expect([one, two].find((answer) => answer?.status === 409)?.body.code).toBe('equipment-taken');
  expect(await overlaps()).toBe(0);
});

test('a time given back at the moment in which many ask for it is held by one of them', async () => {
  const mill = await anItem(shed, { name: 'Mill' }, []);
  const { body } = await book(shed.hale.caller, mill, SATURDAY);
  const [, ...asked] = await Promise.all([
    shed.hale.caller.post(`${shed.path}/bookings/${body.id}/cancelling`),
    ...borrowers.slice(1).map(({ caller }) => book(caller, mill, SATURDAY)),
    ...borrowers
      .slice(1)
      .map(({ caller }) => caller.post(`${mill.path}/waiting`, { from: SATURDAY[0], until: SATURDAY[1] })),
  ]);
  expect(asked.every(({ status }) => status === 201 || status === 409)).toBe(true);
  expect(await overlaps()).toBe(0);
  const [held] = await app.admin<{ count: number }[]>`select count(*)::int as count from book.booking
    where equipment_item_id = ${mill.id} and state in ('offered', 'booked')`;
  expect(held?.count).toBe(1);
});

test('two packing days that want the last sealer at once: one has it, and no loan gives way twice', async () => {
  const sealer = await anItem(shed, { name: 'Sealer of two days' });
  bodyOf(await book(shed.hale.caller, sealer, ['2026-10-10T10:00', '2026-10-10T18:00']), 201);
  const times = { startsAt: '2026-10-10T14:00:00Z', endsAt: '2026-10-10T20:00:00Z' };
  const days: string[] = [];
  for (const name of ['One canning day', 'Another canning day'])
    days.push(
      bodyOf(await shed.coordinator.post(`${shed.path}/packing-sessions`, { name, ...times }), 201).id,
    );
  const answers = await Promise.all(
    Array.from({ length: 20 }, (_, at) =>
      shed.coordinator.post(`${shed.path}/packing-sessions/${days[at % 2]}/equipment`, { itemId: sealer.id }),
    ),
  );
  const statuses = answers.map(({ status }) => status).toSorted();
  expect(statuses).toEqual([201, ...Array.from({ length: 19 }, () => 409)]);
  const { bookings } = bodyOf(await shed.hale.caller.get(`${shed.path}/bookings`));
  expect(bookings.filter(({ itemId }: { itemId: string }) => itemId === sealer.id)).toMatchObject([
    { state: 'offered' },
  ]);
});
