import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Bag } from './landing-body.ts';
import type { Condition, Decision } from './queue.ts';
import type { Landing } from './use-landing.ts';
import { useLandingText } from './words.ts';

const CONDITIONS: readonly Condition[] = ['dry', 'torn', 'wet', 'infested', 'odour', 'wrong'];
const DECISIONS: readonly Decision[] = ['accepted', 'accepted-with-note', 'refused'];

/** What was seen of a bag, put right. A bag refused after all goes back gram by gram. */
export function ChangeBag({ landing, bag }: { landing: Landing; bag: Bag }) {
  const t = useLandingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const { draft, change, forget } = useDraft(
    `bag.${bag.id}`,
    {
      condition: bag.condition as Condition,
      decision: bag.decision as Decision,
      note: bag.note,
      isExemptFromWeighing: bag.isExemptFromWeighing,
    },
    { version: bag.version },
  );
  const changing = useMutation({
    mutationFn: () =>
      ask(
        api.storehouses[':storehouse'].bags[':bag'].$put({
          param: { storehouse, bag: bag.id },
          json: { version: bag.version, moistureTenthsPercent: bag.moistureTenthsPercent, ...draft },
        }),
      ),
    onSuccess: async () => {
      forget();
      await queries.invalidateQueries({ queryKey: ['buy', landing.param] });
    },
  });
  const problems = problemsOf(changing.error);
  return (
    <details>
      <summary>{t.changeBag}</summary>
      <Form isTight onSend={() => changing.mutate()}>
        <div className="pair roomy">
          <Choice
            label={t.condition}
            value={draft.condition}
            options={CONDITIONS.map((value) => ({ value, name: t.conditions[value] }))}
            onChange={(condition) => change({ condition: condition as Condition })}
          />
          <Choice
            label={t.decision}
            value={draft.decision}
            options={DECISIONS.map((value) => ({ value, name: t.decisions[value] }))}
            onChange={(decision) => change({ decision: decision as Decision })}
          />
        </div>
        <Field
          label={t.note}
          hint={t.noteHint}
          value={draft.note}
          problem={problems.note && t.noteNeeded}
          onChange={(event) => change({ note: event.target.value })}
        />
        {bag.weighedAt === null ? (
          <Check
            label={t.exempt}
            isOn={draft.isExemptFromWeighing}
            onChange={(isExemptFromWeighing) => change({ isExemptFromWeighing })}
          />
        ) : null}
        {draft.decision === 'refused' && bag.decision !== 'refused' ? <p>{t.refusePosts}</p> : null}
        {problems.note ? null : <ProblemSaid error={changing.error} />}
        <button type="submit" className="btn" disabled={changing.isPending}>
          {t.writeChange}
        </button>
      </Form>
    </details>
  );
}
