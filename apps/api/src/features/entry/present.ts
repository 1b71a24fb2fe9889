import { chartLine } from '@sheafbook/ledger';
import type { AccountInWords, EntryInWords, MovementInWords } from './queries.ts';

/** An account's name as people say it, such as "Household balances of Ashdown" or "bag AB7K2, nobody’s yet". */
export function nameOf(account: AccountInWords, isHidden = false): string {
  const { vesselKind, vesselCode, ownerName, causeName } = account;
  if (account.unitKind === 'lot')
    return `${vesselKind ?? ''}${vesselCode === null ? '' : ` ${vesselCode}`}${isHidden ? '' : ownerOf(account)}`;
  const of = ownerName === null ? '' : ` of ${ownerName}`;
  const apart = causeName === null ? '' : ` for ${causeName}`;
  if (account.unitKind === 'supply')
    return `${account.ownerKind === null ? 'outside' : 'on hand'}${causeName === null ? '' : `: ${causeName}`}`;
  return `${chartLine(account.kind).name}${of}${apart}`;
}

function ownerOf({ ownerKind, ownerName }: AccountInWords): string {
  if (ownerKind === 'common') return ', common stock';
  return ownerKind === 'unassigned' ? ', nobody’s yet' : `, ${ownerName}`;
}

/** The destination is debited and the source credited; grams go from one to the other. */
export function presentEntry(entry: EntryInWords) {
  const isHidden = entry.movements.every((movement) => movement.isHomeStock);
  return {
    id: entry.entryId,
    entryNo: entry.entryNo,
    what: entry.what,
    onDay: entry.onDay,
    recordedAt: new Date(entry.recordedAt).toISOString(),
    note: isHidden ? '' : entry.note,
    buyId: entry.buyId,
    buy: entry.buyName,
    subjectId: isHidden ? null : entry.subjectId,
    enteredBy: isHidden ? null : entry.enteredBy,
    enteredFor: isHidden ? null : entry.enteredFor,
    reversesEntryNo: entry.reversesEntryNo,
    reversedByEntryNo: entry.reversedByEntryNo,
    movements: entry.movements.map(presentMovement),
  };
}

function presentMovement(movement: MovementInWords) {
  if (movement.isHomeStock)
    return { line: movement.line, unit: movement.from.unitKind, isHomeStock: true as const };
  return {
    line: movement.line,
    unit: movement.from.unitKind,
    isHomeStock: false as const,
    amount: movement.amount,
    food: movement.from.foodEn,
    foodEs: movement.from.foodEs,
    from: presentAccount(movement.from),
    to: presentAccount(movement.to),
  };
}

const presentAccount = (account: AccountInWords) => ({
  accountId: account.accountId,
  name: nameOf(account),
  number: account.unitKind === 'currency' ? chartLine(account.kind).number : null,
  householdId: account.ownerKind === 'household' ? account.ownerId : null,
});

export const presentEntries = (page: { entries: readonly EntryInWords[]; next: string | null }) => ({
  entries: page.entries.map(presentEntry),
  next: page.next,
});

/** One row a movement. A household's own stock has no row, since the row could say nothing. */
export const entryRows = ({ entries }: { entries: readonly EntryInWords[] }) =>
  entries.flatMap((entry) =>
    entry.movements
      .filter((movement) => !movement.isHomeStock)
      .map(({ line, amount, from, to }) => ({
        entryNo: entry.entryNo,
        line,
        onDay: entry.onDay,
        recordedAt: new Date(entry.recordedAt).toISOString(),
        what: entry.what,
        debit: nameOf(to),
        credit: nameOf(from),
        amount,
        unit: from.unitKind,
        food: from.foodEn,
        buy: entry.buyName,
        note: entry.note,
        enteredBy: entry.enteredBy,
        reversesEntryNo: entry.reversesEntryNo,
      })),
  );
