import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { RuleTable } from './rule-table.tsx';
import type { Comparison, Rule } from './split-body.ts';
import { useSplitText } from './words.ts';

type CompareProps = { buy: string; lineId: string; food: string; comparison: Comparison };

/** The six rules before one is chosen: what each would give everyone, and what it would cost. */
export function Compare({ buy, lineId, food, comparison }: CompareProps) {
  const t = useSplitText();
  const { storehouse, format, duties } = useHouse();
  const queries = useQueryClient();
  const [chosen, setChosen] = useState<Rule>(comparison.defaultRule as Rule);
  const mayChoose = comparison.roundNo === 1;
  const maySplit = ['coordinator', 'packing_lead'].some((duty) => duties.includes(duty));
  const run = comparison.rules.find(({ rule }) => rule === chosen);
  const claimed = comparison.rules[0]?.shares.reduce((sum, share) => sum + share.claimGrams, 0) ?? 0;
  const available = comparison.availableGrams;
  const param = { storehouse, buy };
  const splitting = useMutation({
    mutationFn: () =>
      askOnce(`split.${lineId}`, { rule: chosen }, (headers) =>
        api.storehouses[':storehouse'].buys[':buy'].lines[':line'].splits.$post(
          { param: { ...param, line: lineId }, json: { rule: chosen } },
          { headers },
        ),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  const grams = (value: number) => format.count(value);
  return (
    <Form onSend={() => splitting.mutate()}>
      <h1>
        {!maySplit
          ? t.yoursByRule(food, grams(available))
          : available < claimed
            ? t.landedShort(food, grams(claimed - available), grams(available))
            : t.landedWhole(food, grams(available))}
      </h1>
      <RuleTable
        comparison={comparison}
        chosen={chosen}
        onChoose={mayChoose && maySplit ? setChosen : undefined}
      />
      <div className="verdict">
        <p>
          {chosen === comparison.defaultRule ? <b>{t.byGroupsRule} </b> : null}
          {run?.sentence} {t.tieBreak} {chosen === 'need-first' ? t.needIsPrivate : ''}
          {comparison.isEstimate ? ` ${t.centsEstimate}` : ''}
        </p>
        {maySplit ? (
          <div className="stack">
            <button type="submit" className="btn go" disabled={splitting.isPending}>
              {t.splitByRule(t.byRule[chosen] ?? chosen)}
            </button>
            <ProblemSaid error={splitting.error} />
          </div>
        ) : null}
      </div>
      {maySplit ? <p className="soft">{t.splitPosts(grams(available))}</p> : null}
      {mayChoose ? null : <p className="soft">{t.ruleStands}</p>}
    </Form>
  );
}
