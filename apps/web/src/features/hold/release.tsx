import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type Hold, inside, useHoldCommand } from './queries.ts';
import { SentenceForm } from './sentence-form.tsx';
import { useHoldText } from './words.ts';

const one = inside.holds[':hold'];

/** The first of two writes down what was found; the second, another person, agrees. */
export function ReleaseForm({ hold }: { hold: Hold }) {
  const words = useHoldText();
  const { storehouse, personId } = useHouse();
  return (
    <section className="stack">
      <h2>{words.releaseTitle}</h2>
      <p>{hold.releaseAskedBy === personId ? words.waits : words.releaseSays}</p>
      {hold.releaseAskedBy === null ? (
        <SentenceForm
          name={`finding.${hold.id}`}
          label={words.finding}
          button={words.askRelease}
          send={(finding) =>
            ask(one['release-request'].$post({ param: { storehouse, hold: hold.id }, json: { finding } }))
          }
        />
      ) : (
        <AgreeRelease hold={hold} button={words.agree} />
      )}
    </section>
  );
}

/** What the second of two does; whoever asked can't. */
export function AgreeRelease({ hold, button }: { hold: Hold; button: string }) {
  const { storehouse, personId } = useHouse();
  const agreeing = useHoldCommand(() => ask(one.release.$post({ param: { storehouse, hold: hold.id } })));
  if (hold.releaseAskedBy === personId) return null;
  return (
    <>
      <ProblemSaid error={agreeing.error} />
      <div className="actions">
        <button
          type="button"
          className="btn"
          disabled={agreeing.isPending}
          onClick={() => agreeing.mutate(undefined)}
        >
          {button}
        </button>
      </div>
    </>
  );
}
