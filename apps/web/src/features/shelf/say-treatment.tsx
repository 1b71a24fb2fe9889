import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { shownPart } from '../../ui/parts-typed.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
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
  const [draft, setDraft] = useState({
    treatment: shelved.treatment ?? '',
    moisture: shownPart(shelved.moistureTenths, 10),
  });
  const read = readTreating(draft);
  const saying = useMutation({
    mutationFn: (json: NonNullable<typeof read>) =>
      ask(treatmentOf.$put({ param: { storehouse, container: shelved.id }, json })),
    onSuccess: () => Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  return (
    <details>
      <summary>{words.sayTreatment}</summary>
      <form
        className="stack"
        noValidate
        aria-label={words.sayTreatment}
        onSubmit={(event) => {
          event.preventDefault();
          if (read) saying.mutate(read);
        }}
      >
        <TreatmentFields
          draft={draft}
          change={(part) => setDraft({ ...draft, ...part })}
          problems={problemsOf(saying.error)}
        />
        {saying.data?.warnings.map((warning) => (
          <p key={warning} className="said watch-said">
            {warning}
          </p>
        ))}
        <ProblemSaid error={saying.error} />
        <button type="submit" className="btn" disabled={saying.isPending}>
          {t.save}
        </button>
      </form>
    </details>
  );
}
