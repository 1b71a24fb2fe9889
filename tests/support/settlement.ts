import { bodyOf } from './buy.ts';
import { aPackingSession, aPourBody, bringWheat, type TestHall } from './packing.ts';
import type { TestStorehouse } from './storehouse.ts';

type Owner = keyof TestHall['wheat'];

/** Keeps a supply and buys some of it, paid in the shop by Corran's household; gives its id. */
export async function aSupply(
  storehouse: TestStorehouse,
  hall: TestHall,
  wish: Record<string, unknown>,
  bought: { pieces: number; minorUnits: number },
): Promise<string> {
  const { path } = storehouse;
  const { id } = bodyOf(await hall.lead.caller.post(`${path}/supplies`, { packPieces: 1, ...wish }), 201);
  const paidBy = { who: 'household', householdId: hall.buy.households.Corran.householdId };
  const lines = [{ supplyId: id, ...bought }];
  bodyOf(await hall.lead.caller.post(`${path}/supply-purchases`, { paidBy, lines }), 201);
  return id;
}

/** A session at which each of these households filled so many cans of a gram or so; poured, weighed and maybe signed. */
export async function aFilledDay(
  storehouse: TestStorehouse,
  hall: TestHall,
  filled: Partial<Record<Owner, number>>,
  { isSigned = true, ...wish }: { isSigned?: boolean } & Record<string, unknown> = {},
): Promise<string> {
  const { caller } = hall.lead;
  const day = await aPackingSession(storehouse, hall, wish);
  bodyOf(await caller.post(`${day}/start`));
  for (const [owner, count] of Object.entries(filled)) {
    const name = owner as Owner;
    const brought = await bringWheat(hall, day, name);
    const grams = Array.from({ length: count }, () => 1);
    const pour = { ...aPourBody(hall, { name, grams, targetGrams: 1 }), treatment: 'none' };
    bodyOf(await caller.post(`${day}/pours`, pour), 201);
    const bag = { bagId: hall.wheat[name].bagId, householdId: hall.buy.households[name].householdId };
    bodyOf(await caller.put(`${day}/left`, { ...bag, leftGrams: brought - count }));
  }
  if (isSigned) bodyOf(await caller.post(`${day}/signing`), 201);
  return day;
}
