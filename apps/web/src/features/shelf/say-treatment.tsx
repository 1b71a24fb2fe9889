import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { shownPart } from '../../ui/parts-typed.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { OF_STOCK, type Shelved } from './queries.ts';
import { readTreating, TreatmentFields } from './treatment-fields.tsx';
import { useShelfText } from './words.ts';

const { treatment: treatmentOf } = api.storehouses[':storehouse'].containers[':container'];

/** Says afterwards what was done to a container as it was packed, for labels and for how long it keeps. */
export function SayTreatment({ shelved }: { shelved: Shelved }) {
  const t = useText();
  const words = useShelfText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const start = { treatment: shelved.treatment ?? '', moisture: shownPart(shelved.moistureTenths, 10) };
  const { draft, change, forget } = useDraft(`treatment.${shelved.id}`, start, {
    version: JSON.stringify(start),
  });
  const read = readTreating(draft);
  const saying = useMutation({
    mutationFn: (json: NonNullable<typeof read>) =>
      ask(treatmentOf.$put({ param: { storehouse, container: shelved.id }, json })),
    onSuccess: () => {
      forget();
      return Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  return (
    <details>
      <summary>{words.sayTreatment}</summary>
      <Form
        label={words.sayTreatment}
        onSend={() => {
          if (read) saying.mutate(read);
        }}
      >
        <TreatmentFields draft={draft} change={change} problems={problemsOf(saying.error)} />
        {saying.data?.warnings.map((warning) => (
          <p key={warning} className="said watch-said">
            {warning}
          </p>
        ))}
        <ProblemSaid error={saying.error} />
        <button type="submit" className="btn" disabled={saying.isPending}>
          {t.save}
        </button>
      </Form>
    </details>
  );
}
