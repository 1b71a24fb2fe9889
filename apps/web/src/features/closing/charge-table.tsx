import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { BuyPage } from '../buy/buy-body.ts';
import { costColumns, ownersOf } from './cost-columns.ts';
import type { Charges } from './queries.ts';
import { useClosingText } from './words.ts';

/** Rows are households, columns what the buy cost: each column comes to its cost, each row to a charge. */
export function ChargeTable({ page, charges }: { page: BuyPage; charges: Charges }) {
  const t = useClosingText();
  const { format } = useHouse();
  const columns = costColumns(charges.lines);
  const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
  const nameOf = ({ costLine, buyLineId }: (typeof columns)[number]) => {
    const food = page.lines.find(({ id }) => id === buyLineId)?.food;
    if (food) return nameIn(format.language, food);
    return t.costLines[costLine] ?? t.costLines[costLine.split(':')[0] ?? ''] ?? costLine;
  };
  return (
    <Ledger
      caption={t.whoBears}
      columns={[
        { name: t.household },
        ...columns.map((column) => ({ name: nameOf(column), isNumber: true })),
        { name: t.charge, isNumber: true },
      ]}
      rows={[
        ...ownersOf(charges.lines).map(({ ownerId, name, isCommonStock }) => ({
          key: ownerId,
          cells: [
            isCommonStock ? t.commonStock : name,
            ...columns.map(({ partOf, spareOf }) => {
              const part = partOf.get(ownerId);
              return part === undefined ? '' : `${format.money(part)}${spareOf.has(ownerId) ? ' *' : ''}`;
            }),
            format.money(sum(columns.map(({ partOf }) => partOf.get(ownerId) ?? 0))),
          ],
        })),
        {
          key: 'sum',
          isSum: true,
          cells: [
            t.whole,
            ...columns.map(({ minorUnits }) => format.money(minorUnits)),
            format.money(sum(columns.map(({ minorUnits }) => minorUnits))),
          ],
        },
      ]}
    />
  );
}
