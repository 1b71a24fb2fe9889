import { useTaste, useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { HouseholdStatement } from './statement-body.ts';
import { useStatementText } from './words.ts';

/** What one buy's charge is made of: food by food with its grams, then freight, then the rest. */
export function BuyParts({ buy }: { buy: HouseholdStatement['buys'][number] }) {
  const t = useText();
  const words = useStatementText();
  const { language } = useTaste();
  const { format } = useHouse();
  const title = words.madeOf(buy.buy, format.money(buy.totalMinorUnits));
  const foods = buy.foods.map((food) => ({
    key: food.buyLineId,
    cells: [
      food.food === null ? '' : food.food[language],
      words.grams(format.count(food.awardGrams)),
      format.mass(food.awardGrams),
      format.money(food.goodsMinorUnits),
    ],
  }));
  const rest = [
    { key: 'freight', name: words.freight, minorUnits: buy.freightMinorUnits },
    { key: 'other', name: words.otherCosts, minorUnits: buy.otherMinorUnits },
  ].filter(({ minorUnits }) => minorUnits !== 0);
  return (
    <section className="stack">
      <h2>{title}</h2>
      <Ledger
        caption={title}
        columns={[
          { name: t.food },
          { name: words.got, isNumber: true },
          { name: words.about, isNumber: true },
          { name: words.charge, isNumber: true },
        ]}
        rows={[
          ...foods,
          ...rest.map(({ key, name, minorUnits }) => ({
            key,
            cells: [name, '', '', format.money(minorUnits)],
          })),
          { key: 'sum', isSum: true, cells: [t.together, '', '', format.money(buy.totalMinorUnits)] },
        ]}
      />
    </section>
  );
}
