import { Problem } from '../../../platform/problem.ts';
import { presentYear } from '../../gift/present.ts';
import { readYear } from '../../gift/use-cases.ts';
import { facts, table, text } from '../content.ts';
import { type Desk, foodOf, type MadePaper, subject } from './making.ts';

/** What pantries accepted of one household in a year, for its own records; an estimate, and no figure for taxes. */
export async function makeGiftYear({ context, formats }: Desk, year: number | undefined): Promise<MadePaper> {
  const { householdId } = context.actor;
  if (householdId === null) throw new Problem('household-needed');
  const { year: of, own, ownGifts, factors } = presentYear(await readYear(context, { year }));
  const { gift: words, total, food } = formats.words;
  const content = {
    about: [words.yearOf(of)],
    blocks: [
      {
        kind: 'lead',
        before: words.yearLead,
        strong: formats.both(own.grams),
        after: words.meals(formats.count(own.meals)),
      } as const,
      ...(ownGifts.length === 0
        ? [text(words.yearNothing)]
        : [
            table(
              [{ name: words.pantry, isKey: true }, { name: food }, { name: words.mass, isNumber: true }],
              [
                ...ownGifts.map((gift) => ({
                  cells: [gift.pantry, foodOf(gift, formats), formats.bothLines(gift.grams)],
                })),
                { kind: 'sum' as const, cells: [total, '', formats.bothLines(own.grams)] },
              ],
            ),
          ]),
      ...(own.valueMinorUnits === null
        ? []
        : [
            facts([
              { name: words.worth, value: `${formats.money(own.valueMinorUnits)} ${formats.currency}` },
            ]),
          ]),
      text(words.estimates(factors.gramsPerMeal, formats.money(factors.minorUnitsPerPound))),
    ],
  };
  return { subject: subject('gift-year', { householdId, detail: String(of) }), contentWith: () => content };
}
