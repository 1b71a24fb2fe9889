import { useText } from '../../text/taste.ts';
import { useEquipmentText } from './words.ts';

/** What must be cleaned off before one's own food goes in. */
export function LeftBehind({ allergens }: { allergens: readonly string[] }) {
  const t = useText();
  const words = useEquipmentText();
  if (allergens.length === 0) return null;
  const names: Readonly<Record<string, string>> = { ...t.allergens, gluten: t.gluten };
  return (
    <p className="said watch-said">
      {words.leftBehind(allergens.map((one) => names[one] ?? one).join(', '))}
    </p>
  );
}
