import type { presentLabel } from '../../label/present.ts';
import { type Formats, together } from '../formats.ts';
import type { DrawnLabel } from '../layout/draw-labels.ts';
import { allergenOf, nameOf, saysMet } from './making.ts';

type Label = ReturnType<typeof presentLabel>;

/** A label in words: the figures of the API, the food large, what could hurt someone before what is nice to know. */
export function makeLabel(label: Label, formats: Formats, storehouse: string): DrawnLabel {
  const { words, language } = formats;
  const say = words.label;
  const { treatment, eatFirst, lot, owner } = label;
  return {
    code: label.code,
    spelled: label.spelled,
    title: nameOf(label.food, formats),
    lines: [
      // A label made ahead stands on a container that is still to be weighed.
      label.grams === 0 ? say.netByPen : formats.labelMass(label.grams),
      say.packed(
        formats.day(label.packedOn),
        treatment === null ? say.untold : treatment.names[language].toLowerCase(),
      ),
      sayAllergens(label, formats),
      say.ownerAndLot(together(words.seatName(owner.name, owner.seat)), lot),
      [
        eatFirst === null ? say.eatFirstUnknown : say.eatFirst(eatFirst.year, eatFirst.isEstimate),
        label.offerYear === null ? '' : say.offer(label.offerYear),
        say.inspectBy(formats.day(label.inspectByOn)),
      ]
        .filter(Boolean)
        .join(' · '),
      label.isOxygenFree ? say.oxygenFreeCaution : say.caution,
      say.packer(storehouse),
    ],
  };
}

function sayAllergens({ allergens, gluten, metOnLine }: Label, formats: Formats): string {
  const { words } = formats;
  const say = words.label;
  const names = [...allergens, ...(gluten === 'yes' ? ['gluten'] : [])].map((code) =>
    allergenOf(code, words),
  );
  return [
    names.length === 0 ? say.noAllergens : say.contains(names.join(', ')),
    ...(gluten === 'cross-contact' ? [say.glutenMayBe] : []),
    saysMet({ metOnLine }, formats),
  ]
    .filter(Boolean)
    .join(' ');
}
