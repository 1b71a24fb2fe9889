import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { usePeopleText } from './words.ts';

const households = api.storehouses[':storehouse'].households;

/** A household that never signs in: a helper acts for it. */
export function PaperHousehold() {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const { draft, change, reset } = useDraft(`paper.${storehouse}`, { name: '', personName: '' });
  const entering = useMutation({
    mutationFn: () => ask(households.$post({ param: { storehouse }, json: draft })),
    onSuccess: () => {
      reset({ name: '', personName: '' });
      return Promise.all(
        ['households', 'persons'].map((key) => queries.invalidateQueries({ queryKey: [key] })),
      );
    },
  });
  const problems = problemsOf(entering.error);
  return (
    <details>
      <summary>{words.paperHousehold}</summary>
      <Form onSend={() => entering.mutate()}>
        <p>{words.paperWords}</p>
        <Field
          label={words.householdName}
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          problem={problems.name && words.nameNeeded}
        />
        <Field
          label={words.personName}
          value={draft.personName}
          onChange={(event) => change({ personName: event.target.value })}
          problem={problems.personName && words.nameNeeded}
        />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={entering.error} />}
        <button type="submit" className="btn" disabled={entering.isPending}>
          {words.enter}
        </button>
      </Form>
    </details>
  );
}
