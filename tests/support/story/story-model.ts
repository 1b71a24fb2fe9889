import type { BuyStage } from '@sheafbook/ledger';
import { expect } from 'vitest';
import { bodyOf } from '../buy.ts';
import { callerOf, type Real } from './story-world.ts';

/** What a story believes: where the buy stands, what the tills hold, and what is in its cans. */
export type Model = { stage: BuyStage; bank: number; cash: number; cansGrams: number };

export const newModel = (): Model => ({ stage: 'gathering', bank: 0, cash: 0, cansGrams: 0 });

/** What the book says of the same things, and of how much was ever written in it. */
export type Seen = Model & { digest: string };

export async function look({ app, storehouse, buy }: Real): Promise<Seen> {
  const { storehouseId } = storehouse;
  const [row] = await app.admin<
    { stage: BuyStage; bank: string; cash: string; cans: string; digest: string }[]
  >`select
    (select stage from book.buy where storehouse_id = ${storehouseId} and buy_id = ${buy.buyId}) as stage,
    coalesce(sum(inflow - outflow) filter (where kind = 'bank'), 0) as bank,
    coalesce(sum(inflow - outflow) filter (where kind = 'cash_tin'), 0) as cash,
    coalesce(sum(inflow - outflow) filter (where vessel_kind = 'container'), 0) as cans,
    (select count(*) from book.entry where storehouse_id = ${storehouseId}) || ' entries, ' || count(*) filter
      (where inflow > 0 or outflow > 0) || ' accounts, ' || coalesce(sum(inflow + outflow), 0) as digest
    from book.account where storehouse_id = ${storehouseId}`;
  if (!row) throw new Error('a sum gives one row');
  const { stage, digest } = row;
  return { stage, digest, bank: Number(row.bank), cash: Number(row.cash), cansGrams: Number(row.cans) };
}

/** The whole book, recomputed from its movements: every invariant holds. */
export async function expectSound(real: Real): Promise<void> {
  const audit = bodyOf(await callerOf(real, 'treasurer').get(`${real.storehouse.path}/audit`));
  const broken = audit.findings.filter(({ holds }: { holds: boolean }) => !holds);
  expect(broken, real.log.join('\n')).toEqual([]);
}

/** The book says what the model believes. */
export function expectSame(real: Real, seen: Seen, model: Model): void {
  const { digest: _, ...known } = seen;
  expect(known, real.log.join('\n')).toEqual(model);
}
