import { assertWhole, compareText } from '@sheafbook/units';

/** A supplier's bill with the day by which it asks to be paid. Units: minor units, > 0. Errors: none by itself. */
export type DatedBill = { readonly billId: string; readonly dueOn: string; readonly minorUnits: number };

/**
 * What is left of a bill. `billId` is null for what no bill in the book asks, such as a balance brought over.
 * Units: minor units, > 0. Errors: none by itself.
 */
export type OpenBill = {
  readonly billId: string | null;
  readonly dueOn: string | null;
  readonly minorUnits: number;
};

/**
 * What is left to pay of a supplier's bills: all that was paid and credited settles first what no bill asks, then the bill
 * that fell due first, so what is owed now belongs to the bills that fall due last.
 * Units: minor units; the parts add up to what is owed, or to nothing when nothing is. Shape: in the order in which they fall
 * due. Errors: AssertionError for an amount that is not whole or a bill of nothing.
 */
export function openBills(bills: readonly DatedBill[], owedMinorUnits: number): OpenBill[] {
  assertWhole(Math.abs(owedMinorUnits), 'owedMinorUnits');
  let left = Math.max(0, owedMinorUnits);
  const open: OpenBill[] = [];
  for (const { billId, dueOn, minorUnits } of bills.toSorted(lastDueFirst)) {
    assertWhole(minorUnits, 'minorUnits');
    const part = Math.min(left, minorUnits);
    if (part > 0) open.unshift({ billId, dueOn, minorUnits: part });
    left -= part;
  }
  return left > 0 ? [{ billId: null, dueOn: null, minorUnits: left }, ...open] : open;
}

const lastDueFirst = (a: DatedBill, b: DatedBill) =>
  compareText(b.dueOn, a.dueOn) || compareText(b.billId, a.billId);
