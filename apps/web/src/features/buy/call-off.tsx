import { parseMoney } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { api, askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage } from './buy-body.ts';
import { LongField } from './long-field.tsx';
import { ordersQuery } from './run-queries.ts';
import { useRunText } from './words.ts';

const callingOff = api.storehouses[':storehouse'].buys[':buy']['calling-off'];

/** Calls a buy off; once it is ordered, with what was agreed and what is still billed. */
export function CallOff({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy: buy.id };
  const isOrdered = buy.stage === 'ordered';
  const orders = useQuery({ ...ordersQuery(param), enabled: isOrdered });
  const {
    draft: { reason, note, costs },
    change,
    reset,
  } = useDraft(
    `call-off.${buy.id}`,
    { reason: '', note: '', costs: {} as Readonly<Record<string, string>> },
    { rows: { costs: '' } },
  );
  const suppliers = orders.data?.orders.map(({ supplier }) => supplier) ?? [];
  const amountOf = (supplierId: string) => parseMoney(costs[supplierId] ?? '', format.currency);
  const isWrong = (supplierId: string) => {
    const amount = amountOf(supplierId);
    return 'problem' in amount && amount.problem !== 'empty';
  };
  const ending = useMutation({
    mutationFn: () => {
      const json = {
        reason,
        cancellationNote: note,
        cancellationCosts: suppliers.flatMap(({ id: supplierId }) => {
          const amount = amountOf(supplierId);
          return 'minorUnits' in amount && amount.minorUnits > 0
            ? [{ supplierId, minorUnits: amount.minorUnits }]
            : [];
        }),
      };
      return askOnce(`call-off.${buy.id}`, json, (headers) => callingOff.$post({ param, json }, { headers }));
    },
    onSuccess: async () => {
      reset();
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
    },
  });
  const problems = problemsOf(ending.error);
  return (
    <details>
      <summary>{words.callOff}</summary>
      <Form onSend={() => ending.mutate()}>
        <p className="soft">
          {isOrdered ? `${words.callOffOrdered} ${words.callOffWords}` : words.callOffWords}
        </p>
        <LongField
          label={words.reason}
          hint={words.reasonHint}
          value={reason}
          onChange={(reason) => change({ reason })}
          problem={problems.reason && words.reasonNeeded}
        />
        {isOrdered ? (
          <LongField
            label={words.cancellationNote}
            value={note}
            onChange={(note) => change({ note })}
            problem={problems.cancellationNote}
          />
        ) : null}
        {suppliers.map(({ id, name }) => (
          <Field
            key={id}
            label={words.cancellationCost(name)}
            inputMode="decimal"
            value={costs[id] ?? ''}
            onChange={(event) => change({ costs: { ...costs, [id]: event.target.value } })}
            problem={isWrong(id) ? words.moneyProblem : undefined}
          />
        ))}
        {ending.error && Object.keys(problems).length === 0 ? <ProblemSaid error={ending.error} /> : null}
        <div>
          <button
            type="submit"
            className="btn"
            disabled={ending.isPending || suppliers.some(({ id }) => isWrong(id))}
          >
            {words.callOffNow(buy.name)}
          </button>
        </div>
      </Form>
    </details>
  );
}
