import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type ItemUse, yearOfUseQuery } from './queries.ts';
import { sortUse, USE_ORDERS, type UseOrder } from './sort-use.ts';
import { useEquipmentText } from './words.ts';

/** What each thing came to in a year: how much it was used, how often late, what a use cost, and who went without. */
export function UsePage() {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const [order, setOrder] = useState<UseOrder>('name');
  const say = useUseWords();
  // What it is sorted by stands first, so that a phone shows it without moving the table.
  const columns = [
    { of: 'used', name: words.use.used, say: say.used },
    { of: 'late', name: words.use.late, say: say.lateOf },
    { of: 'cost', name: words.use.cost(format.currency), say: say.cost },
    { of: 'without', name: words.use.without, say: say.without },
  ].toSorted((a, b) => Number(b.of === order) - Number(a.of === order));
  useTitle(words.use.title);
  const reading = useQuery(yearOfUseQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/equipment/desk" params={{ storehouse }}>
        <BackIcon />
        {words.desk}
      </Link>
      <Loaded isPage reading={reading}>
        {({ fromOn, toOn, items }) => (
          <>
            <h1>{words.use.title}</h1>
            <p>{words.use.days(format.day(fromOn), format.day(toOn))}</p>
            <Choice
              label={words.use.order}
              value={order}
              options={USE_ORDERS.map((value) => ({ value, name: words.use.orders[value] }))}
              onChange={(value) => setOrder(value as UseOrder)}
            />
            <Ledger
              caption={words.use.title}
              columns={[
                { name: words.use.orders.name },
                ...columns.map(({ name }) => ({ name, isNumber: true })),
              ]}
              rows={sortUse(items, order).map((item) => ({
                key: item.itemId,
                cells: [item.itemName, ...columns.map(({ say }) => say(item))],
              }))}
            />
            <p className="soft">{words.use.meant}</p>
          </>
        )}
      </Loaded>
    </>
  );
}

/** The same figures on the keeper's page of one thing. */
export function UseOfItem({ item }: { item: string }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const say = useUseWords();
  return (
    <section className="stack">
      <h2>{words.use.title}</h2>
      <Loaded reading={useQuery(yearOfUseQuery({ storehouse }))}>
        {({ items, fromOn, toOn }) => {
          const own = items.find(({ itemId }) => itemId === item);
          if (!own) return null;
          return (
            <>
              <p className="soft">{words.use.days(format.day(fromOn), format.day(toOn))}</p>
              <Figures
                rows={[
                  { name: words.use.used, value: say.used(own) },
                  { name: words.use.late, value: say.late(own) },
                  { name: words.use.cost(format.currency), value: say.cost(own) },
                  { name: words.use.without, value: say.without(own) },
                ]}
              />
              <p className="soft">{words.use.meant}</p>
            </>
          );
        }}
      </Loaded>
    </section>
  );
}

function useUseWords() {
  const words = useEquipmentText();
  const { format } = useHouse();
  const percent = (tenths: number | null, none: string) =>
    tenths === null ? none : `${(tenths / 10).toFixed(1)} %`;
  return {
    used: ({ usedTenthsPercent }: ItemUse) => percent(usedTenthsPercent, words.use.notThere),
    lateOf: ({ lateLoans, dueLoans }: ItemUse) =>
      dueLoans === 0 ? words.use.noLoan : words.use.of(lateLoans, dueLoans),
    late: ({ lateTenthsPercent, lateLoans, dueLoans }: ItemUse) =>
      lateTenthsPercent === null
        ? words.use.noLoan
        : `${percent(lateTenthsPercent, '')} (${words.use.of(lateLoans, dueLoans)})`,
    cost: ({ costPerUseMinorUnits }: ItemUse) =>
      costPerUseMinorUnits === null ? words.use.noUse : format.money(costPerUseMinorUnits),
    without: ({ waited }: ItemUse) =>
      words.use.of(waited.without, waited.without + waited.served + waited.waiting),
  };
}
