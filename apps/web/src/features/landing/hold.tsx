import { useQuery } from '@tanstack/react-query';
import { ask, askOnce } from '../../api/client.ts';
import { personsQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Hold, inside, useHoldCommand } from '../hold/queries.ts';
import { AgreeRelease } from '../hold/release.tsx';
import { SentenceForm } from '../hold/sentence-form.tsx';
import { PaperLinks } from '../paper/paper-links.tsx';
import type { Bag } from './landing-body.ts';
import { useLandingText } from './words.ts';

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

function HoldForm({ bag }: { bag: Bag }) {
  const t = useLandingText();
  const { storehouse } = useHouse();
  return (
    <SentenceForm
      name={`hold.${bag.id}`}
      label={t.whyHold}
      says={t.holdWords}
      button={t.holdIt}
      send={(reason) =>
        ask(inside.bags[':bag'].holds.$post({ param: { storehouse, bag: bag.id }, json: { reason } }))
      }
    />
  );
}

function OnHold({ bag, hold }: { bag: Bag; hold: Hold }) {
  const t = useLandingText();
  const { storehouse, format, personId } = useHouse();
  const persons = useQuery(personsQuery({ storehouse }));
  const nameOf = (id: string | null) => persons.data?.find((person) => person.id === id)?.name ?? '';
  const { releaseAskedBy } = hold;
  return (
    <section className="stack tight">
      <p className="said">{t.heldSince(format.instant(hold.heldAt), nameOf(hold.heldBy), hold.sentence)}</p>
      {releaseAskedBy === null ? (
        <FindingForm bag={bag} hold={hold} />
      ) : (
        <>
          <p>{t.found(nameOf(releaseAskedBy), hold.finding ?? '')}</p>
          {releaseAskedBy === personId ? <p className="soft">{t.waitsForSecond}</p> : null}
          <AgreeRelease hold={hold} button={t.agreeRelease} />
        </>
      )}
      <PaperLinks papers={[{ kind: 'quarantine-tag', path: `holds/${hold.id}/tag` }]} />
    </section>
  );
}

/** What was found decides: food again, or nothing that anybody eats. */
function FindingForm({ bag, hold }: { bag: Bag; hold: Hold }) {
  const t = useLandingText();
  const { storehouse, format } = useHouse();
  const { draft, change, forget } = useDraft(`finding.${hold.id}`, { finding: '' });
  const asking = useHoldCommand(async (finding: string) => {
    const param = { storehouse, hold: hold.id };
    await ask(inside.holds[':hold']['release-request'].$post({ param, json: { finding } }));
    forget();
  });
  const discarding = useHoldCommand(async (finding: string) => {
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
    <Form isTight onSend={() => asking.mutate(draft.finding)}>
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
    </Form>
  );
}
