import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { storehouseQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { FactsFields } from './facts-fields.tsx';
import { fieldWordsOf } from './field-words.ts';
import { FoodFinder } from './food-finder.tsx';
import { type GroupRules, type LineDraft, LineFields, lineTermsOf } from './line-fields.tsx';
import { type FactsDraft, factsOf, NO_FACTS } from './plan-facts.ts';
import { RulesInForce } from './rules-form.tsx';
import { usePlanText } from './words.ts';
import './run.css';

type NewLine = LineDraft & { readonly foodId: string; readonly nameEn: string; readonly nameEs: string };
type NewBuy = FactsDraft & { readonly lines: readonly NewLine[] };

/** Plans a buy: its name, its days, its place and its foods. */
export function PlanBuy() {
  const t = useText();
  const words = usePlanText();
  const { storehouse } = useHouse();
  const here = useQuery(storehouseQuery({ storehouse }));
  useTitle(words.planIt);
  return (
    <>
      <div className="row place">
        <Link className="who" to="/s/$storehouse/buys" params={{ storehouse }}>
          <BackIcon />
          {t.buys}
        </Link>
      </div>
      <h1>{words.newTitle}</h1>
      <Loaded reading={here}>{({ rules }) => <NewBuyForm rules={rules} />}</Loaded>
    </>
  );
}

function NewBuyForm({ rules }: { rules: GroupRules }) {
  const words = usePlanText();
  const { storehouse, massDisplay, format } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [isTried, setIsTried] = useState(false);
  const { draft, change, forget } = useDraft<NewBuy>('plan.new', { ...NO_FACTS, lines: [] });
  const terms = draft.lines.map((line) => lineTermsOf(line));
  const planning = useMutation({
    mutationFn: (facts: NonNullable<ReturnType<typeof factsOf>>) => {
      const lines = draft.lines.flatMap(({ foodId, massUnit }, at) => {
        const line = terms[at];
        return line ? [{ foodId, massUnit, ...line }] : [];
      });
      return ask(
        api.storehouses[':storehouse'].buys.$post({ param: { storehouse }, json: { ...facts, lines } }),
      );
    },
    onSuccess: async ({ id }) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['buys'] });
      await queries.invalidateQueries({ queryKey: ['next-steps'] });
      await navigate({ to: '/s/$storehouse/buys/$buy/run', params: { storehouse, buy: id } });
    },
  });
  const { hasFields, wordsOf } = fieldWordsOf(planning.error);
  const edit = (part: Partial<NewBuy>) => {
    planning.reset();
    change(part);
  };
  const changeLine = (foodId: string, part: Partial<LineDraft>) =>
    edit({ lines: draft.lines.map((line) => (line.foodId === foodId ? { ...line, ...part } : line)) });
  return (
    <form
      className="cols"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setIsTried(true);
        const facts = factsOf(draft, format.timeZone);
        if (facts && terms.every(Boolean)) planning.mutate(facts);
      }}
    >
      <div className="stack">
        <section className="stack">
          <h2>{words.facts}</h2>
          <FactsFields draft={draft} change={edit} wordsOf={wordsOf} isTried={isTried} />
        </section>
        <section className="stack">
          <h2>{words.foods}</h2>
          {draft.lines.length === 0 ? <p>{words.noFoods}</p> : null}
          <ul className="rows-of-form">
            {draft.lines.map((line, at) => {
              const food = nameIn(format.language, line);
              return (
                <li key={line.foodId} className="stack">
                  <h3>{food}</h3>
                  <LineFields
                    draft={line}
                    change={(part) => changeLine(line.foodId, part)}
                    rules={rules}
                    isUnitOpen
                    problem={wordsOf(`lines.${at}.foodId`) ?? wordsOf(`lines.${at}.stepUnits`)}
                  />
                  <div>
                    <button
                      type="button"
                      className="btn quiet"
                      onClick={() =>
                        edit({ lines: draft.lines.filter(({ foodId }) => foodId !== line.foodId) })
                      }
                    >
                      {words.removeFood(food)}
                    </button>
                  </div>
                </li>
              );
            })}
          </ul>
          <FoodFinder
            taken={draft.lines.map(({ foodId }) => foodId)}
            onFound={({ id: foodId, nameEn, nameEs }) =>
              edit({
                lines: [
                  ...draft.lines,
                  { foodId, nameEn, nameEs, massUnit: massDisplay, step: '5', splitRule: '', cap: '' },
                ],
              })
            }
          />
        </section>
      </div>
      <div className="stack">
        <NextStep title={words.planIt}>
          <p>{words.newWords}</p>
          {planning.error && !hasFields ? <ProblemSaid error={planning.error} /> : null}
          <div className="actions">
            <button type="submit" className="btn go" disabled={planning.isPending}>
              {words.planIt}
            </button>
          </div>
        </NextStep>
        <RulesInForce />
      </div>
    </form>
  );
}
