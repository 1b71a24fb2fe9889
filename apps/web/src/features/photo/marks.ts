import { actingHere } from '../../api/acting.ts';
import { noteOutside } from '../../api/outside.ts';

type Whose = { readonly storehouse: string; readonly personId: string };
/** A photo that this person took and the server does not have; why the book refused it, if it did. */
export type Mark = { readonly id: string; readonly refusal: string | null };

/**
 * Where this browser notes whose photos wait, each person's own, and apart for whom they act for: the photos themselves are too
 * large to stand there.
 */
function placeOf({ storehouse, personId }: Whose): string {
  const acting = actingHere();
  return `sheafbook.photos.${storehouse}.${personId}${acting ? `.${acting.household}` : ''}`;
}

export const marksOf = (whose: Whose): readonly Mark[] =>
  JSON.parse(localStorage.getItem(placeOf(whose)) ?? '[]') as Mark[];

function keep(whose: Whose, marks: readonly Mark[]): void {
  if (marks.length === 0) localStorage.removeItem(placeOf(whose));
  else localStorage.setItem(placeOf(whose), JSON.stringify(marks));
  noteOutside();
}

const others = (whose: Whose, id: string) => marksOf(whose).filter((mark) => mark.id !== id);

export const markWaiting = (whose: Whose, id: string, refusal: string | null = null): void =>
  keep(whose, [...others(whose, id), { id, refusal }]);

export function unmark(whose: Whose, id: string): void {
  if (marksOf(whose).some((mark) => mark.id === id)) keep(whose, others(whose, id));
}
