import { formatMoney, gramsOfPhysicalUnit } from '@sheafbook/units';
import type { BuyFood, CARRIER, StoryPledge, SupplierName } from './grain.ts';

/** The buy of the story as its acts hand it on: ids by code and by name, and the start of every address in it. */
export type StoryBuy = {
  readonly buyId: string;
  readonly path: string;
  readonly lineIds: ReadonlyMap<string, string>;
  readonly supplierIds: ReadonlyMap<string, string>;
};

/** Cents as people write them. */
export const money = (minorUnits: number): string => formatMoney(minorUnits, 'USD', 'en');
export const pounds = (count: number): number => gramsOfPhysicalUnit(count, 'lb');

export function lineOf(buy: StoryBuy, food: BuyFood): string {
  const id = buy.lineIds.get(food);
  if (id === undefined) throw new Error(`the buy has no line for ${food}`);
  return id;
}

export function supplierOf(buy: StoryBuy, name: SupplierName | typeof CARRIER): string {
  const id = buy.supplierIds.get(name);
  if (id === undefined) throw new Error(`the story has no supplier ${name}`);
  return id;
}

/** A pledge's terms in grams, as a phone sends them. */
export function pledgeTerms(buy: StoryBuy, pledge: StoryPledge) {
  const { ceiling, substitute, least, wanted, most, wholeBags = false } = pledge;
  return {
    leastGrams: pounds(least),
    wantedGrams: pounds(wanted),
    mostGrams: pounds(most),
    wholeBags,
    asTyped: pledge.asTyped ?? `${wanted} lb`,
    ...(ceiling === undefined ? {} : { ceilingMinorUnits: ceiling, ceilingPerGrams: pounds(1) }),
    ...(substitute === undefined ? {} : { substituteLineId: lineOf(buy, substitute) }),
  };
}
