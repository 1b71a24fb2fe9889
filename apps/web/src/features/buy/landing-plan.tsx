import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage } from './buy-body.ts';
import { fieldWordsOf } from './field-words.ts';
import { useRunText } from './words.ts';

const landingPlan = api.storehouses[':storehouse'].buys[':buy']['landing-plan'];

/** Moves the day or the place at which a fixed or ordered buy lands; left empty, it is open again. Whoever pledged is told. */
export function LandingPlan({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { day, landingPlace },
    change,
    forget,
  } = useDraft(
    `landing-plan.${buy.id}`,
    { day: buy.landingOn ?? '', landingPlace: buy.landingPlace },
    { version: buy.version },
  );
  const param = { storehouse, buy: buy.id };
  const landingOn = day === '' ? null : day;
  const moving = useMutation({
    mutationFn: () =>
      ask(landingPlan.$put({ param, json: { landingOn, landingPlace, version: buy.version } })),
    onSuccess: async () => {
      forget();
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
    },
  });
  const isUnchanged = landingOn === buy.landingOn && landingPlace.trim() === buy.landingPlace;
  const { hasFields, wordsOf } = fieldWordsOf(moving.error);
  return (
    <details>
      <summary>{words.moveLanding}</summary>
      <Form onSend={() => moving.mutate()}>
        <p className="soft">
          {buy.landingOn === null ? words.landingOpen : words.landsOn(format.day(buy.landingOn))}
          {buy.landingPlace === '' ? null : ` ${words.landsAt(buy.landingPlace)}`}
        </p>
        <Field
          label={words.landsOnNew}
          hint={words.landsOnHint}
          type="date"
          value={day}
          onChange={(event) => {
            moving.reset();
            change({ day: event.target.value });
          }}
          problem={wordsOf('landingOn')}
        />
        <Field
          label={words.landsAtNew}
          hint={words.landsAtHint}
          value={landingPlace}
          onChange={(event) => {
            moving.reset();
            change({ landingPlace: event.target.value });
          }}
          problem={wordsOf('landingPlace')}
        />
        {moving.error && !hasFields ? <ProblemSaid error={moving.error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={moving.isPending || isUnchanged}>
            {words.moveLandingNow}
          </button>
        </div>
        {moving.isSuccess ? (
          <p className="said well-said" role="status">
            {words.landingMoved}
          </p>
        ) : null}
      </Form>
    </details>
  );
}
