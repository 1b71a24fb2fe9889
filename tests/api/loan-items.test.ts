import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, book, handOut, type TestItem, type TestShed } from '../support/equipment.ts';
import type { TestHousehold } from '../support/household.ts';

let app: TestApp;
let shed: TestShed;
let sealer: TestItem;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  sealer = await anItem(shed);
});
afterAll(() => app.close());

const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
async function stepsOf({ caller }: TestHousehold) {
  const { items } = bodyOf(await caller.get(`${shed.path}/next-steps`));
  return items.map(({ kind, words, dueAt, isOverdue }: Record<string, unknown>) => ({
    ...{ kind, words, dueAt, isOverdue },
  }));
}

test('who has a thing is asked to bring it back, and who comes next is warned while it is late', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-06T12:00']), 201);
  app.clock.now = new Date('2026-09-05T14:00:00Z');
  bodyOf(await handOut(shed.hale.caller, shed, id, sealer), 201);
  const due = { kind: 'loan-due', words: 'Bring this back: Can sealer.', dueAt: '2026-09-05T23:00:00.000Z' };
  expect(await stepsOf(shed.hale)).toContainEqual({ ...due, isOverdue: false });
  expect(await stepsOf(shed.moss)).toEqual([]);
  app.clock.now = new Date('2026-09-06T10:00:00Z');
  expect(await stepsOf(shed.hale)).toContainEqual({ ...due, isOverdue: true });
  expect(await stepsOf(shed.moss)).toEqual([
    {
      ...{ kind: 'equipment-late', dueAt: '2026-09-06T11:00:00.000Z', isOverdue: false },
      words: 'Whoever has it before you is late: Can sealer. See what else is free.',
    },
  ]);
});

test('who waits is told that a time came free', async () => {
  const mill = await anItem(shed, { name: 'Mill' }, []);
  const times = ['2026-09-10T09:00', '2026-09-10T18:00'] as const;
  const { id } = bodyOf(await book(shed.hale.caller, mill, times), 201);
  bodyOf(await shed.keeper.caller.post(`${mill.path}/waiting`, { from: times[0], until: times[1] }), 201);
  bodyOf(await shed.hale.caller.post(`${shed.path}/bookings/${id}/cancelling`));
  const own = (await stepsOf(shed.keeper)).filter(({ kind }: { kind: string }) => kind !== 'late-return');
  expect(own).toMatchObject([
    { kind: 'equipment-offered', words: 'This came free for you; say whether you take it: Mill.' },
  ]);
});

test('what a household booked stands in its calendar, and in nobody else’s', async () => {
  const listOf = async ({ caller }: TestHousehold) =>
    bodyOf(await caller.get(`${shed.path}/appointments`)).appointments.filter(({ id }: { id: string }) =>
      id.startsWith('loan.'),
    );
  expect(await listOf(shed.moss)).toMatchObject([
    { summary: 'Can sealer: yours until then', startsAt: '2026-09-06T11:00:00.000Z', isOwn: true },
  ]);
  expect((await listOf(shed.keeper)).map(({ summary }: { summary: string }) => summary)).toEqual([
    'Mill: yours until then',
  ]);
});
