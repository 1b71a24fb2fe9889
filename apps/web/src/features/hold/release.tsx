import { ask } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Hold, inside, useHoldCommand } from './queries.ts';
import { useHoldText } from './words.ts';

const one = inside.holds[':hold'];

/** The first of two writes down what was found; the second, another person, agrees. */
export function ReleaseForm({ hold }: { hold: Hold }) {
  const words = useHoldText();
  const { storehouse, personId } = useHouse();
  const param = { storehouse, hold: hold.id };
  const { draft, change, forget } = useDraft(`finding.${hold.id}`, { finding: '' });
  const asking = useHoldCommand(async (finding: string) => {
    await ask(one['release-request'].$post({ param, json: { finding } }));
    forget();
  });
  const agreeing = useHoldCommand(() => ask(one.release.$post({ param })));
  const { releaseAskedBy } = hold;
  return (
    <section className="stack">
      <h2>{words.releaseTitle}</h2>
      <p>{releaseAskedBy === personId ? words.waits : words.releaseSays}</p>
      <ProblemSaid error={asking.error ?? agreeing.error} />
      {releaseAskedBy === null ? (
        <form
          className="stack tight"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            asking.mutate(draft.finding);
          }}
        >
          <Field
            label={words.finding}
            value={draft.finding}
            onChange={(event) => change({ finding: event.target.value })}
          />
          <div className="actions">
            <button type="submit" className="btn" disabled={draft.finding.trim() === '' || asking.isPending}>
              {words.askRelease}
            </button>
          </div>
        </form>
      ) : null}
      {releaseAskedBy !== null && releaseAskedBy !== personId ? (
        <div className="actions">
          <button
            type="button"
            className="btn"
            disabled={agreeing.isPending}
            onClick={() => agreeing.mutate(undefined)}
          >
            {words.agree}
          </button>
        </div>
      ) : null}
    </section>
  );
}
