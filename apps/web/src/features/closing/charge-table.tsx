import type { ReactNode } from 'react';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { BuyPage } from '../buy/buy-body.ts';
import { costColumns, ownersOf } from './cost-columns.ts';
import type { Charges } from './queries.ts';
import { useClosingText } from './words.ts';

type Owner = ReturnType<typeof ownersOf>[number];
type Props = {
  page: BuyPage;
  charges: Charges;
  /** Only these of all who bear some of it; the sums stay those of the whole. */
  owners?: readonly Owner[];
  /** A household's name as it stands in its row, such as the way to its statement. */
  nameOf?: (owner: Owner) => ReactNode;
};

/**
 * Rows are households, columns what the buy cost: each column comes to its cost, each row to a charge, which stands
 * first so that many costs don't push it beyond the edge.
 */
export function ChargeTable({ page, charges, owners, nameOf: sayName = ({ name }) => name }: Props) {
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
        { name: t.charge, isNumber: true },
        ...columns.map((column) => ({ name: nameOf(column), isNumber: true })),
      ]}
      rows={[
        ...(owners ?? ownersOf(charges.lines)).map((owner) => ({
          key: owner.ownerId,
          cells: [
            owner.isCommonStock ? t.commonStock : sayName(owner),
            format.money(sum(columns.map(({ partOf }) => partOf.get(owner.ownerId) ?? 0))),
            ...columns.map(({ partOf, spareOf }) => {
              const part = partOf.get(owner.ownerId);
              return part === undefined
                ? ''
                : `${format.money(part)}${spareOf.has(owner.ownerId) ? ' *' : ''}`;
            }),
          ],
        })),
        {
          key: 'sum',
          isSum: true,
          cells: [
            t.whole,
            format.money(sum(columns.map(({ minorUnits }) => minorUnits))),
            ...columns.map(({ minorUnits }) => format.money(minorUnits)),
          ],
        },
      ]}
    />
  );
}
