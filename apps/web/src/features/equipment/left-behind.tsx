import { useText } from '../../text/taste.ts';
import type { Booking } from './queries.ts';
import { useEquipmentText } from './words.ts';

type Props = { booking: Pick<Booking, 'leftBehind' | 'isLeftBehindUntold'> };

/** What must be cleaned off before one's own food goes in, or that nobody told what ran before. */
export function LeftBehind({ booking }: Props) {
  const t = useText();
  const words = useEquipmentText();
  const { leftBehind: allergens, isLeftBehindUntold } = booking;
  if (isLeftBehindUntold) return <p className="said watch-said">{words.leftUntold}</p>;
  if (allergens.length === 0) return null;
  const names: Readonly<Record<string, string>> = { ...t.allergens, gluten: t.gluten };
  return (
    <p className="said watch-said">
      {words.leftBehind(allergens.map((one) => names[one] ?? one).join(', '))}
    </p>
  );
}
