import { sumOf } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { pickUpsQuery } from '../../api/queries.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { householdsQuery } from '../buy/run-queries.ts';
import { type Fetcher, fetchersOf } from '../handing-over/fetchers.ts';
import type { BuyOfPaper } from './key-slip.tsx';
import type { FoundPaper } from './queries.ts';
import { usePaperText } from './words.ts';
import { type When, WrittenWhen, writtenAtOf } from './written-when.tsx';

const inside = api.storehouses[':storehouse'];
type Draft = When & { household: string; signedBy: string };

/** Who signed a split sheet at the door: one household after the other, each with the hour that the pen wrote. */
export function KeyPickUp({ buy, paper }: { buy: BuyOfPaper; paper: FoundPaper }) {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const pickUps = useQuery(pickUpsQuery({ storehouse, buy: buy.id }));
  const households = useQuery(householdsQuery({ storehouse }));
  if (buy.stage !== 'shared-out' && buy.stage !== 'closed') return <p className="soft">{words.notFetched}</p>;
  return (
    <Loaded reading={joined(pickUps, households)}>
      {([found, all]) => (
        <PickUpForm
          {...{ buy, paper }}
          fetchers={fetchersOf({ ...found, households: all, uncollected: null })}
        />
      )}
    </Loaded>
  );
}

const gramsOf = ({ waiting }: Fetcher): number =>
  sumOf(waiting.filter(({ isOnHold }) => !isOnHold).map(({ grams }) => grams));

type FormProps = { buy: BuyOfPaper; paper: FoundPaper; fetchers: readonly Fetcher[] };

function PickUpForm({ buy, paper, fetchers }: FormProps) {
  const words = usePaperText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const start: Draft = { household: '', signedBy: '', day: '', time: '' };
  const { draft, change, reset } = useDraft<Draft>(`key-pick-up.${paper.code}`, start);
  const [done, setDone] = useState('');
  const open = fetchers.filter((fetcher) => gramsOf(fetcher) > 0);
  const fetcher = open.find(({ householdId }) => householdId === draft.household) ?? open[0];
  const writtenAt = writtenAtOf(draft);
  const keying = useMutation({
    mutationFn: async (from: { fetcher: Fetcher; writtenAt: string }) => {
      const { householdId } = from.fetcher;
      const { writtenAt } = from;
      const json = { householdId, signedBy: draft.signedBy, writtenAt, paperCode: paper.code };
      await askOnce(`key-pick-up.${buy.id}.${householdId}`, json, (headers) =>
        inside.buys[':buy'].collections.$post({ param: { storehouse, buy: buy.id }, json }, { headers }),
      );
      return from.fetcher.name;
    },
    onSuccess: (name) => {
      setDone(name);
      reset({ ...start, day: draft.day, time: draft.time }); // the next line of the sheet has nearly the same hour
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy: buy.id }] }),
  });
  const problems = problemsOf(keying.error);
  const said = done === '' ? null : <p role="status">{words.pickUpKeyed(done)}</p>;
  if (!fetcher)
    return (
      <>
        {said}
        <p className="soft">{words.allFetched}</p>
      </>
    );
  return (
    <Form
      onSend={() => {
        if (writtenAt !== undefined) keying.mutate({ fetcher, writtenAt });
      }}
    >
      <h2>{words.keyPickUp(buy.name)}</h2>
      {said}
      <Choice
        label={words.forHousehold}
        value={fetcher.householdId}
        options={open.map(({ householdId, name }) => ({ value: householdId, name }))}
        onChange={(household) => change({ household })}
      />
      <Field
        label={words.signedOnPaper}
        value={draft.signedBy}
        onChange={(event) => change({ signedBy: event.target.value })}
        problem={problems.signedBy}
      />
      <WrittenWhen when={draft} onChange={change} problem={problems.writtenAt} />
      <NextStep>
        <p>
          {writtenAt === undefined
            ? words.whenNeeded
            : words.keyPickUpPosts(format.mass(gramsOf(fetcher)), fetcher.name)}
        </p>
        <ProblemSaid error={keying.error} />
        <button
          type="submit"
          className="btn go"
          disabled={keying.isPending || writtenAt === undefined || draft.signedBy.trim() === ''}
        >
          {words.keyIn}
        </button>
      </NextStep>
    </Form>
  );
}
