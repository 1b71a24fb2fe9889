import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { codesTyped } from '../packing/codes-typed.ts';
import type { Whose } from '../place/queries.ts';
import { nameOf } from './name-of.ts';
import type { Lid } from './queries.ts';
import { draftOf, type Lids } from './use-lids.ts';
import { useLidText } from './words.ts';

/** Says of all lids that are due how they were: that they held, but those that are ticked or whose codes are typed. */
export function AnswerLids({
  of,
  due,
  list,
  answering,
}: {
  of: Whose;
  due: readonly Lid[];
  list: string;
  answering: Lids['answering'];
}) {
  const t = useLidText();
  const { format } = useHouse();
  const { draft, change } = useDraft(
    draftOf(list),
    { ticked: [] as string[], typed: '', note: '' },
    { rows: { ticked: '' } },
  );
  const codes = codesTyped(draft.typed);
  const isSlip = codes.includes(null);
  const loose = due.filter(({ id, code }) => draft.ticked.includes(id) || codes.includes(code));
  const held = due.length - loose.length;
  // Of jars that are not due yet; one that is clearly loose may be said of them too.
  const others = [...new Set(codes)].flatMap((code) =>
    code === null || loose.some((lid) => lid.code === code) ? [] : code,
  );
  const looseCount = loose.length + others.length;
  const problems = problemsOf(answering.error);
  const send = () => {
    if (isSlip) return;
    answering.mutate({
      ...{ of, containerIds: due.map(({ id }) => id), note: draft.note },
      looseCodes: [...loose.map(({ code }) => code), ...others],
    });
  };
  const tick = (id: string, isOn: boolean) =>
    change({ ticked: isOn ? [...draft.ticked, id] : draft.ticked.filter((one) => one !== id) });
  return (
    <NextStep title={t.due}>
      <p>{t.how}</p>
      <Form onSend={send}>
        <fieldset className="looks">
          <legend>{t.loosePick}</legend>
          <Searched
            items={due}
            wordsOf={(lid) => `${lid.spelled} ${lid.code} ${nameOf(lid, { t, format, isStore: true })}`}
          >
            {(shown) =>
              shown.map((lid) => (
                <Check
                  key={lid.id}
                  label={`${lid.spelled} · ${nameOf(lid, { t, format, isStore: of === 'common' })} · ${t.closedAt(format.instant(lid.closedAt))}`}
                  isOn={draft.ticked.includes(lid.id)}
                  onChange={(isOn) => tick(lid.id, isOn)}
                />
              ))
            }
          </Searched>
        </fieldset>
        <Field
          label={t.looseCodes}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          value={draft.typed}
          onChange={(event) => change({ typed: event.target.value })}
          problem={
            isSlip
              ? t.isNoCode
              : Object.entries(problems).find(([field]) => field.startsWith('looseCodes'))?.[1]
          }
        />
        <Field label={t.note} value={draft.note} onChange={(event) => change({ note: event.target.value })} />
        <p>{t.answerSays(looseCount)}</p>
        <ProblemSaid error={answering.error} />
        <button type="submit" className="btn go" disabled={answering.isPending || isSlip}>
          {looseCount === 0
            ? t.allHeld(held)
            : held === 0
              ? t.noneHeld(looseCount)
              : t.someHeld(held, looseCount)}
        </button>
      </Form>
    </NextStep>
  );
}
