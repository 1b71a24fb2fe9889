import { parseMoney } from '@sheafbook/units';
import { useMutation, useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { buysQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useCoverageText } from '../home/words.ts';
import { type Gap, useGapSaid } from './gap-said.ts';
import { useFoodNames } from './other-stock.tsx';

const gaps = api.storehouses[':storehouse'].coverage.gap;
type Buy = { readonly id: string; readonly name: string };

/** The cheapest way to the target in a buy that gathers, within what the household wants to spend. */
export function Way({ targetDays, lastsDays }: { targetDays: number; lastsDays: number | null }) {
  const words = useCoverageText();
  const { storehouse } = useHouse();
  const buys = useQuery(buysQuery({ storehouse }));
  return (
    <NextStep title={words.wayTitle}>
      <p>
        {words.wayIntro(targetDays)} {lastsDays === null || lastsDays >= targetDays ? words.wayReached : null}
      </p>
      <Loaded reading={buys}>
        {({ buys: all }) => {
          const open = all.filter(({ stage }) => stage === 'gathering');
          return open.length === 0 ? (
            <p>{words.wayNoBuy}</p>
          ) : (
            <WayForm buys={open} targetDays={targetDays} />
          );
        }}
      </Loaded>
    </NextStep>
  );
}

function WayForm({ buys, targetDays }: { buys: readonly Buy[]; targetDays: number }) {
  const t = useText();
  const words = useCoverageText();
  const { storehouse, format } = useHouse();
  const { draft, change } = useDraft('way', { buy: buys[0]?.id ?? '', budget: '', days: '' });
  const buy = buys.find(({ id }) => id === draft.buy)?.id ?? buys[0]?.id ?? '';
  const [isAsked, setIsAsked] = useState(false);
  const budget = parseMoney(draft.budget, format.currency);
  const isBudget = 'minorUnits' in budget;
  const finding = useMutation({
    mutationFn: (budgetMinorUnits: number) => {
      const days = draft.days.trim();
      const query = {
        buy,
        budgetMinorUnits: String(budgetMinorUnits),
        ...(days === '' ? {} : { targetDays: days }),
      };
      return ask(gaps.$get({ param: { storehouse }, query }));
    },
  });
  const problems = problemsOf(finding.error);
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (isBudget) finding.mutate(budget.minorUnits);
      }}
    >
      {buys.length === 1 ? null : (
        <Choice
          label={words.wayBuy}
          value={buy}
          options={buys.map(({ id, name }) => ({ value: id, name }))}
          onChange={(buy) => change({ buy })}
        />
      )}
      <div className="pair">
        <Field
          label={`${words.wayBudget} (${format.currency})`}
          inputMode="decimal"
          value={draft.budget}
          onChange={(event) => change({ budget: event.target.value })}
          problem={isAsked && !isBudget ? words.budgetProblem : problems.budgetMinorUnits}
        />
        <Field
          label={words.wayDays}
          inputMode="numeric"
          placeholder={String(targetDays)}
          value={draft.days}
          onChange={(event) => change({ days: event.target.value })}
          problem={problems.targetDays && t.daysProblem}
        />
      </div>
      <button type="submit" className="btn go" disabled={finding.isPending}>
        {words.wayFind}
      </button>
      <div role="status">{finding.isPending ? words.wayFinding : null}</div>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={finding.error} />}
      {finding.data ? <Found gap={finding.data} buy={buy} /> : null}
    </Form>
  );
}

function Found({ gap, buy }: { gap: Gap; buy: string }) {
  const t = useText();
  const words = useCoverageText();
  const { storehouse, format } = useHouse();
  const nameOf = useFoodNames();
  const said = useGapSaid();
  return (
    <div className="stack" aria-live="polite">
      <p>
        <b>{said(gap)}</b>
      </p>
      {gap.pledges.length === 0 ? null : (
        <Ledger
          caption={words.wayTitle}
          columns={[
            { name: t.food },
            { name: t.mass, isNumber: true },
            { name: format.currency, isNumber: true },
            { name: words.wayPledge },
          ]}
          rows={[
            ...gap.pledges.map((pledge) => ({
              key: pledge.buyLineId,
              cells: [
                nameOf(pledge.foodCode),
                format.mass(pledge.grams),
                format.money(pledge.minorUnits),
                <Link
                  key="pledge"
                  className="btn quiet"
                  to="/s/$storehouse/buys/$buy/lines/$line"
                  params={{ storehouse, buy, line: pledge.buyLineId }}
                >
                  {words.wayPledge}
                </Link>,
              ],
            })),
            {
              key: 'sum',
              isSum: true,
              cells: [
                t.together,
                format.mass(gap.pledges.reduce((sum, { grams }) => sum + grams, 0)),
                format.money(gap.minorUnits),
                '',
              ],
            },
          ]}
        />
      )}
      {gap.leftOut.length === 0 ? null : (
        <p>{words.wayLeftOut(gap.leftOut.map(({ foodCode }) => nameOf(foodCode)))}</p>
      )}
      <p className="soft">{words.wayBasis}</p>
    </div>
  );
}
