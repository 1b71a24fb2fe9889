import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { ApiProblem } from '../../api/problem.ts';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { LabelCamera } from '../scan/find-by-label.tsx';
import { type Asked, KINDS, type Kind, type Traced, traceQuery } from './queries.ts';
import { WayPage } from './way.tsx';
import { useTraceText } from './words.ts';

const isKind = (text: string | undefined): text is Kind => KINDS.some((kind) => kind === text);

/** One box for any code, and the whole way of what it names. */
export function TracePage() {
  const words = useTraceText();
  const { storehouse } = useHouse();
  const { code, kind, id, task } = useSearch({ from: '/s/$storehouse/trace' });
  const asked: Asked = {
    ...(isKind(kind) && id !== undefined ? { kind, id } : { code }),
    task: task === 'recall' ? 'recall' : undefined,
  };
  const reading = useQuery(traceQuery({ storehouse }, asked));
  useTitle(words.title);
  const isAsked = asked.id !== undefined || (code ?? '') !== '';
  const refusal = reading.error instanceof ApiProblem ? reading.error.fields[0]?.message : undefined;
  return (
    <>
      {isAsked && reading.data?.way ? null : <h1>{words.ask}</h1>}
      {isAsked && refusal === undefined ? (
        <Loaded reading={reading}>{(traced) => <Found traced={traced} asked={asked} />}</Loaded>
      ) : null}
      <CodeForm key={code ?? ''} typedFirst={code ?? ''} refusal={refusal} />
      {reading.data?.way ? null : (
        <p>
          <Link to="/s/$storehouse/holds" params={{ storehouse }}>
            {words.toHolds}
          </Link>
        </p>
      )}
    </>
  );
}

function CodeForm({ typedFirst, refusal }: { typedFirst: string; refusal: string | undefined }) {
  const words = useTraceText();
  const navigate = useNavigate();
  const { storehouse } = useHouse();
  const [typed, setTyped] = useState(typedFirst);
  const look = (code: string) =>
    void navigate({
      ...{ to: '/s/$storehouse/trace', params: { storehouse } },
      search: code === '' ? {} : { code },
    });
  return (
    <search className="stack">
      <LabelCamera onCode={look} />
      <Form onSend={() => look(typed.trim())}>
        <Field
          label={words.code}
          hint={words.codeHint}
          problem={refusal}
          value={typed}
          autoCapitalize="characters"
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setTyped(event.target.value)}
        />
        <div className="actions">
          <button type="submit" className="btn">
            {words.look}
          </button>
        </div>
      </Form>
    </search>
  );
}

/** The way, or what there is to choose from where one text names several things. */
function Found({ traced, asked }: { traced: Traced; asked: Asked }) {
  const words = useTraceText();
  const { storehouse } = useHouse();
  if (traced.way) return <WayPage way={traced.way} />;
  const { task } = asked;
  return (
    <section>
      <h2>{words.several(traced.found.length, asked.code ?? '')}</h2>
      <ul className="list">
        {traced.found.map(({ kind, id, label, about }) => (
          <li key={id}>
            <Link
              to="/s/$storehouse/trace"
              params={{ storehouse }}
              search={{ kind, id, ...(task === undefined ? {} : { task }) }}
            >
              {words.named(words.kinds[kind], label, about)}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
