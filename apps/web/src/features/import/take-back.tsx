import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { undoingQuery } from './queries.ts';
import { useImportText } from './words.ts';

const undoing = api.storehouses[':storehouse'].imports[':import'].undoing;

/** Takes an import back as one. Looks first, once it is opened: what would go, or what stands in the way. */
export function TakeBack({ importId, importNo }: { importId: string; importNo: number }) {
  const t = useImportText();
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t.takeBack(importNo)}</summary>
      {isOpen ? <Preview importId={importId} /> : null}
    </details>
  );
}

function Preview({ importId }: { importId: string }) {
  const t = useImportText();
  const client = useQueryClient();
  const { storehouse } = useHouse();
  const {
    draft: { reason },
    change,
    reset,
  } = useDraft(`import-undo.${importId}`, { reason: '' });
  const param = { storehouse, import: importId };
  const reading = useQuery(undoingQuery(param));
  const undo = useMutation({
    mutationFn: () =>
      askOnce(`import.undoing.${importId}`, { reason }, (headers) =>
        undoing.$post({ param, json: { reason } }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return client.invalidateQueries();
    },
  });
  return (
    <Loaded reading={reading}>
      {(seen) =>
        seen.isPossible ? (
          <Form onSend={() => undo.mutate()}>
            <p>{t.willTakeBack}</p>
            <ul>
              {seen.entries > 0 ? <li>{t.entriesBack(seen.entries)}</li> : null}
              {Object.entries(seen.things).map(([kind, count]) => (
                <li key={kind}>{t.thingsBack[kind]?.(count) ?? `${kind}: ${count}`}</li>
              ))}
            </ul>
            <Field
              label={t.whyTakeBack}
              value={reason}
              required
              onChange={(event) => change({ reason: event.target.value })}
              problem={problemsOf(undo.error).reason}
            />
            <ProblemSaid error={undo.error} />
            <div className="actions">
              <button type="submit" className="btn" disabled={undo.isPending || reason.trim() === ''}>
                {t.takeAllBack}
              </button>
            </div>
          </Form>
        ) : (
          <>
            <p>{t.leansOn}</p>
            <ul>
              {seen.leaning.map(({ code, name, count }) => (
                <li key={code + name}>{t.leaning(code, name, count)}</li>
              ))}
            </ul>
          </>
        )
      }
    </Loaded>
  );
}
