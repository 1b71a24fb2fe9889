import { adultEquivalents, GUIDELINE } from '@sheafbook/coverage';
import { formatDecimal, multiplyFractions, roundFraction } from '@sheafbook/units';
import { useTaste, useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';

type Eater = { birthOn: string; presentPercent: number };

/** What a year of food for these eaters weighs: the same sum that coverage makes, done here at once. */
export function YearOfFood({ eaters }: { eaters: readonly Eater[] }) {
  const t = useText();
  const { language } = useTaste();
  const { format } = useHouse();
  if (eaters.length === 0) return null;
  const adults = adultEquivalents(eaters, format.today());
  const rows = GUIDELINE.map(({ group, gramsPerAdultYear }) => ({
    group,
    grams: Number(roundFraction(multiplyFractions(gramsPerAdultYear, adults))),
  }));
  const grams = rows.reduce((sum, row) => sum + row.grams, 0);
  return (
    <section className="stack" aria-live="polite">
      <h2>{t.yearWeighs(format.mass(grams))}</h2>
      <Ledger
        caption={t.yearWeighs(format.mass(grams))}
        columns={[{ name: t.foodGroup }, { name: t.aYear, isNumber: true }]}
        rows={[
          ...rows.map((row) => ({
            key: row.group,
            cells: [t.groups[row.group] ?? row.group, format.mass(row.grams)],
          })),
          { key: 'sum', isSum: true, cells: [t.together, format.mass(grams)] },
        ]}
      />
      <p className="soft">{t.yearSource(formatDecimal(adults, 1, language))}</p>
    </section>
  );
}
