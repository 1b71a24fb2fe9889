import type { StockCountRow } from '@sheafbook/db/tables';
import { splitByWeight } from '@sheafbook/sharing';
import type { readCommonStock } from './use-cases.ts';
import { worthOf } from './worth.ts';

type Reading = Awaited<ReturnType<typeof readCommonStock>>;

export const presentCommonStock = (reading: Reading) => ({
  currency: reading.currency,
  stock: commonStockRows(reading),
});

export function commonStockRows({ stock }: Reading) {
  const values = valuesByAccount(stock);
  return stock.map(({ row, value, last }) => {
    const difference = last ? last.count.countedGrams - last.count.bookGrams : null;
    return {
      accountId: row.accountId,
      code: row.code,
      vessel: row.vesselKind,
      foodEn: row.foodEn,
      foodEs: row.foodEs,
      bookGrams: row.grams,
      valueMinorUnits: values.get(row.accountId) ?? 0,
      lastCountId: last?.count.stockCountId ?? null,
      countedGrams: last?.count.countedGrams ?? null,
      bookGramsThen: last?.count.bookGrams ?? null,
      differenceGrams: difference,
      differenceMinorUnits: difference === null || value === null ? null : worthOf(value, difference),
      countedBy: last?.countedBy ?? null,
      countedAt: last?.count.countedAt.toISOString() ?? null,
      isBooked: last?.count.entryId != null,
    };
  });
}

/** What each bag and can of a lot is worth, so that together they are the lot's balance in account 1400 to the minor unit. */
function valuesByAccount(stock: Reading['stock']): Map<string, number> {
  const lotIds = new Set(stock.map(({ row }) => row.lotId));
  return new Map(
    [...lotIds].flatMap((lotId) => {
      const rows = stock.filter(({ row }) => row.lotId === lotId);
      const { minorUnits = 0, grams = 0 } = rows[0]?.value ?? {};
      if (grams === 0) return [];
      const parts = splitByWeight(
        minorUnits,
        rows.map(({ row }) => row.grams),
      );
      return rows.map(({ row }, at) => [row.accountId, parts[at] ?? 0] as const);
    }),
  );
}

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
