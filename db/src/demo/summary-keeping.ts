import { sql } from 'drizzle-orm';
import type { Tx } from '../connect.ts';
import type { Cast } from './cast.ts';

/** What the story tells of keeping, counted from the tables: held against the story, and not printed. */
export type KeepingFigures = {
  /** Containers that were given to the store with a history that nobody knows, and the grams of them that were lost. */
  readonly givenIn: number;
  readonly givenInLostGrams: number;
  readonly animalsGrams: number;
  readonly openHolds: number;
  /** Bags and containers with something in them that may not move. */
  readonly heldVessels: number;
};

export async function loadKeeping(tx: Tx): Promise<KeepingFigures> {
  const [row] = await tx.execute<Record<keyof KeepingFigures, string>>(sql`select
    (select count(*) from book.container c join book.intake i using (storehouse_id, lot_id)
      where i.is_unknown_history) as "givenIn",
    (select coalesce(sum(a.inflow - a.outflow), 0) from book.account a
      join book.intake i on i.storehouse_id = a.storehouse_id and i.lot_id = a.unit_id
      where a.vessel_kind in ('discarded', 'animals')) as "givenInLostGrams",
    (select coalesce(sum(inflow - outflow), 0) from book.account where vessel_kind = 'animals') as "animalsGrams",
    (select count(*) from book.hold where released_at is null) as "openHolds",
    (select count(distinct v.vessel_id) from book.hold_vessel v
      join book.account a on a.storehouse_id = v.storehouse_id and a.vessel_id = v.vessel_id
      where v.ended_at is null and a.inflow > a.outflow) as "heldVessels"`);
  if (!row) throw new Error('a select without a table gives a row');
  return {
    ...{ givenIn: Number(row.givenIn), givenInLostGrams: Number(row.givenInLostGrams) },
    ...{ animalsGrams: Number(row.animalsGrams), openHolds: Number(row.openHolds) },
    heldVessels: Number(row.heldVessels),
  };
}

/** What only those may read whom it concerns: what stands beside the moths, and whom the coordinator is to telephone. */
export async function askOfKeeping({ coordinator, of }: Cast) {
  const { watches } = await of('Garrow').caller.get<{ watches: unknown[] }>('/inspections/due');
  const { items } = await coordinator.get<{ items: { kind: string; householdIds: string[] }[] }>(
    '/next-steps',
  );
  const unreached = items.filter(({ kind }) => kind === 'unreached').flatMap((item) => item.householdIds);
  return { watchedBesideMoths: watches.length, unreachedOfHold: new Set(unreached).size };
}
