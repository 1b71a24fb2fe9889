import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { storehouseQuery } from '../../api/queries.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { usePlanText } from './words.ts';
import './beam.css';

const inside = api.storehouses[':storehouse'];
type Wish = Parameters<(typeof inside.rules)['$post']>[0]['json'];
type Rules = Wish & { readonly decidedAt: string };
const BASES = ['by-weight', 'by-value', 'per-household', 'blend'] as const;

/** The rules that a buy will go by when it is fixed: what they are, and a way to change them. */
export function RulesInForce() {
  const words = usePlanText();
  const { storehouse, format } = useHouse();
  const here = useQuery(storehouseQuery({ storehouse }));
  const [saved, setSaved] = useState<number | null>(null);
  return (
    <section className="stack">
      <h2>{words.groupRules}</h2>
      <Loaded reading={here}>
        {({ rules }) => (
          <>
            <dl className="savings">
              <dt>{words.depositPercent}</dt>
              <dd>{rules.depositPercent} %</dd>
              <dt>{words.freightBasis}</dt>
              <dd>{words.freightBases[rules.freightBasis] ?? rules.freightBasis}</dd>
              <dt>{words.splitRule}</dt>
              <dd>{words.rules[rules.splitRule] ?? rules.splitRule}</dd>
              <dt>{words.commonCap}</dt>
              <dd>{format.mass(rules.commonCapGrams)}</dd>
              <dt>{words.priceRise}</dt>
              <dd>{rules.priceRisePercent} %</dd>
            </dl>
            <p className="soft">
              {`${words.rulesVersion(rules.rulesVersion, format.day(rules.decidedAt.slice(0, 10)))} ${words.rulesWords}`}
            </p>
            <ChangeRules key={rules.rulesVersion} rules={rules as unknown as Rules} onSaved={setSaved} />
            {saved === rules.rulesVersion ? (
              <p className="said well-said" role="status">
                {words.rulesSaved(saved)}
              </p>
            ) : null}
          </>
        )}
      </Loaded>
    </section>
  );
}

const percentOf = (text: string) => (/^(100|\d{1,2})$/.test(text.trim()) ? Number(text) : undefined);

/** Inside another form's page, so its button sends by itself and no Enter of it reaches that form. */
function ChangeRules({ rules, onSaved }: { rules: Rules; onSaved: (version: number) => void }) {
  const words = usePlanText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { deposit, rise, basis, splitRule },
    change,
    forget,
  } = useDraft(
    'buy-rules',
    {
      deposit: String(rules.depositPercent),
      rise: String(rules.priceRisePercent),
      basis: rules.freightBasis as string,
      splitRule: rules.splitRule as string,
    },
    { version: JSON.stringify(rules) },
  );
  const [depositPercent, priceRisePercent] = [percentOf(deposit), percentOf(rise)];
  const changing = useMutation({
    mutationFn: () => {
      const { decidedAt: _, ...inForce } = rules;
      const json = {
        ...inForce,
        depositPercent: depositPercent ?? inForce.depositPercent,
        priceRisePercent: priceRisePercent ?? inForce.priceRisePercent,
        freightBasis: BASES.find((one) => one === basis) ?? inForce.freightBasis,
        splitRule: splitRule as Wish['splitRule'],
      };
      return ask(inside.rules.$post({ param: { storehouse }, json }));
    },
    onSuccess: async ({ rulesVersion }) => {
      forget();
      onSaved(rulesVersion);
      await queries.invalidateQueries({ queryKey: ['storehouse'] });
    },
  });
  const isWrong = depositPercent === undefined || priceRisePercent === undefined;
  return (
    <details>
      <summary>{words.changeRules}</summary>
      <div className="stack">
        <p className="soft">{words.rulesChangeWords}</p>
        <Field
          label={words.depositPercent}
          inputMode="numeric"
          value={deposit}
          onChange={(event) => change({ deposit: event.target.value })}
          problem={depositPercent === undefined ? words.percentProblem : undefined}
        />
        <Choice
          label={words.freightBasis}
          value={basis}
          options={BASES.map((value) => ({ value, name: words.freightBases[value] ?? value }))}
          onChange={(basis) => change({ basis })}
        />
        <Choice
          label={words.splitRule}
          value={splitRule}
          options={Object.entries(words.rules).map(([value, name]) => ({ value, name }))}
          onChange={(splitRule) => change({ splitRule })}
        />
        <Field
          label={words.priceRise}
          inputMode="numeric"
          value={rise}
          onChange={(event) => change({ rise: event.target.value })}
          problem={priceRisePercent === undefined ? words.percentProblem : undefined}
        />
        {changing.error ? <ProblemSaid error={changing.error} /> : null}
        <div>
          <button
            type="button"
            className="btn"
            disabled={isWrong || changing.isPending}
            onClick={() => changing.mutate()}
          >
            {words.saveRules}
          </button>
        </div>
      </div>
    </details>
  );
}
