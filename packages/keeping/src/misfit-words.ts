import type { Words } from '@sheafbook/foods';
import type { Misfit } from './treatment-fit.ts';

/** Why a treatment does not suit, as it is said to a person. Units: none. Errors: none. Source: the rows of `TREATMENTS`. */
export const MISFIT_WORDS: Readonly<Record<Misfit, Words>> = {
  'dry-ice-in-metal': {
    en: 'Dry ice is never put in a metal can: its gas can burst it.',
    es: 'El hielo seco nunca se pone en una lata de metal: su gas puede reventarla.',
  },
  'gas-stays-in-glass': {
    en: 'The gas of dry ice has no way out of a rigid jar or bottle and can burst it.',
    es: 'El gas del hielo seco no sale de un frasco o una botella y puede reventarlos.',
  },
  'barrier-leaks': {
    en: 'The wall of this container lets air through, so this would do nothing that lasts.',
    es: 'La pared de este envase deja pasar el aire, así que no serviría por mucho tiempo.',
  },
  'barrier-unknown': {
    en: 'Nobody has said what this container is made of, so nobody knows whether air stays out.',
    es: 'Nadie ha dicho de qué es este envase, así que no se sabe si deja pasar el aire.',
  },
  'sets-hard': {
    en: 'Sugar and salt set hard with an absorber and gain nothing.',
    es: 'El azúcar y la sal se endurecen con un absorbedor y no ganan nada.',
  },
  'gains-nothing': {
    en: 'Sugar, salt and honey keep as they are, dry and shut: this would gain nothing.',
    es: 'El azúcar, la sal y la miel se conservan tal cual, secos y cerrados: no ganarían nada.',
  },
  'fat-or-meal-without-oxygen': {
    en: 'Fatty or milled food is not packed without oxygen: it can be unsafe and turns rancid all the same.',
    es: 'Lo graso o molido no se envasa sin oxígeno: puede ser peligroso y se enrancia igual.',
  },
  'class-unknown': {
    en: 'Nobody has said how this food keeps, so it is not packed without oxygen.',
    es: 'Nadie ha dicho cómo se conserva este alimento, así que no se envasa sin oxígeno.',
  },
  'too-moist-without-oxygen': {
    en: 'With more than 10 % moisture, food without oxygen can grow botulism. Dry it first.',
    es: 'Con más de 10 % de humedad, lo envasado sin oxígeno puede criar botulismo. Séquelo antes.',
  },
  'moisture-unknown': {
    en: 'Nobody has measured its moisture. Above 10 % it can grow botulism without oxygen: measure it first.',
    es: 'Nadie ha medido su humedad. Con más de 10 % puede criar botulismo sin oxígeno: mídala antes.',
  },
  'more-than-it-treats': {
    en: 'It is more than this way treats at a time: divide it.',
    es: 'Es más de lo que esta manera trata de una vez: divídalo.',
  },
  'not-recommended': {
    en: 'An extension page does not recommend it at home; the label of the product governs.',
    es: 'Una página de extensión no lo recomienda en casa; manda la etiqueta del producto.',
  },
};
