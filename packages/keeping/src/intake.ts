import type { Words } from '@sheafbook/foods';

/**
 * What is asked of stock that was not bought through the store, and the answers there are.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export const INTAKE_ANSWERS = {
  /** Who says when it was packed. */
  packedBy: ['paper', 'memory', 'unknown'],
  packedHow: ['bought-sealed', 'home-packed', 'unknown'],
  /** Where it stood by the summers. */
  summers: ['cellar', 'kitchen', 'garage', 'unknown'],
  /** Whether it ever stood wet, or near fuel, paint or poison. */
  harm: ['never', 'wet', 'chemicals', 'unknown'],
  pests: ['no', 'yes', 'unknown'],
  opened: ['no', 'yes', 'unknown'],
} as const;

/** A question of the interview. Units: none. Errors: none. */
export type IntakeQuestion = keyof typeof INTAKE_ANSWERS;

/** The answers of one interview. Units: none. Errors: none. */
export type IntakeAnswers = {
  readonly [Question in IntakeQuestion]: (typeof INTAKE_ANSWERS)[Question][number];
};

/** Why stock is refused or taken in with care. Units: none. Errors: none. */
export type IntakeReason =
  | 'near-chemicals'
  | 'was-wet'
  | 'packed-unknown'
  | 'place-unknown'
  | 'harm-unknown'
  | 'pests-seen'
  | 'was-opened';

/** What an interview comes to. Units: tenths of a degree Celsius. Errors: none. */
export type IntakeJudgement = {
  readonly verdict: 'refused' | 'unknown-history' | 'known';
  readonly reasons: readonly IntakeReason[];
  /** How warm it is taken to have stood; null where nobody knows. */
  readonly toldTenths: number | null;
};

/** Starters for a place that was told of and not read. Source: common practice, no source. */
const TOLD_TENTHS = { cellar: 150, kitchen: 220, garage: 280, unknown: null } as const;

/**
 * Whether stock may come in, and whether its history counts as known: near chemicals never; an "unknown" on who packed it, on
 * where it stood or on what it stood near makes the whole history unknown, and so does having been wet.
 * Units: as `IntakeJudgement`. Errors: none. Source: common practice, no source.
 */
export function judgeIntake(answers: IntakeAnswers): IntakeJudgement {
  const reasons = REASONS.filter(([question, answer]) => answers[question] === answer).map(
    ([, , reason]) => reason,
  );
  const isUnknown = reasons.some((reason) => UNKNOWN_BY.includes(reason));
  const isRefused = answers.harm === 'chemicals';
  return {
    verdict: isRefused ? 'refused' : isUnknown ? 'unknown-history' : 'known',
    reasons,
    toldTenths: isUnknown ? null : TOLD_TENTHS[answers.summers],
  };
}

const REASONS: readonly (readonly [IntakeQuestion, string, IntakeReason])[] = [
  ['harm', 'chemicals', 'near-chemicals'],
  ['harm', 'wet', 'was-wet'],
  ['packedBy', 'unknown', 'packed-unknown'],
  ['summers', 'unknown', 'place-unknown'],
  ['harm', 'unknown', 'harm-unknown'],
  ['pests', 'yes', 'pests-seen'],
  ['opened', 'yes', 'was-opened'],
];
const UNKNOWN_BY: readonly IntakeReason[] = ['was-wet', 'packed-unknown', 'place-unknown', 'harm-unknown'];

/** Each reason in words. Units: none. Errors: none. */
export const INTAKE_WORDS: Readonly<Record<IntakeReason, Words>> = {
  'near-chemicals': {
    en: 'It stood near fuel, paint or poison. Food takes up vapours, and nothing takes them out: it is not taken in.',
    es: 'Estuvo cerca de combustible, pintura o veneno. El alimento absorbe vapores y nada los quita: no se recibe.',
  },
  'was-wet': {
    en: 'It was wet once. Look at each container before anybody eats from it.',
    es: 'Estuvo mojado alguna vez. Revise cada envase antes de que alguien coma de él.',
  },
  'packed-unknown': {
    en: 'Nobody knows who packed it or when, so it is taken as old.',
    es: 'Nadie sabe quién lo envasó ni cuándo, así que se toma como viejo.',
  },
  'place-unknown': {
    en: 'Nobody knows where it stood, so it is taken to have stood warm.',
    es: 'Nadie sabe dónde estuvo, así que se supone que estuvo al calor.',
  },
  'harm-unknown': {
    en: 'Nobody knows what it stood near. Look at it and smell it before anybody eats from it.',
    es: 'Nadie sabe cerca de qué estuvo. Mírelo y huélalo antes de que alguien coma de él.',
  },
  'pests-seen': {
    en: 'Rodents or insects were seen. Keep it apart until each container was looked at.',
    es: 'Se vieron roedores o insectos. Téngalo aparte hasta revisar cada envase.',
  },
  'was-opened': {
    en: 'Some of it was opened before. What is open goes to no pantry.',
    es: 'Parte ya estuvo abierta. Lo abierto no va a ningún banco de alimentos.',
  },
};
