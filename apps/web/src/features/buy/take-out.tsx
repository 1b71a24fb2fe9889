import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { Check, Choice, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage } from './buy-body.ts';
import { LongField } from './long-field.tsx';
import { type Household, householdPledgesQuery, householdsQuery, withdrawalsQuery } from './run-queries.ts';
import { useRunText } from './words.ts';

const withdrawals = api.storehouses[':storehouse'].buys[':buy'].withdrawals;

/** A coordinator takes a household out that can't do it itself; what that does is said before. */
export function TakeOut({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse } = useHouse();
  const [isOpen, setIsOpen] = useState(false);
  const pledges = useQuery({ ...householdPledgesQuery({ storehouse, buy: buy.id }), enabled: isOpen });
  const households = useQuery({ ...householdsQuery({ storehouse }), enabled: isOpen });
  return (
    <details onToggle={(event) => setIsOpen(event.currentTarget.open)}>
      <summary>{words.takeOut}</summary>
      {isOpen ? (
        <Loaded reading={joined(pledges, households)}>
          {([all, known]) => {
            const inIt = new Set(all.map(({ householdId }) => householdId));
            return (
              <>
                <TakeOutForm buy={buy} households={known.filter(({ id }) => inIt.has(id))} />
                <TakenOut buy={buy.id} nameOf={(id) => known.find((one) => one.id === id)?.name ?? ''} />
              </>
            );
          }}
        </Loaded>
      ) : null}
    </details>
  );
}

/** Who was taken out before, when and why. */
function TakenOut({ buy, nameOf }: { buy: string; nameOf: (householdId: string) => string }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const withdrawals = useQuery(withdrawalsQuery({ storehouse, buy }));
  return (
    <Loaded reading={withdrawals}>
      {({ withdrawals: rows }) =>
        rows.length === 0 ? null : (
          <Ledger
            caption={words.withdrawnBefore}
            columns={[{ name: words.withdrawnBefore }, { name: words.reason }]}
            rows={rows.map(({ id, householdId, reason, withdrawnAt }) => ({
              key: id,
              cells: [`${nameOf(householdId)}, ${format.instant(withdrawnAt)}`, reason],
            }))}
          />
        )
      }
    </Loaded>
  );
}

function TakeOutForm({ buy, households }: { buy: BuyPage; households: readonly Household[] }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { householdId, reason, declined },
    change,
    reset,
  } = useDraft(
    `take-out.${buy.id}`,
    { householdId: '', reason: '', declined: [] as readonly string[] },
    { rows: { declined: '' } },
  );
  const param = { storehouse, buy: buy.id };
  const nameOf = (id: string) => households.find((one) => one.id === id)?.name ?? '';
  const isOrdered = buy.stage === 'ordered' || buy.stage === 'landed';
  const leaving = useMutation({
    mutationFn: async () => {
      const json = { householdId, reason, declinedHouseholdIds: isOrdered ? [...declined] : [] };
      return await askOnce(`take-out.${buy.id}`, json, (headers) =>
        withdrawals.$post({ param, json }, { headers }),
      );
    },
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['buy', param] });
    },
  });
  const said = leaving.data;
  const problems = problemsOf(leaving.error);
  return (
    <Form onSend={() => leaving.mutate()}>
      <p className="soft">{words.takeOutWords[buy.stage]}</p>
      <Choice
        label={words.household}
        value={householdId}
        options={[
          { value: '', name: words.chooseHousehold },
          ...households.map(({ id, name }) => ({ value: id, name })),
        ]}
        onChange={(householdId) => change({ householdId })}
        problem={problems.householdId}
      />
      {isOrdered && householdId !== '' ? (
        <fieldset>
          <legend className="legend">{words.declined}</legend>
          {households
            .filter(({ id }) => id !== householdId)
            .map(({ id, name }) => (
              <Check
                key={id}
                label={name}
                isOn={declined.includes(id)}
                onChange={(isOn) =>
                  change({ declined: isOn ? [...declined, id] : declined.filter((one) => one !== id) })
                }
              />
            ))}
        </fieldset>
      ) : null}
      <LongField
        label={words.reason}
        hint={words.reasonHint}
        value={reason}
        onChange={(reason) => change({ reason })}
        problem={problems.reason && words.reasonNeeded}
      />
      {leaving.error && Object.keys(problems).length === 0 ? <ProblemSaid error={leaving.error} /> : null}
      <div>
        <button type="submit" className="btn" disabled={householdId === '' || leaving.isPending}>
          {words.takeOutNow(nameOf(householdId) || '…')}
        </button>
      </div>
      {said ? (
        <p className="said well-said" role="status">
          {said.lines.length === 0
            ? words.takenOutPledges(nameOf(said.householdId))
            : words.takenOut(
                nameOf(said.householdId),
                format.mass(said.lines.reduce((sum, line) => sum + line.takenGrams, 0)),
                format.mass(said.lines.reduce((sum, line) => sum + line.leftGrams, 0)),
              )}
        </p>
      ) : null}
    </Form>
  );
}
