import { parseMoney, spellCode } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { inside, type OfferWish } from './queries.ts';
import { useOfferText } from './words.ts';

const DAY_MS = 86_400_000;
const PRICES = ['gift', 'cost', 'named'] as const;
type PriceKind = (typeof PRICES)[number];

type Whole = {
  readonly id: string;
  readonly code: string;
  readonly grams: number;
  readonly packedOn: string;
};
type Props = {
  readonly of: OfferWish['of'];
  readonly food: { readonly nameEn: string; readonly nameEs: string };
  /** The one that is ticked at first. */
  readonly first: string;
  /** All that is shut and full of this food. */
  readonly whole: readonly Whole[];
  /** Beneath the title of a page that has more. */
  readonly isPart?: boolean;
};

/** Which containers of one food are offered, for what, and until when; a household’s own, or common stock. */
export function OfferForm({ of, food, first, whole, isPart = false }: Props) {
  const words = useOfferText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const {
    draft: { chosen, price, amount, days, hours, goesToPantry, note },
    change,
    forget,
  } = useDraft(
    `offer.${first}`,
    {
      chosen: (whole.some(({ id }) => id === first) ? [first] : []) as readonly string[],
      price: 'gift' as PriceKind,
      amount: '',
      days: '14',
      hours: '48',
      goesToPantry: false,
      note: '',
    },
    { rows: { chosen: '' } },
  );
  const [isAsked, setIsAsked] = useState(false);
  const money = parseMoney(amount, format.currency);
  const minorUnitsEach = 'minorUnits' in money && money.minorUnits > 0 ? money.minorUnits : null;
  const isWrong = chosen.length === 0 || (price === 'named' && minorUnitsEach === null);
  const offering = useMutation({
    mutationFn: (json: OfferWish) =>
      askOnce(`offer.${first}`, json, (header) =>
        inside.offers.$post({ param: { storehouse }, json }, { headers: header }),
      ),
    onSuccess: async (made) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['offers'] });
      await navigate({ to: '/s/$storehouse/offers/$offer', params: { storehouse, offer: made.id } });
    },
  });
  const problems = problemsOf(offering.error);
  const Title = isPart ? 'h2' : 'h1';
  const send = () =>
    offering.mutate({
      ...{ of, containerIds: [...chosen], goesToPantry, note },
      price: price === 'named' ? { kind: 'named', minorUnitsEach: minorUnitsEach ?? 0 } : { kind: price },
      closesAt: new Date(Date.now() + Number(days) * DAY_MS).toISOString(),
      windowHours: Number(hours),
    });
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (!isWrong) send();
      }}
    >
      <Title>{words.offerTitle(foodNameOf({ food }, format.language))}</Title>
      <p>{words.opening}</p>
      <fieldset>
        <legend>{words.which}</legend>
        {whole.map(({ id, code, grams, packedOn }) => (
          <Check
            key={id}
            label={
              <>
                <span className="code">{spellCode(code)}</span> {format.mass(grams)} ·{' '}
                {words.packed(format.day(packedOn))}
              </>
            }
            isOn={chosen.includes(id)}
            onChange={(isOn) =>
              change({ chosen: isOn ? [...chosen, id] : chosen.filter((other) => other !== id) })
            }
          />
        ))}
      </fieldset>
      {isAsked && chosen.length === 0 ? (
        <p className="problem" role="alert">
          {words.pick}
        </p>
      ) : null}
      <div className="pair">
        <Choice
          label={words.price}
          value={price}
          options={PRICES.map((value) => ({ value, name: words.prices[value] }))}
          onChange={(value) => change({ price: value as PriceKind })}
          problem={problems.price}
        />
        {price === 'named' ? (
          <Field
            label={words.each(format.currency)}
            inputMode="decimal"
            value={amount}
            onChange={(event) => change({ amount: event.target.value })}
            problem={isAsked && minorUnitsEach === null ? words.moneyProblem : undefined}
          />
        ) : null}
      </div>
      <div className="pair">
        <Choice
          label={words.closes}
          value={days}
          options={Object.entries(words.days).map(([value, name]) => ({ value, name }))}
          onChange={(days) => change({ days })}
          problem={problems.closesAt}
        />
        <Choice
          label={words.turns}
          value={hours}
          options={Object.entries(words.hours).map(([value, name]) => ({ value, name }))}
          onChange={(hours) => change({ hours })}
        />
      </div>
      <Check
        label={words.thenPantry}
        isOn={goesToPantry}
        onChange={(goesToPantry) => change({ goesToPantry })}
      />
      <Field label={words.note} value={note} onChange={(event) => change({ note: event.target.value })} />
      <p>{words.stays}</p>
      {problems.price || problems.closesAt ? null : <ProblemSaid error={offering.error} />}
      <button type="submit" className="btn go" disabled={offering.isPending}>
        {words.offer}
      </button>
    </Form>
  );
}
