import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import type { EntriesOf } from './queries.ts';
import { useBooksText } from './words.ts';

/** What is looked for in the whole journal stands in the page's address, so that it can be sent on or gone back to. */
export function JournalSearch({ of }: { of: EntriesOf }) {
  const t = useBooksText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  const [words, setWords] = useState(of.words ?? '');
  const look = (part: EntriesOf) => {
    const search = Object.fromEntries(Object.entries({ ...of, ...part }).filter(([, value]) => value !== ''));
    return navigate({ to: '/s/$storehouse/books/entries', params: { storehouse }, search, replace: true });
  };
  const names = [...new Set(Object.values(t.whats))]; // two kinds may bear one name
  const whats = names
    .map((name) => ({ value: kindsCalled(name, t.whats), name }))
    .toSorted((a, b) => a.name.localeCompare(b.name));
  return (
    <Form onSend={() => void look({ words: words.trim() })}>
      <Field
        label={t.findEntry}
        type="search"
        value={words}
        onChange={(event) => {
          setWords(event.target.value);
          if (event.target.value === '') void look({ words: '' });
        }}
      />
      <div className="find-row">
        <Choice
          label={t.what}
          value={of.what ?? ''}
          options={[{ value: '', name: t.anyKind }, ...whats]}
          onChange={(what) => void look({ what })}
        />
        <Field
          label={t.fromOn}
          type="date"
          value={of.fromOn ?? ''}
          onChange={(event) => void look({ fromOn: event.target.value })}
        />
        <Field
          label={t.toOn}
          type="date"
          value={of.toOn ?? ''}
          onChange={(event) => void look({ toOn: event.target.value })}
        />
      </div>
      <div className="actions">
        <button type="submit" className="btn">
          {t.find}
        </button>
        <a className="btn quiet" href={`/api/storehouses/${storehouse}/entries?${csvOf(of)}`} download>
          {t.download}
        </a>
      </div>
    </Form>
  );
}

const kindsCalled = (wanted: string, whats: Readonly<Record<string, string>>) =>
  Object.keys(whats)
    .filter((kind) => whats[kind] === wanted)
    .join(',');

const csvOf = (of: EntriesOf) => new URLSearchParams({ ...of, format: 'csv' }).toString();
