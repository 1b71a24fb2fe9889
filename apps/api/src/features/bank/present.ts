import type { BankMatchRow } from '@sheafbook/db/tables';
import type { EntryAtBank } from './queries-book.ts';
import type { ForecastReading, LinesReading, ReconciliationReading, Suggestion } from './use-cases.ts';
import type { FilePreview, readFiles, TakenFile } from './use-cases-file.ts';

export function presentPreview(preview: FilePreview) {
  const { lines, problems, knownCount, closing } = preview;
  return {
    rows: preview.rows,
    columns: preview.columns,
    from: preview.from,
    lines: lines
      .slice(0, 50)
      .map(({ rowNo, onDay, minorUnits, words }) => ({ rowNo, onDay, minorUnits, words })),
    lineCount: lines.length,
    knownCount,
    firstOn: lines.map(({ onDay }) => onDay).toSorted()[0] ?? null,
    lastOn:
      lines
        .map(({ onDay }) => onDay)
        .toSorted()
        .at(-1) ?? null,
    cameInMinorUnits: lines.reduce((sum, { minorUnits }) => sum + Math.max(0, minorUnits), 0),
    wentOutMinorUnits: lines.reduce((sum, { minorUnits }) => sum + Math.max(0, -minorUnits), 0),
    problems: problems.slice(0, 200).map(({ rowNo, column, cell, because }) => ({
      ...{ rowNo, column, cell: cell.slice(0, 100), because },
    })),
    closing,
  };
}

export function presentTaken({ file, newCount, knownCount, closing }: TakenFile) {
  return { id: file.bankFileId, name: file.name, newCount, knownCount, closing };
}

export const presentFiles = (page: Awaited<ReturnType<typeof readFiles>>) => ({
  files: page.rows.map(({ file, takenBy, lines }) => ({
    ...{
      id: file.bankFileId,
      name: file.name,
      takenBy,
      takenAt: file.takenAt.toISOString(),
      newLines: lines,
    },
  })),
  next: page.next,
});

export const presentMatch = (match: BankMatchRow) => ({
  lineId: match.bankLineId,
  how: match.how,
  entryId: match.entryId,
  reason: match.reason,
  isOpen: match.undoneAt !== null,
});

type Line = LinesReading['lines'][number];

export const presentLines = ({ lines, next, currency, counts }: LinesReading) => ({
  ...{ currency, counts, next },
  lines: lines.map(presentLine),
});

function presentLine(line: Line) {
  const { match } = line;
  return {
    id: line.bankLineId,
    onDay: line.onDay,
    minorUnits: line.minorUnits,
    words: line.words,
    state: match?.how ?? ('open' as const),
    match: match && { ...match, party: line.party },
    suggestion: line.suggestion && presentSuggestion(line.suggestion),
  };
}

const presentSuggestion = ({ entry, guess }: Suggestion) => ({
  entry: entry && presentEntryAtBank(entry),
  guess: guess && {
    as: guess.depositOnBuyId === null ? guess.what : ('deposit' as const),
    by: guess.by,
    partyId: guess.partyId,
    party: guess.party,
    buyId: guess.depositOnBuyId,
  },
});

export const presentEntryAtBank = (entry: EntryAtBank) => ({
  id: entry.entryId,
  entryNo: entry.entryNo,
  onDay: entry.onDay,
  what: entry.what,
  note: entry.note,
  party: entry.party,
  minorUnits: entry.minorUnits,
});

/** One row a line, for a spreadsheet. */
export const lineRows = ({ lines }: LinesReading) =>
  lines.map(({ onDay, minorUnits, words, match, party }) => ({
    ...{ onDay, minorUnits, words, state: match?.how ?? 'open', entryNo: match?.entryNo ?? null },
    ...{ what: match?.what ?? null, party, reason: match?.reason ?? '' },
  }));

export function presentReconciliation(reading: ReconciliationReading) {
  const { reconciliation: found, entries, openLines, isTold } = reading;
  const wordsOf = (entryId: string) => entries.find((entry) => entry.entryId === entryId);
  const inWords = (rows: readonly { entryId: string }[]) =>
    rows.flatMap(({ entryId }) => wordsOf(entryId) ?? []).map(presentEntryAtBank);
  return {
    currency: reading.currency,
    throughOn: reading.throughOn,
    isTold,
    counts: reading.counts,
    bookNowMinorUnits: reading.bookMinorUnits,
    bookMinorUnits: found.bookMinorUnits,
    statementMinorUnits: isTold ? found.statementMinorUnits : null,
    differenceMinorUnits: isTold ? found.differenceMinorUnits : null,
    uncleared: inWords(found.uncleared),
    unclearedMinorUnits: found.unclearedMinorUnits,
    bookedLater: inWords(found.bookedLater),
    bookedLaterMinorUnits: found.bookedLaterMinorUnits,
    notInBook: found.notInBook.map(({ lineId, onDay, minorUnits }) => {
      const line = openLines.find((open) => open.lineId === lineId);
      return {
        lineId,
        onDay,
        minorUnits,
        words: line?.words ?? '',
        setAsideBecause: line?.match?.reason ?? null,
      };
    }),
    notInBookMinorUnits: found.notInBookMinorUnits,
  };
}

export function presentForecast({ forecast, receipts, payments, ...reading }: ForecastReading) {
  return {
    currency: reading.currency,
    on: reading.on,
    bankMinorUnits: reading.bankMinorUnits,
    tinMinorUnits: reading.tinMinorUnits,
    moreMinorUnits: reading.more,
    ...forecast,
    receipts: receipts.map(({ party, dueOn, minorUnits, why }) => ({ party, dueOn, minorUnits, why })),
    payments: payments.map(({ party, dueOn, minorUnits, why }) => ({ party, dueOn, minorUnits, why })),
  };
}
