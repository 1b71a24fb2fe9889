import { spellCode } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check, Choice } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { inside, named, type Queued } from './queries.ts';
import { useGivingText } from './words.ts';

/** Who sealed a container, what its label says, and what was seen of it. */
export function FactsForm({ rows }: { rows: readonly Queued[] }) {
  const words = useGivingText();
  const { format } = useHouse();
  const [chosen, setChosen] = useState('');
  const container = rows.find(({ id }) => id === chosen) ?? rows[0];
  if (!container) return null;
  return (
    <details>
      <summary>{words.facts}</summary>
      <div className="stack">
        <Choice
          label={words.container}
          value={container.id}
          options={rows.map((row) => ({
            value: row.id,
            name: `${spellCode(row.code)}, ${named(row, format.language)}`,
          }))}
          onChange={setChosen}
        />
        <Facts key={container.id} container={container} />
      </div>
    </details>
  );
}

function Facts({ container }: { container: Queued }) {
  const words = useGivingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { facts },
    change,
    forget,
  } = useDraft(
    `gift-facts.${container.id}`,
    { facts: container.facts },
    { version: JSON.stringify(container.facts) },
  );
  const saving = useMutation({
    mutationFn: () =>
      ask(
        inside.containers[':container']['gift-facts'].$put({
          param: { storehouse, container: container.id },
          json: { ...facts, labelFacts: [...facts.labelFacts] },
        }),
      ),
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  type Label = (typeof facts.labelFacts)[number];
  const isOnLabel = (fact: string) => facts.labelFacts.includes(fact as Label);
  return (
    <Form label={words.facts} onSend={() => saving.mutate()}>
      <Choice
        label={words.sealedBy}
        value={facts.sealedBy}
        options={Object.entries(words.sealers).map(([value, name]) => ({ value, name }))}
        onChange={(sealedBy) => change({ facts: { ...facts, sealedBy: sealedBy as typeof facts.sealedBy } })}
      />
      <fieldset>
        <legend>{words.labelSays}</legend>
        {Object.entries(words.labelFacts).map(([fact, name]) => (
          <Check
            key={fact}
            label={name}
            isOn={isOnLabel(fact)}
            onChange={(isOn) =>
              change({
                facts: {
                  ...facts,
                  labelFacts: [
                    ...facts.labelFacts.filter((one) => one !== fact),
                    ...(isOn ? [fact as Label] : []),
                  ],
                },
              })
            }
          />
        ))}
      </fieldset>
      <Check
        label={words.treated}
        isOn={facts.isTreatedSeed}
        onChange={(isTreatedSeed) => change({ facts: { ...facts, isTreatedSeed } })}
      />
      {facts.isTreatedSeed ? <p className="said watch-said">{words.treatedCaution}</p> : null}
      <Check
        label={words.mouldy}
        isOn={facts.isMouldy}
        onChange={(isMouldy) => change({ facts: { ...facts, isMouldy } })}
      />
      <ProblemSaid error={saving.error} />
      {saving.isSuccess ? <p role="status">{words.saved}</p> : null}
      <button type="submit" className="btn" disabled={saving.isPending}>
        {words.save}
      </button>
    </Form>
  );
}
