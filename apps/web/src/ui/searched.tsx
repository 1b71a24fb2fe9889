import { type ReactNode, useState } from 'react';
import { en } from '../text/en/searched.ts';
import { es } from '../text/es/searched.ts';
import { useWords } from '../text/taste.ts';
import { Field } from './field.tsx';

/** A list that is seen at one look needs no search. */
const AT_ONE_LOOK = 8;
/** Rows of a long list that a phone draws at a time; what follows is searched too, and shown by a button that counts it. */
const AT_A_TIME = 60;

type Props<T> = {
  items: readonly T[];
  /** The words of a row by which it is found. */
  wordsOf: (item: T) => string;
  /** What the field is called, and what is said when nothing is found, where a list has words of its own. */
  find?: string;
  none?: string;
  children: (shown: readonly T[]) => ReactNode;
};

/** A list that grows is searched by its words as soon as it is longer than one look takes in. */
export function Searched<T>({ items, wordsOf, find, none, children }: Props<T>) {
  const words = useWords({ en, es });
  const [wanted, setWanted] = useState('');
  const [most, setMost] = useState(AT_A_TIME);
  if (items.length <= AT_ONE_LOOK) return children(items);
  const sought = wanted.trim().toLowerCase();
  const found = items.filter((item) => wordsOf(item).toLowerCase().includes(sought));
  const shown = found.slice(0, most);
  return (
    <>
      <Field
        label={find ?? words.find}
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
      />
      {shown.length === 0 ? (
        <p className="soft" role="status">
          {none ?? words.none}
        </p>
      ) : (
        children(shown)
      )}
      {found.length > shown.length ? (
        <div className="actions">
          <button type="button" className="btn" onClick={() => setMost(most + AT_A_TIME)}>
            {words.more(found.length - shown.length)}
          </button>
        </div>
      ) : null}
    </>
  );
}
