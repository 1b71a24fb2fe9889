import type { CautionCode } from './caution.ts';

/** What an inspection can find. Units: none. Errors: none. */
export const FINDINGS = [
  'nothing-wrong',
  'bulge-hiss-spurt',
  'surface-rust',
  'pitting-or-seam-rust',
  'leak',
  'loose-seal',
  'absorber-hard',
  'rancid-smell',
  'chemical-smell',
  'live-insects',
  'webbing',
  'wet-or-caked',
  'mould',
  'rodent-marks',
  'dark-colour',
  'stale-taste',
] as const;

/** One of `FINDINGS`. Units: none. Errors: none. */
export type Finding = (typeof FINDINGS)[number];

/** What may become of food that was looked at, from best to worst. Units: none. Errors: none. */
export const OUTCOMES = [
  'table',
  'kitchen-soon',
  'freeze-and-repack',
  'animals',
  'compost',
  'discard',
] as const;

/** One of `OUTCOMES`. Units: none. Errors: none. */
export type Outcome = (typeof OUTCOMES)[number];

type Rule = {
  readonly best: Outcome;
  readonly watch: 'none' | 'lot' | 'window' | 'place';
  readonly holds: boolean;
  readonly caution: CautionCode | null;
};

const rule = (
  best: Outcome,
  watch: Rule['watch'] = 'none',
  caution: CautionCode | null = null,
  holds = false,
): Rule => {
  return { best, watch, holds, caution };
};

/** The best outcome each finding allows. Units: none. Errors: none. Source: common practice, no source; FDA for mould and rodents. */
export const INSPECTION_RULES: Readonly<Record<Finding, Rule>> = {
  'nothing-wrong': rule('table'),
  'bulge-hiss-spurt': rule('discard', 'window', 'oxygen-free-moist', true),
  'surface-rust': rule('table'),
  'pitting-or-seam-rust': rule('discard', 'lot'),
  leak: rule('discard', 'window', null, true),
  'loose-seal': rule('kitchen-soon', 'lot'),
  'absorber-hard': rule('table'),
  'rancid-smell': rule('animals', 'lot'),
  'chemical-smell': rule('discard', 'window', 'unknown-history', true),
  'live-insects': rule('freeze-and-repack', 'place'),
  webbing: rule('animals', 'place'),
  'wet-or-caked': rule('discard', 'lot', 'rodent-mould'),
  mould: rule('discard', 'lot', 'rodent-mould'),
  'rodent-marks': rule('discard', 'place', 'rodent-mould'),
  'dark-colour': rule('table'),
  'stale-taste': rule('animals'),
};

/**
 * What may become of food with these findings: the worst finding decides, and some findings set what stood beside it on
 * watch or on hold.
 * Units: none. Errors: none. An empty list is no inspection and may not go to anybody's table: it is `discard`.
 */
export function judgeInspection(findings: readonly Finding[]): {
  readonly best: Outcome;
  readonly allowed: readonly Outcome[];
  readonly watch: readonly Rule['watch'][];
  readonly holds: boolean;
  readonly cautions: readonly CautionCode[];
} {
  const rules = findings.map((finding) => INSPECTION_RULES[finding]);
  const worst = Math.max(
    ...rules.map(({ best }) => OUTCOMES.indexOf(best)),
    findings.length === 0 ? OUTCOMES.length - 1 : 0,
  );
  const best = OUTCOMES[worst] ?? 'discard';
  const isForbiddenToAll = findings.some((finding) => ONLY_DISCARD.includes(finding));
  const allowed = isForbiddenToAll ? (['discard'] as const) : OUTCOMES.slice(worst);
  const watch = [...new Set(rules.map((row) => row.watch))].filter((scope) => scope !== 'none');
  const cautions = [...new Set(rules.flatMap(({ caution }) => caution ?? []))];
  return { best, allowed, watch, holds: rules.some(({ holds }) => holds), cautions };
}

// Mould, bulge, rodent, chemical smell, wet: never to people, animals or compost.
const ONLY_DISCARD: readonly Finding[] = [
  'bulge-hiss-spurt',
  'leak',
  'chemical-smell',
  'wet-or-caked',
  'mould',
  'rodent-marks',
];

/**
 * How many sealed containers of a lot to look at in a year.
 * Units: containers: ⌈√n⌉. Errors: none. Source: common practice, no source.
 */
export const sampleOf = (containers: number) => Math.ceil(Math.sqrt(Math.max(0, containers)));

/**
 * Whether insect-damaged kernels fail a lot: 32 or more in 100 g make US Sample grade and are FDA's action level. What lies
 * between 31 and 32 counts as failing, since no source says how to round it.
 * Units: kernels, whole grams of sample. Errors: none.
 * Source: 7 CFR 810.2204; FDA CPG 578.300.
 */
export const isInsectDamaged = (kernels: number, sampleGrams: number) => kernels * 100 > 31 * sampleGrams;
