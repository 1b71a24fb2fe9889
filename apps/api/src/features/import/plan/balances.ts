import * as ledger from '@sheafbook/ledger';
import { formatMoney } from '@sheafbook/units';
import { BALANCE_OF } from '../sheet/choices.ts';
import { foldText } from '../sheet/kinds.ts';
import type { RowReader } from '../sheet/row-reader.ts';
import { findHousehold, type Known } from './book.ts';
import { namedHousehold } from './people.ts';
import type { Planned } from './planned.ts';

export type NewBalance = {
  readonly account: ledger.AccountKey;
  readonly balanceMinorUnits: number;
  readonly note: string;
  readonly newSupplier: { readonly id: string; readonly name: string } | null;
};
type Whose = {
  of: string;
  id: string;
  name: string;
  account: ledger.AccountKey;
  newSupplier: NewBalance['newSupplier'];
};

/** A balance of the old book: above zero a household owes and a bank holds, below zero we owe. */
export function planBalance(
  row: RowReader,
  known: Known,
  { supplierId, currency, source }: { supplierId: string; currency: string; source: string },
): Planned<NewBalance> {
  const whose = whoseBalance(row, known, supplierId);
  const filled = ['owes', 'isOwed', 'holds'].filter((column) => row.raw(column) !== '');
  const [column] = filled;
  if (column === undefined || filled.length > 1) row.refuse(column ?? 'owes', 'one-amount');
  const typed = column === undefined ? undefined : row.money(column);
  const note = row.text('note', 300) || `Opening balance from ${source}`;
  if (!whose || column === undefined || typed === undefined) return {};
  const isTill = whose.of === 'bank' || whose.of === 'cash';
  const balance = column === 'isOwed' ? -typed : typed;
  if ((column === 'holds') !== isTill && !(column === 'isOwed' && whose.of === 'bank'))
    row.refuse(column, 'wrong-side');
  if (whose.of === 'cash' && balance < 0) row.refuse(column, 'negative');
  if (balance === 0) return { effect: { code: 'nothing', name: whose.name } };
  const before = known.openings.get(whose.id);
  if (before === balance) return { effect: { code: 'there', what: 'balance', name: whose.name } };
  if (before !== undefined)
    row.refuse(column, 'opened-before', { amount: formatMoney(before, currency, 'en') });
  known.openings.set(whose.id, balance);
  const { account, newSupplier } = whose;
  return {
    effect: {
      code: 'opens',
      of: whose.of,
      name: whose.name,
      balanceMinorUnits: balance,
      isNew: newSupplier !== null,
    },
    made: { account, newSupplier, note, balanceMinorUnits: balance },
  };
}

function whoseBalance(row: RowReader, known: Known, supplierId: string): Whose | undefined {
  const name = row.needed('account');
  const what = row.raw('what') === '' ? undefined : row.choice('what', BALANCE_OF);
  if (name === undefined || (what === undefined && row.raw('what') !== '')) return undefined;
  const till = BALANCE_OF.get(foldText(name));
  const isTill = till === 'bank' || till === 'cash';
  if (what === 'household' || (what === undefined && (findHousehold(known, name) || !isTill))) {
    const supplier = what === undefined && !findHousehold(known, name) ? supplierOf(known, name) : undefined;
    if (supplier) return aSupplier(supplier, null);
    if (what === undefined && !findHousehold(known, name)) return row.refuse('account', 'no-such-account');
    const household = namedHousehold(row, known, 'account');
    return (
      household && {
        of: 'household',
        ...household,
        account: ledger.householdAccount(household.id),
        newSupplier: null,
      }
    );
  }
  if (what === 'supplier') {
    const supplier = supplierOf(known, name);
    if (supplier) return aSupplier(supplier, null);
    known.suppliers.set(foldText(name), { id: supplierId, name });
    return aSupplier({ id: supplierId, name }, { id: supplierId, name });
  }
  const of = what ?? till ?? 'bank';
  return {
    of,
    id: of,
    name,
    account: ledger.tillAccount(of === 'cash' ? 'cash_tin' : 'bank'),
    newSupplier: null,
  };
}

const supplierOf = ({ suppliers }: Known, name: string) => suppliers.get(foldText(name));

const aSupplier = (supplier: { id: string; name: string }, newSupplier: Whose['newSupplier']): Whose => ({
  of: 'supplier',
  ...supplier,
  account: ledger.supplierAccount(supplier.id),
  newSupplier,
});
