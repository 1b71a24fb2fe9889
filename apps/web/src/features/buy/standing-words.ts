import type { Catalogue } from '../../text/en/core.ts';
import type { Formats } from '../../text/format.ts';
import { type LineFacts, sacksOf } from './line-facts.ts';

/** "Wheat stands at 880 lb: 17 bags are full and bag 18 lacks 20 lb." */
export function standingWords(
  t: Catalogue,
  format: Formats,
  { food, facts }: { food: string; facts: LineFacts },
) {
  const { full, lackUnits } = sacksOf(facts.standingUnits, facts.bagUnits);
  const say = (units: number) => `${format.count(units)} ${facts.unit}`;
  if (facts.standingUnits === 0) return t.standsEmpty(food, say(facts.bagUnits));
  return lackUnits === 0
    ? t.standsFull(food, say(facts.standingUnits), full)
    : t.stands(food, { standing: say(facts.standingUnits), full, lack: say(lackUnits) });
}
