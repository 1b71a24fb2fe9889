import { parseMass } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { type Kind, kindsQuery } from '../shelf/queries.ts';
import { Comes } from './comes.tsx';
import { type OfLine, type WishPlan, wishesOf, wishesQuery } from './queries.ts';
import { useWishText } from './words.ts';

/** What a household wants its share of a food in: so much in cans, the rest in pails. */
export function ContainerWishes() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/lines/$line/containers' });
  const plan = useQuery(wishesQuery(param));
  const kinds = useQuery(kindsQuery(param));
  return (
    <Loaded isPage reading={joined(plan, kinds)}>
      {([planned, { containerKinds }]) => <Sheet param={param} planned={planned} kinds={containerKinds} />}
    </Loaded>
  );
}

function Sheet({ param, planned, kinds }: { param: OfLine; planned: WishPlan; kinds: readonly Kind[] }) {
  const words = useWishText();
  const { format } = useHouse();
  const food = nameIn(format.language, planned.food);
  useTitle(words.title(food));
  return (
    <>
      <Link className="who" to="/s/$storehouse/buys/$buy/lines/$line" params={param}>
        <BackIcon />
        {food}
      </Link>
      <h1>
        {planned.shareGrams === 0
          ? words.none(food)
          : words.stands(food, format.mass(planned.shareGrams), words.bases[planned.basis] ?? '')}
      </h1>
      <div className="cols">
        <WishForm param={param} planned={planned} kinds={kinds} />
        <Comes planned={planned} />
      </div>
    </>
  );
}

type Typed = { readonly key: number; readonly kind: string; readonly mass: string };

function WishForm({ param, planned, kinds }: { param: OfLine; planned: WishPlan; kinds: readonly Kind[] }) {
  const words = useWishText();
  const { format } = useHouse();
  const queries = useQueryClient();
  const [isAsked, setIsAsked] = useState(false);
  const {
    draft: { typed },
    change: keep,
    forget,
  } = useDraft(
    `container-wish.${param.line}`,
    {
      typed: planned.wishes.map(({ kind, grams }, key) => ({
        key,
        kind: kind.id,
        mass: grams === null ? '' : format.mass(grams),
      })) as readonly Typed[],
    },
    { version: JSON.stringify(planned.wishes), rows: { typed: { key: 0, kind: '', mass: '' } } },
  );
  const wishes = typed.map(({ kind, mass }, at) => ({
    containerKindId: kind,
    grams: wishedGrams(mass, { known: planned.wishes[at]?.grams, shown: format.mass, unit: format.massUnit }),
  }));
  const isWrong = (at: number) => {
    const grams = wishes[at]?.grams;
    return grams === undefined || (grams === null && at < wishes.length - 1);
  };
  const keeping = useMutation({
    mutationFn: () =>
      ask(
        wishesOf.$put({
          param,
          json: { wishes: wishes.map((wish) => ({ ...wish, grams: wish.grams ?? null })) },
        }),
      ),
    onSuccess: (kept) => {
      forget();
      return queries.setQueryData(wishesQuery(param).queryKey, kept);
    },
  });
  const change = (key: number, part: Partial<Typed>) =>
    keep({ typed: typed.map((row) => (row.key === key ? { ...row, ...part } : row)) });
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (!wishes.some((_, at) => isWrong(at))) keeping.mutate();
      }}
    >
      <h2>{words.wishes}</h2>
      <p>{words.wishesWords}</p>
      {typed.map((row, at) => (
        <div key={row.key} className="stack">
          <div className="pair roomy">
            <Choice
              label={words.kind(at + 1)}
              value={row.kind}
              options={kinds.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
              onChange={(kind) => change(row.key, { kind })}
            />
            <Field
              label={words.mass(at + 1)}
              {...(at === typed.length - 1 ? { hint: words.rest } : {})}
              inputMode="decimal"
              value={row.mass}
              onChange={(event) => change(row.key, { mass: event.target.value })}
              problem={isAsked && isWrong(at) ? words.massProblem : undefined}
            />
          </div>
          <button
            type="button"
            className="btn quiet"
            onClick={() => keep({ typed: typed.filter(({ key }) => key !== row.key) })}
          >
            {words.drop(at + 1)}
          </button>
        </div>
      ))}
      <ProblemSaid error={keeping.error} />
      <div className="actions">
        <button
          type="button"
          className="btn"
          onClick={() =>
            keep({
              typed: [
                ...typed,
                { key: 1 + Math.max(-1, ...typed.map(({ key }) => key)), kind: kinds[0]?.id ?? '', mass: '' },
              ],
            })
          }
        >
          {words.add}
        </button>
        <button type="submit" className="btn go" disabled={keeping.isPending}>
          {words.keep}
        </button>
      </div>
    </Form>
  );
}

type Shown = { known: number | null | undefined; shown: (grams: number) => string; unit: 'lb' | 'kg' };

/** Nothing typed is the rest; text that was not touched means every gram of what stood there. */
function wishedGrams(text: string, { known, shown, unit }: Shown): number | null | undefined {
  if (text.trim() === '') return null;
  if (typeof known === 'number' && text === shown(known)) return known;
  const mass = parseMass(text, { defaultUnit: unit });
  return 'problem' in mass ? undefined : mass.grams;
}
