import { claimValue } from '@sheafbook/sharing';
import { fraction, roundFraction, sumOf } from '@sheafbook/units';

/** One bag size of an order and what became of it. Units: bags; minor units for all bags ordered. */
export type OrderedOutcome = {
  readonly supplierId: string;
  readonly buyLineId: string;
  readonly orderedBags: number;
  readonly goodsMinorUnits: number;
  readonly countedBags: number;
  readonly bags: readonly {
    readonly declaredGrams: number;
    readonly netGrams: number;
    readonly condition: string;
    readonly decision: string;
    readonly isOnHold: boolean;
  }[];
};

export type ProposedClaim = {
  readonly supplierId: string;
  readonly buyLineId: string;
  readonly kind: 'short' | 'damage' | 'wrong';
  readonly minorUnits: number;
  readonly shortBags: number;
  readonly lostGrams: number;
};

type Asked = { readonly buyLineId: string | null; readonly kind: string; readonly minorUnits: number };

/**
 * What could be claimed for an order and is not claimed yet: bags that never came, or were refused, at their price; of
 * bags that came damaged or light the part of the price that their lost mass has; of a bag on hold all of it, since the
 * claim window does not wait for the finding. Bags beyond the order make up for refused ones.
 */
export function proposeClaims(outcomes: readonly OrderedOutcome[], asked: readonly Asked[]): ProposedClaim[] {
  const proposed = outcomes.flatMap(proposeForSize);
  const kinds = new Set(proposed.map(kindOf));
  return [...kinds].flatMap((kind) => {
    const claims = proposed.filter((claim) => kindOf(claim) === kind);
    const [first] = claims;
    const before = sumOf(asked.filter((claim) => kindOf(claim) === kind).map((claim) => claim.minorUnits));
    const minorUnits = sumOf(claims.map((claim) => claim.minorUnits)) - before;
    if (!first || minorUnits <= 0) return [];
    const shortBags = sumOf(claims.map((claim) => claim.shortBags));
    return [{ ...first, minorUnits, shortBags, lostGrams: sumOf(claims.map((claim) => claim.lostGrams)) }];
  });
}

const kindOf = ({ buyLineId, kind }: { buyLineId: string | null; kind: string }): string =>
  JSON.stringify([buyLineId, kind]);

function proposeForSize(outcome: OrderedOutcome): ProposedClaim[] {
  const { supplierId, buyLineId, orderedBags, goodsMinorUnits, countedBags, bags } = outcome;
  // Under price steps the bags of one order differ in price; their mean stands for each.
  const bagPriceMinorUnits = Number(roundFraction(fraction(goodsMinorUnits, orderedBags)));
  const refused = bags.filter((bag) => bag.decision === 'refused');
  const missing = Math.max(0, orderedBags - (countedBags - refused.length));
  const shortBags = Math.min(missing, Math.max(0, orderedBags - countedBags));
  const wrongBags = Math.min(missing - shortBags, refused.filter((bag) => bag.condition === 'wrong').length);
  const spoiledBags = missing - shortBags - wrongBags;
  const damaged = bags
    .filter((bag) => bag.decision !== 'refused')
    .map(({ declaredGrams, netGrams, isOnHold }) => ({
      declaredGrams,
      lostGrams: isOnHold ? declaredGrams : Math.max(0, declaredGrams - netGrams),
    }))
    .filter((bag) => bag.lostGrams > 0);
  const price = (bagCount: number) => claimValue({ bagPriceMinorUnits, shortBags: bagCount, damaged: [] });
  const light = claimValue({ bagPriceMinorUnits, shortBags: spoiledBags, damaged });
  const lostGrams = sumOf(damaged.map((bag) => bag.lostGrams));
  const claim = { supplierId, buyLineId, lostGrams: 0 };
  return [
    { ...claim, kind: 'short' as const, shortBags, minorUnits: price(shortBags).claimMinorUnits },
    { ...claim, kind: 'wrong' as const, shortBags: wrongBags, minorUnits: price(wrongBags).claimMinorUnits },
    {
      ...claim,
      kind: 'damage' as const,
      shortBags: spoiledBags,
      lostGrams,
      minorUnits: light.claimMinorUnits,
    },
  ].filter((proposed) => proposed.minorUnits > 0);
}
