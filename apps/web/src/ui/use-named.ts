import { useHouse } from './house.ts';
import { nameIn } from './name-in.ts';

/** The name of a food or kind in the reader's language. */
export function useNamed() {
  const { format } = useHouse();
  return (thing: { readonly nameEn: string; readonly nameEs: string }): string =>
    nameIn(format.language, thing);
}
