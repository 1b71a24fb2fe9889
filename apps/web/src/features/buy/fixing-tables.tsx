import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { BuyPage, FillLine } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import type { Fixing } from './run-queries.ts';
import { useOrderText } from './words.ts';

/** What ids stand for, for a reader. */
export type Names = {
  readonly household: (householdId: string) => string;
  readonly wantedGrams: (pledgeId: string) => number;
};

/** Food by food, what each household would get of what it wants; every column adds up. */
export function WhoGetsWhat({
  buy,
  lines,
  names,
}: {
  buy: BuyPage;
  lines: readonly FillLine[];
  names: Names;
}) {
  const words = useOrderText();
  const { format } = useHouse();
  return (
    <section className="stack">
      <h2>{words.whoGetsWhat}</h2>
      {buy.lines.map((line) => {
        const filled = lines.find(({ lineId }) => lineId === line.id);
        const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
        const pledges = (filled?.pledges ?? []).filter(({ units }) => units > 0);
        if (!filled || pledges.length === 0) return null;
        const food = foodNameOf(line, format.language);
        const say = (grams: number) => format.massIn(grams, unit);
        const grams = pledges.reduce((sum, pledge) => sum + pledge.grams, 0) + filled.commonGrams;
        return (
          <div key={line.id}>
            <h3>{food}</h3>
            <Ledger
              caption={food}
              columns={[
                { name: words.household },
                { name: words.wanted, isNumber: true },
                { name: words.gets, isNumber: true },
              ]}
              rows={[
                ...pledges.map((pledge) => ({
                  key: pledge.pledgeId,
                  cells: [
                    names.household(pledge.householdId),
                    pledge.isSubstitute ? '' : say(names.wantedGrams(pledge.pledgeId)),
                    <b key="gets">{say(pledge.grams)}</b>,
                  ],
                })),
                ...(filled.commonGrams > 0
                  ? [{ key: 'common', cells: [words.unfilled, '', say(filled.commonGrams)] }]
                  : []),
                { key: 'sum', isSum: true, cells: [words.sum, '', say(grams)] },
              ]}
            />
          </div>
        );
      })}
    </section>
  );
}

/** Each household that gets nothing of what it pledged for, with the reason that it may be told. */
export function DroppedTable({ buy, look, names }: { buy: BuyPage; look: Fixing; names: Names }) {
  const words = useOrderText();
  const { format } = useHouse();
  if (look.dropped.length === 0) return null;
  const foodOf = (lineId: string | null) => {
    const line = buy.lines.find(({ id }) => id === lineId);
    return line ? foodNameOf(line, format.language) : '';
  };
  return (
    <section className="stack">
      <h2>{words.whoIsLeftOut}</h2>
      <Ledger
        caption={words.whoIsLeftOut}
        columns={[{ name: words.household }, { name: words.food }, { name: words.because }]}
        rows={look.dropped.map(({ pledgeId, householdId, lineId, reason, substituteLineId }) => ({
          key: `${pledgeId} ${lineId}`,
          cells: [
            names.household(householdId),
            foodOf(lineId),
            <>
              {words.reasons[reason] ?? reason}
              {substituteLineId === null ? null : (
                <span className="block soft">{words.instead(foodOf(substituteLineId))}</span>
              )}
            </>,
          ],
        }))}
      />
    </section>
  );
}
