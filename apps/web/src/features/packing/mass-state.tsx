import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import type { LogBody } from './queries.ts';
import { usePackingText } from './words.ts';

/** Whether every gram of the day is accounted for; what a signature booked as dust is. */
export function MassState({ body }: { body: LogBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { unaccountedGrams } = body.mass;
  const grams = format.count(Math.abs(unaccountedGrams));
  // What is not weighed back counts as the book has it, so nothing can be missing of it yet.
  const unweighed = body.signedAt === null ? body.bags.filter(({ isWeighed }) => !isWeighed).length : 0;
  if (unaccountedGrams === 0 && unweighed > 0) return <State kind="watch" word={t.toWeigh(unweighed)} />;
  if (unaccountedGrams === 0) return <State kind="well" word={t.balances} />;
  if (body.signedAt !== null) return <State kind="well" word={t.dust(grams)} />;
  return <State kind="watch" word={t.missing(grams, unaccountedGrams > 0)} />;
}
