import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { WishPlan } from './queries.ts';
import { useWishText } from './words.ts';

/** The wishes as containers: whole ones, what stands in each, what they cost, and what fills none. */
export function Comes({ planned }: { planned: WishPlan }) {
  const words = useWishText();
  const { format } = useHouse();
  const { plan, wishes } = planned;
  const nameOf = (kindId: string) => {
    const kind = wishes.find((wish) => wish.kind.id === kindId)?.kind;
    return nameIn(format.language, kind);
  };
  if (plan === null) return <p>{words.noBulk}</p>;
  if (wishes.length === 0) return <p>{words.noWishes}</p>;
  return (
    <section className="stack">
      <h2>{words.comesTo}</h2>
      <Ledger
        caption={words.comesTo}
        columns={[
          { name: words.columns.kind },
          { name: words.columns.count, isNumber: true },
          { name: words.columns.each, isNumber: true },
          { name: words.columns.together, isNumber: true },
          { name: `${words.columns.cost} (${format.currency})`, isNumber: true },
        ]}
        rows={plan.containers.map((row, at) => ({
          key: `${at} ${row.kindId}`,
          cells: [
            nameOf(row.kindId),
            format.count(row.count),
            format.mass(row.gramsEach),
            format.mass(row.grams),
            row.costMinorUnits === null ? words.costUnknown : format.money(row.costMinorUnits),
          ],
        }))}
      />
      <p>
        {plan.remainderGrams === 0 ? words.noRemainder : words.remainder(format.mass(plan.remainderGrams))}
      </p>
      <p className="soft">{words.level}</p>
    </section>
  );
}
