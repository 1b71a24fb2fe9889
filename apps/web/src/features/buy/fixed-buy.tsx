import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { fillQuery } from '../../api/queries.ts';
import { Check, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage } from './buy-body.ts';
import { WhoGetsWhat } from './fixing-tables.tsx';
import { LongField } from './long-field.tsx';
import { depositsQuery, householdPledgesQuery, householdsQuery } from './run-queries.ts';
import { useOrderText, useRunText } from './words.ts';

const reopening = api.storehouses[':storehouse'].buys[':buy'].reopening;

/** What a fixed buy has promised, and the one way back. */
export function FixedBuy({ buy }: { buy: BuyPage }) {
  const words = useOrderText();
  const run = useRunText();
  const { storehouse, duties } = useHouse();
  useTitle(words.fixedTitle(buy.name));
  const param = { storehouse, buy: buy.id };
  const fill = useQuery(fillQuery(param));
  const households = useQuery(householdsQuery({ storehouse }));
  const pledges = useQuery(householdPledgesQuery(param));
  return (
    <>
      <h1>{words.fixedTitle(buy.name)}</h1>
      <Loaded reading={joined(fill, joined(households, pledges))}>
        {([filled, [known, pledged]]) => (
          <div className="cols">
            <WhoGetsWhat
              buy={buy}
              lines={filled.lines}
              names={{
                household: (id) => known.find((one) => one.id === id)?.name ?? '',
                wantedGrams: (id) => pledged.find((pledge) => pledge.id === id)?.wantedGrams ?? 0,
              }}
            />
            <div className="stack">
              <div className="actions">
                <Link className="btn go" to="/s/$storehouse/buys/$buy/order" params={param}>
                  {run.toOrder}
                </Link>
              </div>
              {duties.includes('coordinator') ? <Reopen buy={buy} /> : null}
            </div>
          </div>
        )}
      </Loaded>
    </>
  );
}

/** Open it again: with the reason, and whom of those with a deposit the coordinator has told. */
function Reopen({ buy }: { buy: BuyPage }) {
  const words = useOrderText();
  const run = useRunText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const {
    draft: { reason, told },
    change,
    reset,
  } = useDraft(`reopen.${buy.id}`, { reason: '', told: [] as readonly string[] }, { rows: { told: '' } });
  const param = { storehouse, buy: buy.id };
  const deposits = useQuery(depositsQuery(param));
  const opening = useMutation({
    mutationFn: async () => {
      const json = { reason, toldHouseholdIds: [...told] };
      return await askOnce(`reopen.${buy.id}`, json, (headers) =>
        reopening.$post({ param, json }, { headers }),
      );
    },
    onSuccess: async () => {
      reset();
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
      await navigate({ to: '/s/$storehouse/buys/$buy/run', params: param });
    },
  });
  const problems = problemsOf(opening.error);
  return (
    <details>
      <summary>{words.reopen}</summary>
      <Form onSend={() => opening.mutate()}>
        <p className="soft">{words.reopenWords}</p>
        <LongField
          label={words.reason}
          hint={run.reasonHint}
          value={reason}
          onChange={(text) => {
            opening.reset();
            change({ reason: text });
          }}
          problem={problems.reason && words.reasonNeeded}
        />
        <Loaded reading={deposits}>
          {({ deposits: rows }) =>
            rows.length === 0 ? null : (
              <fieldset>
                <legend className="legend">{words.told}</legend>
                {rows.map(({ householdId, household }) => (
                  <Check
                    key={householdId}
                    label={household}
                    isOn={told.includes(householdId)}
                    onChange={(isOn) =>
                      change({
                        told: isOn ? [...told, householdId] : told.filter((id) => id !== householdId),
                      })
                    }
                  />
                ))}
              </fieldset>
            )
          }
        </Loaded>
        {opening.error && Object.keys(problems).length === 0 ? <ProblemSaid error={opening.error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={opening.isPending}>
            {words.reopenNow}
          </button>
        </div>
      </Form>
    </details>
  );
}
