import { SMALL_TESTS, type SmallTest } from '@sheafbook/keeping';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { inside, type Looks } from './queries.ts';
import { useInspectionText } from './words.ts';

const tests = inside.containers[':container']['small-tests'];
type Wish = InferRequestType<typeof tests.$post>['json'];

/** A few seeds laid to sprout, a loaf, a pot of beans: what they showed of this lot, and what that tells. */
export function SmallTests({ container, tests: done }: Pick<Looks, 'container' | 'tests'>) {
  const words = useInspectionText();
  const { format } = useHouse();
  return (
    <section>
      <h2>{words.smallTests}</h2>
      <p>{words.smallTestsWords}</p>
      <ul className="list">
        {done.map(({ id, kind, testedOn, seeds, note, tells }) => (
          <li key={id}>
            <span>
              <b>{words.tests[kind]}</b> {format.day(testedOn)}
              {seeds === null ? null : `: ${words.sprouted(seeds.sprouted, seeds.laid, seeds.percent)}`}
              <span className="soft block">{[note, tells[format.language]].filter(Boolean).join(' · ')}</span>
            </span>
          </li>
        ))}
      </ul>
      {container.grams === 0 ? null : <TestForm key={done.length} container={container} />}
    </section>
  );
}

const count = (text: string) => (/^\d{1,5}$/.test(text.trim()) ? Number(text) : undefined);

function TestForm({ container }: Pick<Looks, 'container'>) {
  const words = useInspectionText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { kind, typed },
    change,
    reset,
  } = useDraft(`small-test.${container.id}`, {
    kind: 'sprout' as SmallTest,
    typed: { laid: '', sprouted: '', note: '' },
  });
  const [isAsked, setIsAsked] = useState(false);
  const [laid, sprouted] = [count(typed.laid), count(typed.sprouted)];
  const isCounted = laid !== undefined && laid > 0 && sprouted !== undefined && sprouted <= laid;
  const saving = useMutation({
    mutationFn: (json: Wish) =>
      askOnce(`test.${container.id}`, json, (headers) =>
        tests.$post({ param: { storehouse, container: container.id }, json }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['inspections'] });
    },
  });
  const problems = problemsOf(saving.error);
  const text = (name: keyof typeof typed, label: string, problem?: string) => (
    <Field
      label={label}
      inputMode={name === 'note' ? 'text' : 'numeric'}
      value={typed[name]}
      onChange={(event) => change({ typed: { ...typed, [name]: event.target.value } })}
      problem={problem}
    />
  );
  const isSprout = kind === 'sprout';
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        const { note } = typed;
        if (isSprout && isCounted) saving.mutate({ kind, seeds: { laid, sprouted }, note });
        if (!isSprout && note.trim() !== '') saving.mutate({ kind, seeds: null, note });
      }}
    >
      <Choice
        label={words.whichTest}
        value={kind}
        options={SMALL_TESTS.map((value) => ({ value, name: words.tests[value] }))}
        onChange={(value) => change({ kind: value as SmallTest })}
      />
      {isSprout ? (
        <div className="pair">
          {text('laid', words.laid, isAsked && !isCounted ? words.seedsProblem : problems.seeds)}
          {text('sprouted', words.sproutedCount)}
        </div>
      ) : null}
      {text(
        'note',
        isSprout ? words.note : words.howItTurnedOut,
        isAsked && !isSprout && typed.note.trim() === '' ? words.turnedOutNeeded : problems.note,
      )}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <button type="submit" className="btn" disabled={saving.isPending}>
        {words.writeTest}
      </button>
    </Form>
  );
}
