import {
  compareFractions,
  type Fraction,
  floorFraction,
  fraction,
  subtractFractions,
} from '@sheafbook/units';
import type { SplitAward, SplitRule } from './split-rules-terms.ts';

/** What the sentence under a split is made of. Units: as the claims. Errors: none. */
export type SplitFacts = {
  readonly rule: SplitRule;
  readonly availableUnits: number;
  readonly stepUnits: number;
  readonly awards: readonly SplitAward[];
  readonly surplusUnits: number;
};

/** The languages that a split is explained in. Units: none. Errors: none. */
export type SplitLanguage = 'en' | 'es';

/**
 * Says in words how a delivery was divided, for the split sheet. Need-first names the rule only: coverage stays
 * private, so no level of it appears here.
 * Units: bare numbers in the claims' unit. Errors: none.
 */
export function splitSentence(facts: SplitFacts, language: SplitLanguage = 'en'): string {
  const words = WORDS[language];
  const claimedUnits = facts.awards.reduce((sum, award) => sum + award.claimUnits, 0);
  const { awards, stepUnits, surplusUnits } = facts;
  if (facts.availableUnits >= claimedUnits) {
    const left = surplusUnits === 0 ? '' : words.leftOver(surplusUnits);
    return join([words.plenty(claimedUnits), left]);
  }
  const divided = dividedUnits(facts);
  const rounding = awards.some((award) => award.gotSpareUnit) ? words.rounding(stepUnits) : '';
  const surplus = surplusUnits === 0 ? '' : words.noWholeStep(surplusUnits, stepUnits);
  const figures = {
    divided,
    claimedUnits,
    part: fractionText(fraction(divided, claimedUnits)),
    mostAward: fractionText(largest(awards.map((award) => award.exactUnits))),
    mostLoss: fractionText(largest(awards.map(lossOf))),
  };
  return join([words.rules[facts.rule](figures), rounding, surplus]);
}

const join = (sentences: readonly string[]): string => sentences.filter((words) => words !== '').join(' ');

type Figures = {
  readonly divided: number;
  readonly claimedUnits: number;
  readonly part: string;
  readonly mostAward: string;
  readonly mostLoss: string;
};

type Words = {
  readonly rules: Readonly<Record<SplitRule, (figures: Figures) => string>>;
  readonly plenty: (claimedUnits: number) => string;
  readonly leftOver: (surplusUnits: number) => string;
  readonly rounding: (stepUnits: number) => string;
  readonly noWholeStep: (surplusUnits: number, stepUnits: number) => string;
};

const WORDS: Readonly<Record<SplitLanguage, Words>> = {
  en: {
    rules: {
      proportional: ({ divided, claimedUnits, part }) =>
        `Proportional: ${divided} to divide among ${claimedUnits} claimed, so each gets ${part} of its claim.`,
      'equal-awards': ({ mostAward }) =>
        `Equal awards: each gets its claim or ${mostAward}, whichever is less.`,
      'equal-losses': ({ mostLoss }) =>
        `Equal losses: each goes without ${mostLoss} of its claim, or without all of it if it claimed less.`,
      'first-come': () => 'First come: claims are met in the order they were pledged until nothing is left.',
      'need-first': () =>
        'Need first: those whose stock would run out soonest are filled first; those who eat none of it come last.',
      'rotation-of-loss': ({ divided, claimedUnits }) =>
        `Rotation of loss: the missing ${claimedUnits - divided} is borne in proportion to claims, ` +
        'set right by what each has borne before.',
    },
    plenty: (claimedUnits) => `All ${claimedUnits} claimed are there, so every claim is met in full.`,
    leftOver: (surplusUnits) => `Left for the common stock: ${surplusUnits}.`,
    rounding: (stepUnits) =>
      `Shares are rounded down to whole ${stepUnits === 1 ? 'units' : `steps of ${stepUnits}`}; those left over ` +
      'go to the largest remainders, and among equals to the lower seat.',
    noWholeStep: (surplusUnits, stepUnits) =>
      `Left for the common stock: ${surplusUnits}, which is no whole step of ${stepUnits} that a claim has room for.`,
  },
  es: {
    rules: {
      proportional: ({ divided, claimedUnits, part }) =>
        `Proporcional: ${divided} para repartir entre ${claimedUnits} reclamados; cada hogar recibe ${part} de lo suyo.`,
      'equal-awards': ({ mostAward }) =>
        `Partes iguales: cada hogar recibe lo que reclama o ${mostAward}, lo que sea menos.`,
      'equal-losses': ({ mostLoss }) =>
        `Pérdidas iguales: a cada hogar le faltan ${mostLoss} de lo que reclama, o todo si reclamó menos.`,
      'first-come': () =>
        'Por orden de llegada: se atiende en el orden de las promesas hasta que no queda nada.',
      'need-first': () =>
        'Primero la necesidad: se sirve antes a quien más pronto se quedaría sin existencias; quien no come de esto va al final.',
      'rotation-of-loss': ({ divided, claimedUnits }) =>
        `Rotación de la pérdida: los ${claimedUnits - divided} que faltan se soportan en proporción a lo reclamado, ` +
        'corregidos por lo que cada hogar ha soportado antes.',
    },
    plenty: (claimedUnits) => `Están los ${claimedUnits} reclamados, así que todo se atiende por entero.`,
    leftOver: (surplusUnits) => `Quedan para la reserva común: ${surplusUnits}.`,
    rounding: (stepUnits) =>
      `Las partes se redondean hacia abajo a ${stepUnits === 1 ? 'unidades enteras' : `pasos enteros de ${stepUnits}`}; ` +
      'lo que sobra va a los mayores restos y, entre iguales, al puesto menor.',
    noWholeStep: (surplusUnits, stepUnits) =>
      `Quedan para la reserva común: ${surplusUnits}, que no llegan a un paso entero de ${stepUnits} que quepa en lo reclamado.`,
  },
};

/** What the rule itself divided: whole steps only. */
function dividedUnits({ availableUnits, stepUnits }: SplitFacts): number {
  return availableUnits - (availableUnits % stepUnits);
}

function lossOf(award: SplitAward): Fraction {
  return subtractFractions(fraction(award.claimUnits), award.exactUnits);
}

function largest(values: readonly Fraction[]): Fraction {
  return values.reduce((most, value) => (compareFractions(value, most) > 0 ? value : most), fraction(0));
}

function fractionText(value: Fraction): string {
  const whole = floorFraction(value);
  const rest = subtractFractions(value, fraction(whole));
  const restText = rest.numerator === 0n ? '' : `${rest.numerator}/${rest.denominator}`;
  if (restText === '') return String(whole);
  return whole === 0n ? restText : `${whole} ${restText}`;
}
