import { assert, assertWhole } from '@sheafbook/units';
import { assertFreightTerms, type FreightTerms } from './freight.ts';
import type { BagOffer } from './price.ts';

/**
 * What one supplier offers: bags of some foods under one freight and one minimum.
 * Units: minor units and grams; 0 = no minimum. Errors: none.
 */
export type SupplierQuote = {
  readonly supplierId: string;
  readonly foods: readonly { readonly foodId: string; readonly offers: readonly BagOffer[] }[];
  readonly freight: FreightTerms;
  readonly minimumGoodsMinorUnits: number;
  readonly minimumGrams: number;
};

/**
 * Checks quotes that are to be compared; price lists are checked where they are priced.
 * Units: as in `SupplierQuote`. Errors: AssertionError when two quotes name one supplier, a minimum is not
 * whole and ≥ 0, or freight terms make no sense.
 */
export function assertSuppliers(quotes: readonly SupplierQuote[]): void {
  const ids = quotes.map((quote) => quote.supplierId);
  assert(new Set(ids).size === ids.length, 'a supplier quotes once');
  for (const { minimumGoodsMinorUnits, minimumGrams, freight } of quotes) {
    assertWhole(minimumGoodsMinorUnits, 'minimumGoodsMinorUnits');
    assertWhole(minimumGrams, 'minimumGrams');
    assertFreightTerms(freight);
  }
}
