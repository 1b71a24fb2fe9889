import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { moistureStart } from '../moisture/moisture-typed.ts';
import type { LoggedBag } from './queries.ts';
import { keyOfBag } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

/** One of the day's bags and what is typed of it, kept together, so that a figure never comes back at another's bag. */
export function useBags(name: string, bags: readonly LoggedBag[]) {
  const t = usePackingText();
  const { format } = useHouse();
  const { draft, change, reset } = useDraft(
    name,
    { chosen: '', typed: '', because: '', pen: '', was: null as string | null, is: '' },
    { rows: { was: '' } },
  );
  const { chosen, typed, because, pen, is } = draft;
  const bag = bags.find((one) => keyOfBag(one) === chosen) ?? (bags[0] as LoggedBag);
  const options = bags.map((one) => ({
    value: keyOfBag(one),
    name: t.bagOf(nameIn(format.language, one.food), one.household, one.bagNo),
  }));
  // The bag’s last reading stands there until somebody types another, or takes it out.
  const moisture = { was: draft.was ?? moistureStart(bag.wasTenths ?? bag.moistureTenthsPercent).was, is };
  return { bag, options, typed, because, pen, moisture, change, reset };
}
