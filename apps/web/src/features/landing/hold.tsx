import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { api, ask, askOnce } from '../../api/client.ts';
import { personsQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import type { Bag, Hold } from './landing-body.ts';
import { useLandingText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** Stopping a bag takes one person. Letting it go takes a finding, and two. */
export function BagHold({ bag, hold }: { bag: Bag; hold: Hold | null }) {
  const t = useLandingText();
  if (hold) return <OnHold bag={bag} hold={hold} />;
  if (bag.decision === 'refused' || bag.leftGrams === 0) return null;
  return (
    <details>
      <summary>{t.holdIt}</summary>
      <HoldForm bag={bag} />
    </details>
  );
}

/** A command about a hold; afterwards everything of the buy is read anew. */
function useHoldCommand<Wish>(bag: Bag, send: (wish: Wish) => Promise<unknown>) {
  const queries = useQueryClient();
  const { storehouse } = useHouse();
  return useMutation({
    mutationFn: send,
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy: bag.buyId }] }),
  });
}

function HoldForm({ bag }: { bag: Bag }) {
  const t = useLandingText();
  const { storehouse } = useHouse();
  const { draft, change, forget } = useDraft(`hold.${bag.id}`, { reason: '' });
  const holding = useHoldCommand(bag, async (reason: string) => {
    await ask(inside.bags[':bag'].holds.$post({ param: { storehouse, bag: bag.id }, json: { reason } }));
    forget();
  });
  return (
    <form
      className="stack tight"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        holding.mutate(draft.reason);
      }}
    >
      <Field
        label={t.whyHold}
        value={draft.reason}
        onChange={(event) => change({ reason: event.target.value })}
      />
      <p className="soft">{t.holdWords}</p>
      <ProblemSaid error={holding.error} />
      <button type="submit" className="btn" disabled={draft.reason.trim() === '' || holding.isPending}>
        {t.holdIt}
      </button>
    </form>
  );
}

function OnHold({ bag, hold }: { bag: Bag; hold: Hold }) {
  const t = useLandingText();
  const { storehouse, format, personId } = useHouse();
  const persons = useQuery(personsQuery({ storehouse }));
  const nameOf = (id: string | null) => persons.data?.find((person) => person.id === id)?.name ?? '';
  const agreeing = useHoldCommand(bag, () =>
    ask(inside.holds[':hold'].release.$post({ param: { storehouse, hold: hold.id } })),
  );
  const isAsked = hold.releaseAskedBy !== null;
  return (
    <section className="stack tight">
      <p className="said">{t.heldSince(format.instant(hold.heldAt), nameOf(hold.heldBy), hold.reason)}</p>
      {isAsked ? (
        <p>{t.found(nameOf(hold.releaseAskedBy), hold.finding ?? '')}</p>
      ) : (
        <FindingForm bag={bag} hold={hold} />
      )}
      {isAsked && hold.releaseAskedBy === personId ? <p className="soft">{t.waitsForSecond}</p> : null}
      <ProblemSaid error={agreeing.error} />
      {isAsked && hold.releaseAskedBy !== personId ? (
        <button
          type="button"
          className="btn"
          disabled={agreeing.isPending}
          onClick={() => agreeing.mutate(undefined)}
        >
          {t.agreeRelease}
        </button>
      ) : null}
      <PaperLinks papers={[{ kind: 'quarantine-tag', path: `holds/${hold.id}/tag` }]} />
    </section>
  );
}

/** What was found decides: food again, or nothing that anybody eats. */
function FindingForm({ bag, hold }: { bag: Bag; hold: Hold }) {
  const t = useLandingText();
  const { storehouse, format } = useHouse();
  const { draft, change, forget } = useDraft(`finding.${hold.id}`, { finding: '' });
  const asking = useHoldCommand(bag, async (finding: string) => {
    const param = { storehouse, hold: hold.id };
    await ask(inside.holds[':hold']['release-request'].$post({ param, json: { finding } }));
    forget();
  });
  const discarding = useHoldCommand(bag, async (finding: string) => {
    await askOnce(`discard.${bag.id}`, { finding }, (headers) =>
      inside.bags[':bag'].discard.$post(
        { param: { storehouse, bag: bag.id }, json: { finding } },
        { headers },
      ),
    );
    forget();
  });
  const isIdle = draft.finding.trim() === '' || asking.isPending || discarding.isPending;
  return (
    <form
      className="stack tight"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        asking.mutate(draft.finding);
      }}
    >
      <Field
        label={t.finding}
        value={draft.finding}
        onChange={(event) => change({ finding: event.target.value })}
      />
      <ProblemSaid error={asking.error ?? discarding.error} />
      <p className="soft">{t.releaseOrDiscard(format.mass(bag.leftGrams))}</p>
      <div className="actions">
        <button type="submit" className="btn" disabled={isIdle}>
          {t.askRelease}
        </button>
        <button
          type="button"
          className="btn"
          disabled={isIdle}
          onClick={() => discarding.mutate(draft.finding)}
        >
          {t.discard(format.mass(bag.leftGrams))}
        </button>
      </div>
    </form>
  );
}
