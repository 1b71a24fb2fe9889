import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { buyQuery, storehouseQuery } from '../../api/queries.ts';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyLineBody, BuyPage } from './buy-body.ts';
import { FactsFields } from './facts-fields.tsx';
import { fieldWordsOf } from './field-words.ts';
import { FoodFinder } from './food-finder.tsx';
import { foodNameOf } from './food-name.ts';
import { type GroupRules, type LineDraft, LineFields, lineTermsOf } from './line-fields.tsx';
import { type FactsDraft, factsDraftOf, factsOf } from './plan-facts.ts';
import { RulesInForce } from './rules-form.tsx';
import { usePlanText, useRunText } from './words.ts';
import './run.css';

const buys = api.storehouses[':storehouse'].buys[':buy'];

/** Changes name, days, place and foods of a buy that is not fixed yet. */
export function EditPlan() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/plan' });
  const buy = useQuery(buyQuery(param));
  const here = useQuery(storehouseQuery(param));
  return (
    <Loaded isPage reading={joined(buy, here)}>
      {([page, { rules }]) => <PlanSheet buy={page} rules={rules} />}
    </Loaded>
  );
}

function PlanSheet({ buy, rules }: { buy: BuyPage; rules: GroupRules }) {
  const words = usePlanText();
  const run = useRunText();
  const { storehouse } = useHouse();
  useTitle(words.editTitle(buy.name));
  const isPledged = buy.lines.some(({ pledged }) => pledged.isShown && pledged.households > 0);
  return (
    <>
      <div className="row place">
        <Link className="who" to="/s/$storehouse/buys/$buy/run" params={{ storehouse, buy: buy.id }}>
          <BackIcon />
          {run.runBuy}
        </Link>
      </div>
      <h1>{words.editTitle(buy.name)}</h1>
      <div className="cols">
        <Facts buy={buy} />
        <div className="stack">
          <section className="stack">
            <h2>{words.foods}</h2>
            {buy.lines.length === 0 ? <p>{words.noFoods}</p> : null}
            <ul className="rows-of-form">
              {buy.lines.map((line) => (
                <EditLine key={line.id} buy={buy} line={line} rules={rules} mayRemove={!isPledged} />
              ))}
            </ul>
            {isPledged ? <p className="soft">{words.pledgedAlready}</p> : <AddLine buy={buy} />}
          </section>
          <RulesInForce />
        </div>
      </div>
    </>
  );
}

/** Reads the buy and everything about it again after a change. */
function useRenewed(buy: string) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  return async () => {
    await queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy }] });
    await queries.invalidateQueries({ queryKey: ['buys'] });
  };
}

function Facts({ buy }: { buy: BuyPage }) {
  const words = usePlanText();
  const { storehouse, format } = useHouse();
  const [isTried, setIsTried] = useState(false);
  const renew = useRenewed(buy.id);
  const start = factsDraftOf(buy, format.timeZone);
  const { draft, change, forget } = useDraft<FactsDraft>(`plan.${buy.id}`, start, { version: buy.version });
  const saving = useMutation({
    mutationFn: (facts: NonNullable<ReturnType<typeof factsOf>>) =>
      ask(buys.$put({ param: { storehouse, buy: buy.id }, json: { ...facts, version: buy.version } })),
    onSuccess: async () => {
      forget();
      await renew();
    },
  });
  const { hasFields, wordsOf } = fieldWordsOf(saving.error);
  return (
    <Form
      onSend={() => {
        setIsTried(true);
        const facts = factsOf(draft, format.timeZone);
        if (facts) saving.mutate(facts);
      }}
    >
      <h2>{words.facts}</h2>
      <FactsFields
        draft={draft}
        change={(part) => {
          saving.reset();
          change(part);
        }}
        wordsOf={wordsOf}
        isTried={isTried}
      />
      {saving.error && !hasFields ? <ProblemSaid error={saving.error} /> : null}
      <div>
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {words.saveFacts}
        </button>
      </div>
      {saving.isSuccess ? (
        <p className="said well-said" role="status">
          {words.factsSaved}
        </p>
      ) : null}
    </Form>
  );
}

function AddLine({ buy }: { buy: BuyPage }) {
  const { storehouse, massDisplay } = useHouse();
  const renew = useRenewed(buy.id);
  const adding = useMutation({
    mutationFn: (foodId: string) =>
      ask(
        buys.lines.$post({
          param: { storehouse, buy: buy.id },
          json: { foodId, massUnit: massDisplay, stepUnits: 5 },
        }),
      ),
    onSuccess: renew,
  });
  return (
    <>
      <FoodFinder taken={buy.lines.map(({ food }) => food.id)} onFound={({ id }) => adding.mutate(id)} />
      {adding.error ? <ProblemSaid error={adding.error} /> : null}
    </>
  );
}

function EditLine(at: { buy: BuyPage; line: BuyLineBody; rules: GroupRules; mayRemove: boolean }) {
  const words = usePlanText();
  const { storehouse, format } = useHouse();
  const { buy, line, rules, mayRemove } = at;
  const renew = useRenewed(buy.id);
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const [draft, setDraft] = useState<LineDraft>({
    massUnit: unit,
    step: String(line.stepUnits),
    splitRule: line.splitRule ?? '',
    cap: line.commonCapGrams === null ? '' : format.massIn(line.commonCapGrams, unit),
  });
  const param = { storehouse, buy: buy.id, line: line.id };
  const terms = lineTermsOf(draft);
  const saving = useMutation({
    mutationFn: (wish: NonNullable<typeof terms>) =>
      ask(buys.lines[':line'].$put({ param, json: { version: line.version, ...wish } })),
    onSuccess: renew,
  });
  const removing = useMutation({
    mutationFn: () => ask(buys.lines[':line'].$delete({ param })),
    onSuccess: renew,
  });
  const { hasFields, wordsOf } = fieldWordsOf(saving.error);
  const error = removing.error ?? (hasFields ? null : saving.error);
  const food = foodNameOf(line, format.language);
  return (
    <li className="stack">
      <h3>{food}</h3>
      <LineFields
        draft={draft}
        change={(part) => {
          saving.reset();
          setDraft({ ...draft, ...part });
        }}
        rules={rules}
        isUnitOpen={false}
        problem={wordsOf('stepUnits')}
      />
      {error ? <ProblemSaid error={error} /> : null}
      <div className="actions">
        <button
          type="button"
          className="btn"
          disabled={!terms || saving.isPending}
          onClick={() => terms && saving.mutate(terms)}
        >
          {words.saveFood(food)}
        </button>
        {mayRemove ? (
          <button
            type="button"
            className="btn quiet"
            disabled={removing.isPending}
            onClick={() => removing.mutate()}
          >
            {words.removeFood(food)}
          </button>
        ) : null}
      </div>
      {saving.isSuccess ? (
        <p className="soft" role="status">
          {words.foodSaved}
        </p>
      ) : null}
    </li>
  );
}
