import type { StockCountRow } from '@sheafbook/db/tables';
import type { readCommonStock } from './use-cases.ts';
import { worthOf } from './worth.ts';

type Reading = Awaited<ReturnType<typeof readCommonStock>>;

export const presentCommonStock = (reading: Reading) => ({
  currency: reading.currency,
  stock: commonStockRows(reading),
});

export const commonStockRows = ({ stock }: Reading) =>
  stock.map(({ row, value, last }) => {
    const difference = last ? last.count.countedGrams - last.count.bookGrams : null;
    return {
      accountId: row.accountId,
      code: row.code,
      vessel: row.vesselKind,
      foodEn: row.foodEn,
      foodEs: row.foodEs,
      bookGrams: row.grams,
      lastCountId: last?.count.stockCountId ?? null,
      countedGrams: last?.count.countedGrams ?? null,
      bookGramsThen: last?.count.bookGrams ?? null,
      differenceGrams: difference,
      differenceMinorUnits: difference === null ? null : worthOf(value, difference),
      countedBy: last?.countedBy ?? null,
      countedAt: last?.count.countedAt.toISOString() ?? null,
      isBooked: last?.count.entryId != null,
    };
  });

export const presentCount = (count: StockCountRow) => ({
  id: count.stockCountId,
  accountId: count.accountId,
  bookGrams: count.bookGrams,
  countedGrams: count.countedGrams,
  differenceGrams: count.countedGrams - count.bookGrams,
  note: count.note,
  countedAt: count.countedAt.toISOString(),
  entryId: count.entryId,
});
