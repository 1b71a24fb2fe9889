import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { shownPart } from '../../ui/parts-typed.ts';
import { Figures, Ledger, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { FoodForm } from './food-form.tsx';
import { mayEditFoods } from './may-edit.ts';
import { type Food, foodQuery, foodsOf } from './queries.ts';
import { sayAllergens } from './say-food.ts';
import { useFoodText } from './words.ts';

/** One food: what is in it, how it keeps, and where each figure comes from. */
export function FoodSheet() {
  const words = useFoodText();
  const { food } = useParams({ from: '/s/$storehouse/foods/$food' });
  const { storehouse } = useHouse();
  const reading = useQuery(foodQuery({ storehouse, food }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/foods" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={reading}>
        {(found) => <Sheet key={found.version} food={found} />}
      </Loaded>
    </>
  );
}

function Sheet({ food }: { food: Food }) {
  const t = useText();
  const words = useFoodText();
  const { duties, format } = useHouse();
  const [name, other] = format.language === 'es' ? [food.nameEs, food.nameEn] : [food.nameEn, food.nameEs];
  useTitle(name);
  const energy = food.kilocaloriesPer100Grams;
  return (
    <>
      <h1>{words.sheetTitle(name, sayAllergens(t, words, food))}</h1>
      <p className="soft">{words.alsoCalled(other, food.foodCode)}</p>
      {food.isRetired ? (
        <p>
          <State kind="watch" word={words.retired} />
        </p>
      ) : null}
      <Figures
        rows={[
          { name: t.foodGroup, value: t.groups[food.foodGroup] ?? food.foodGroup },
          {
            name: words.energyName,
            value: energy === null ? words.unknown : format.count(energy),
            unit: 'kcal',
          },
          { name: words.keepsAs, value: words.keepingClasses[food.keepingClass ?? ''] ?? words.unknown },
        ]}
      />
      <Composition food={food} />
      {food.needsMoistureTest ? <p>{words.moistureWords}</p> : null}
      <section>
        <h2>{words.sourceName}</h2>
        <p>
          {food.source}
          {food.isOwn ? '' : ` (${[food.sourceRelease, food.sourceNumber].filter(Boolean).join(', ')})`}
        </p>
        <p className="soft">{food.isOwn ? words.ownWords : words.publishedWords}</p>
      </section>
      {mayEditFoods(duties) ? <Changes food={food} /> : null}
    </>
  );
}

function Composition({ food }: { food: Food }) {
  const words = useFoodText();
  const rows = [
    { name: words.protein, value: shownPart(food.proteinMilligramsPer100Grams, 1000), unit: 'g' },
    { name: words.fat, value: shownPart(food.fatMilligramsPer100Grams, 1000), unit: 'g' },
    { name: words.carbohydrate, value: shownPart(food.carbohydrateMilligramsPer100Grams, 1000), unit: 'g' },
    { name: words.fibre, value: shownPart(food.fibreMilligramsPer100Grams, 1000), unit: 'g' },
    { name: words.bulk, value: shownPart(food.bulkMicrogramsPerMillilitre, 1_000_000), unit: 'g/mL' },
  ];
  return (
    <Ledger
      caption={words.composition}
      columns={[{ name: words.composition }, { name: words.amount, isNumber: true }]}
      rows={rows.map(({ name, value, unit }) => ({
        key: name,
        cells: [name, value === '' ? words.unknown : `${value} ${unit}`],
      }))}
    />
  );
}

/** The group's own foods change; a published one only comes off the lists. */
function Changes({ food }: { food: Food }) {
  const words = useFoodText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const refresh = () => queries.invalidateQueries({ queryKey: ['foods'] });
  const retiring = useMutation({
    mutationFn: () =>
      ask(
        foodsOf[':food'].retirement.$put({
          param: { storehouse, food: food.id },
          json: { version: food.version, isRetired: !food.isRetired },
        }),
      ),
    onSuccess: refresh,
  });
  return (
    <>
      {food.isOwn ? (
        <details>
          <summary>{words.changeIt}</summary>
          <FoodForm food={food} onSaved={refresh} />
        </details>
      ) : null}
      <ProblemSaid error={retiring.error} />
      <div className="actions">
        <button type="button" className="btn" disabled={retiring.isPending} onClick={() => retiring.mutate()}>
          {food.isRetired ? words.putBack : words.retire}
        </button>
      </div>
    </>
  );
}
