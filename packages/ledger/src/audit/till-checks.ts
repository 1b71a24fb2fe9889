import type { MoneyKind } from '../account-key.ts';
import type { AuditFinding, AuditInput } from './audit-rows.ts';
import { groupByEntry } from './book-walk.ts';
import { finding } from './finding.ts';

/** What the bank and the cash tin say beside the book: no invariant of the twenty, but what 1 and 2 rest on. Units: as told. Errors: none. */
export function tillFindings(input: AuditInput): AuditFinding[] {
  return [bankFinding(input), tinFinding(input), digestFinding(input)];
}

function digestFinding(input: AuditInput): AuditFinding {
  const changed = input.digests.filter(({ isSame }) => !isSame);
  return finding({
    number: 2,
    key: 'digests',
    invariant: 'Every close that kept a digest still gives it from its entries',
    holds: changed.length === 0,
    counts: [
      [input.digests.length, 'digests'],
      [changed.length, 'no longer the same'],
    ],
  });
}

function bankFinding(input: AuditInput): AuditFinding {
  const change = changesOf(input, 'bank');
  const takenBack = new Set(input.entries.flatMap(({ reversesEntryId }) => reversesEntryId ?? []));
  const seenTwice = (ids: readonly string[]) => ids.length - new Set(ids).size;
  const others = input.bankMatches.filter((match) => change(match.entryId) !== match.lineMinorUnits);
  const gone = input.bankMatches.filter(({ entryId }) => takenBack.has(entryId));
  const twice =
    seenTwice(input.bankMatches.map(({ lineId }) => lineId)) +
    seenTwice(input.bankMatches.map(({ entryId }) => entryId));
  return finding({
    number: 2,
    key: 'bank-matches',
    invariant:
      'Every matched line of the bank is one standing entry of its own amount, and no entry is two lines',
    holds: others.length === 0 && gone.length === 0 && twice === 0,
    counts: [
      [input.bankMatches.length, 'lines matched'],
      [others.length, 'of another amount'],
      [gone.length, 'taken back'],
      [twice, 'matched twice'],
    ],
  });
}

function tinFinding(input: AuditInput): AuditFinding {
  const change = changesOf(input, 'cash_tin');
  const wrong = input.tinCounts.filter(
    ({ entryId, differenceMinorUnits }) => (entryId === null ? 0 : change(entryId)) !== differenceMinorUnits,
  );
  return finding({
    number: 2,
    key: 'tin-counts',
    invariant: 'Every count of the cash tin that differed from the book is booked to the cent',
    holds: wrong.length === 0,
    counts: [
      [input.tinCounts.length, 'counts'],
      [wrong.length, 'not booked as counted'],
    ],
  });
}

/** By how much an entry changed the accounts of one kind. */
function changesOf(input: AuditInput, kind: MoneyKind): (entryId: string) => number {
  const ids = new Set(
    input.accounts.flatMap((account) => (account.kind === kind ? [account.accountId] : [])),
  );
  const byEntry = groupByEntry(input.movements);
  return (entryId) =>
    (byEntry.get(entryId) ?? []).reduce(
      (sum, { sourceId, destinationId, amount }) =>
        sum + (ids.has(destinationId) ? amount : 0) - (ids.has(sourceId) ? amount : 0),
      0,
    );
}
