import type { ImportWords } from '../../text/en/import.ts';
import type { Formats } from '../../text/format.ts';
import type { TrialRow } from './queries.ts';

/** What a row would do, in words and figures; nothing for a row with an error. */
export function sayEffect(t: ImportWords, effect: TrialRow['effect'], format: Formats): string {
  if (effect === null) return '';
  const text = (key: string) => String(effect[key] ?? '');
  const money = (key: string) => format.money(Math.abs(Number(effect[key] ?? 0)));
  switch (effect.code) {
    case 'new-household':
      return t.effects.household(text('name'), Number(effect.seat), text('email'));
    case 'new-eater':
      return t.effects.eater(text('name'), text('household'));
    case 'new-food':
      return t.effects.food(text('name'));
    case 'new-equipment':
      return t.effects.equipment(text('name'));
    case 'new-stock':
      return t.effects.stock({
        count: Number(effect.count),
        food: (format.language === 'es' && text('foodEs')) || text('food'),
        mass: format.mass(Number(effect.gramsEach)),
        owner: text('owner'),
      });
    case 'opens':
      return Number(effect.balanceMinorUnits) < 0
        ? t.effects.owed(text('name'), money('balanceMinorUnits'))
        : t.effects.owes(text('name'), money('balanceMinorUnits'));
    case 'there':
      return t.effects.there(text('name'));
    default:
      return t.effects.nothing;
  }
}
