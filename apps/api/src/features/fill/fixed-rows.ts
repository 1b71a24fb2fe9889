import type { allotments, fixedBags } from '@sheafbook/db/tables';
import type { BuyFill, LineAnswer, PledgeAnswer } from './answer.ts';

type Of = { readonly storehouseId: string; readonly buyId: string };

export function fixedBagRows(fill: BuyFill, of: Of): (typeof fixedBags.$inferInsert)[] {
  return fill.lines.flatMap(({ lineId: buyLineId, bags }) =>
    bags.map((bag) => ({ ...of, buyLineId, ...bag })),
  );
}

/**
 * One row for every household that pledged for a line, those that got nothing with the reason, and one for the common
 * stock where it takes something. A household served twice on a line, by a pledge and a substitute, has one promise.
 */
export function allotmentRows(
  fill: BuyFill,
  { commonOwnerId, ...of }: Of & { readonly commonOwnerId: string },
): (typeof allotments.$inferInsert)[] {
  return fill.lines.flatMap((line) => {
    const householdIds = [...new Set(line.pledges.map((pledge) => pledge.householdId))];
    const households = householdIds.map((householdId) => ({ ...of, ...promise(line, householdId) }));
    const { lineId: buyLineId, commonUnits: units, commonGrams: grams } = line;
    return units > 0
      ? [...households, { ...of, buyLineId, ownerId: commonOwnerId, grams, units }]
      : households;
  });
}

function promise({ lineId: buyLineId, pledges }: LineAnswer, householdId: string) {
  const own = pledges.filter((pledge) => pledge.householdId === householdId);
  const served = own.filter((pledge) => pledge.units > 0);
  const sum = (amount: (pledge: PledgeAnswer) => number) =>
    own.reduce((total, pledge) => total + amount(pledge), 0);
  return {
    buyLineId,
    ownerId: householdId,
    grams: sum((pledge) => pledge.grams),
    units: sum((pledge) => pledge.units),
    wholeBags: served.length > 0 && served.every((pledge) => pledge.wholeBags),
    isDropped: served.length === 0,
    droppedBecause: served.length === 0 ? (own[0]?.dropped ?? '') : '',
  };
}
