import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, askOnce } from '../../api/client.ts';
import { problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage } from './buy-body.ts';
import { LongField } from './long-field.tsx';
import type { Next } from './run-queries.ts';
import { MissingList } from './run-step.tsx';
import { useOrderText } from './words.ts';

const agreements = api.storehouses[':storehouse'].buys[':buy']['order-consents'];
type Consent = { readonly duty: string; readonly personId: string; readonly agreedAt: string };

type AgreeProps = {
  buy: BuyPage;
  next: Next;
  consents: readonly Consent[];
  nameOf: (personId: string) => string;
  totalMinorUnits: number;
  suppliers: number;
};

/** The two agreements, and the one that this person can give. */
export function Agree({ buy, next, consents, nameOf, totalMinorUnits, suppliers }: AgreeProps) {
  const words = useOrderText();
  const { storehouse, personId, duties, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { note },
    change,
    reset,
  } = useDraft(`agree.${buy.id}`, { note: '' });
  const param = { storehouse, buy: buy.id };
  const given = (duty: string) => consents.find((consent) => consent.duty === duty);
  const duty = (['coordinator', 'treasurer'] as const).find((one) => duties.includes(one) && !given(one));
  const hasAgreed = consents.some((consent) => consent.personId === personId);
  const isLast = consents.length === 1;
  // The agreement itself is what the last one still lacks; everything else must be there first.
  const others = next.missing.filter(({ code }) => code !== 'second-login-missing');
  const agreeing = useMutation({
    mutationFn: async () => {
      const json = { ...(duty ? { duty } : {}), note };
      return await askOnce(`agree.${buy.id}.${duty ?? ''}`, json, (headers) =>
        agreements.$post({ param, json }, { headers }),
      );
    },
    onSuccess: () => reset(),
    onSettled: async () => {
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
      await queries.invalidateQueries({ queryKey: ['next-steps'] });
    },
  });
  const names = { coordinator: words.asCoordinator, treasurer: words.asTreasurer };
  const problems = problemsOf(agreeing.error);
  const state = (one: 'coordinator' | 'treasurer') => {
    const consent = given(one);
    return (
      <li>
        <span>{names[one]}</span>
        {consent ? (
          <State
            kind="well"
            word={words.agreedBy(nameOf(consent.personId), format.instant(consent.agreedAt))}
          />
        ) : (
          <State kind="watch" word={words.notYet} />
        )}
      </li>
    );
  };
  return (
    <>
      <NextStep title={duty && !hasAgreed ? words.agreeTitle(isLast) : words.agreements}>
        <ul className="agreements" aria-label={words.agreements}>
          {state('coordinator')}
          {state('treasurer')}
        </ul>
        <MissingList missing={others} />
        {hasAgreed ? <p>{words.alreadyAgreed}</p> : null}
        {duty && !hasAgreed ? (
          <>
            <p>{isLast ? words.agreeLast(format.money(totalMinorUnits), suppliers) : words.agreeFirst}</p>
            {isLast ? (
              <LongField
                label={words.note}
                hint={words.noteHint}
                value={note}
                onChange={(note) => change({ note })}
                problem={problems.note}
              />
            ) : null}
            <div className="actions">
              <button
                type="button"
                className="btn go"
                disabled={agreeing.isPending}
                onClick={() => agreeing.mutate()}
              >
                {words.agreeAs(names[duty])}
              </button>
            </div>
          </>
        ) : null}
        {agreeing.error && Object.keys(problems).length === 0 ? <ProblemSaid error={agreeing.error} /> : null}
      </NextStep>
      <p className="soft">{words.agreementsWords}</p>
    </>
  );
}
