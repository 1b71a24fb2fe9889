import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { BuyPage } from './buy-body.ts';
import { fieldWordsOf } from './field-words.ts';
import { useRunText } from './words.ts';

const landingDay = api.storehouses[':storehouse'].buys[':buy']['landing-day'];

/** Moves the day on which a fixed or ordered buy lands; left empty, it is open again. Whoever pledged is told. */
export function LandingDay({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [typed, setTyped] = useState(buy.landingOn ?? '');
  const param = { storehouse, buy: buy.id };
  const landingOn = typed === '' ? null : typed;
  const moving = useMutation({
    mutationFn: () => ask(landingDay.$put({ param, json: { landingOn, version: buy.version } })),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
    },
  });
  const { hasFields, wordsOf } = fieldWordsOf(moving.error);
  return (
    <details>
      <summary>{words.moveLanding}</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          moving.mutate();
        }}
      >
        <p className="soft">
          {buy.landingOn === null ? words.landingOpen : words.landsOn(format.day(buy.landingOn))}
        </p>
        <Field
          label={words.landsOnNew}
          hint={words.landsOnHint}
          type="date"
          value={typed}
          onChange={(event) => {
            moving.reset();
            setTyped(event.target.value);
          }}
          problem={wordsOf('landingOn')}
        />
        {moving.error && !hasFields ? <ProblemSaid error={moving.error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={moving.isPending || landingOn === buy.landingOn}>
            {words.moveLandingNow}
          </button>
        </div>
        {moving.isSuccess ? (
          <p className="said well-said" role="status">
            {words.landingMoved}
          </p>
        ) : null}
      </form>
    </details>
  );
}
