import type { Answer, Caller, TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import { aHousehold, type TestHousehold } from './household.ts';
import { aJpeg } from './jpeg.ts';
import { aStorehouse, type TestStorehouse } from './storehouse.ts';

/** What is said of a thing that nothing else is said of. */
export const itemBody = (wish: Record<string, unknown> = {}) => ({
  ...{
    name: 'Can sealer',
    kindNote: 'for No. 10 cans',
    cautions: 'Guard on, no loose sleeves.',
    keptWhere: 'shed',
  },
  ...{ valueMinorUnits: 64_000, depositMinorUnits: 5000, feeMinorUnits: 300, lateFeeMinorUnits: 200 },
  ...{ damageNote: '', preMinutes: 0, postMinutes: 720, longestDays: 3, mayRelay: true },
  ...{ serviceEveryUses: 500, serviceEveryDays: 180, units: 1 },
  ...wish,
});

/** The sealer's parts. Invented prices. */
export const SEALER_PARTS = [
  { name: 'Chuck', pieces: 1, isCritical: true, valueMinorUnits: 3800 },
  { name: 'Seam gauge', pieces: 1, isCritical: false, valueMinorUnits: 2400 },
  { name: 'Hex key', pieces: 2, isCritical: false, valueMinorUnits: 150 },
];

export type TestItem = {
  id: string;
  path: string;
  name: string;
  version: number;
  units: { id: string; unitNo: number; code: string; version: number; blockers: string[] }[];
  parts: { id: string; name: string; pieces: number }[];
};

/** A storehouse with a keeper and two households that borrow. */
export type TestShed = TestStorehouse & {
  keeper: TestHousehold;
  hale: TestHousehold;
  moss: TestHousehold;
};

export async function aShed(app: TestApp): Promise<TestShed> {
  const storehouse = await aStorehouse(app);
  return {
    ...storehouse,
    keeper: await aHousehold(app, storehouse, 'Keeper', { duties: ['equipment_keeper'] }),
    hale: await aHousehold(app, storehouse, 'Hale'),
    moss: await aHousehold(app, storehouse, 'Moss'),
  };
}

export async function anItem(
  shed: TestStorehouse & { keeper: { caller: Caller } },
  wish: Record<string, unknown> = {},
  parts: readonly Record<string, unknown>[] = SEALER_PARTS,
): Promise<TestItem> {
  const { caller } = shed.keeper;
  const { id } = bodyOf(await caller.post(`${shed.path}/equipment`, itemBody(wish)), 201);
  const path = `${shed.path}/equipment/${id}`;
  return { ...bodyOf(await caller.put(`${path}/parts`, { parts })), path };
}

/** Books from one time on the wall to another. */
export const book = (
  caller: Caller,
  item: Pick<TestItem, 'path'>,
  [from, until]: readonly [string, string],
  more: Record<string, unknown> = {},
): Promise<Answer> => caller.post(`${item.path}/bookings`, { from, until, ...more });

/** Ticks of all the parts of a thing, fewer of those that are named. */
export const ticksOf = (item: Pick<TestItem, 'parts'>, fewer: Record<string, number> = {}) =>
  item.parts.map(({ id, name, pieces }) => ({ partId: id, pieces: fewer[name] ?? pieces }));

/** Hands out a booking with all its parts. */
export const handOut = (
  caller: Caller,
  shed: { path: string },
  bookingId: string,
  item: TestItem,
  more: Record<string, unknown> = {},
): Promise<Answer> =>
  caller.post(`${shed.path}/bookings/${bookingId}/loan`, {
    ...{ parts: ticksOf(item), takenBy: 'Whoever takes it', note: '' },
    ...more,
  });

/** Brings a loan back with all its parts. */
export const bringBack = (
  caller: Caller,
  shed: { path: string },
  loanId: string,
  item: TestItem,
  more: Record<string, unknown> = {},
): Promise<Answer> =>
  caller.post(`${shed.path}/loans/${loanId}/return`, {
    ...{ parts: ticksOf(item), broughtBy: 'Whoever brings it', condition: 'ready', note: '' },
    ...more,
  });

/** How a thing went out, photographed by whoever has it. */
export async function photographLoan(
  { path }: { path: string },
  { caller, loanId }: { caller: Caller; loanId: string },
): Promise<string> {
  const { itemId } = bodyOf(await caller.get(`${path}/loans/${loanId}`));
  const photo = { contentBase64: aJpeg().toString('base64'), loan: { loanId, moment: 'out' } };
  return bodyOf(await caller.post(`${path}/equipment/${itemId}/photos`, photo), 201).id;
}
