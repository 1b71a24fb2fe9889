import { type ReactNode, useState } from 'react';
import { en } from '../text/en/searched.ts';
import { es } from '../text/es/searched.ts';
import { useWords } from '../text/taste.ts';
import { Field } from './field.tsx';

/** A list that is seen at one look needs no search. */
const AT_ONE_LOOK = 8;

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
  if (items.length <= AT_ONE_LOOK) return children(items);
  const sought = wanted.trim().toLowerCase();
  const shown = items.filter((item) => wordsOf(item).toLowerCase().includes(sought));
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
    </>
  );
}
