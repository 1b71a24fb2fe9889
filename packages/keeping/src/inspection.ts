import type { CautionCode } from './caution.ts';

/** What an inspection can find. Units: none. Errors: none. */
export const FINDINGS = [
  'nothing-wrong',
  'bulge-hiss-spurt',
  'surface-rust',
  'pitting-or-seam-rust',
  'dented-body',
  'dented-seam',
  'leak',
  'loose-seal',
  'torn-liner',
  'absorber-hard',
  'rancid-smell',
  'sour-or-musty-smell',
  'chemical-smell',
  'live-insects',
  'webbing',
  'insect-damaged-kernels',
  'stones-or-chaff',
  'glass-or-metal',
  'wet-or-caked',
  'mould',
  'rodent-marks',
  'dark-colour',
  'dyed-seed',
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

type Watch = 'none' | 'lot' | 'window' | 'place';
type Rule = {
  readonly best: Outcome;
  readonly watch: Watch;
  readonly holds: boolean;
  readonly caution: CautionCode | null;
  /** Whether it shows from outside, or only once the container is open. */
  readonly shows: 'outside' | 'opened';
};

const rule = (
  best: Outcome,
  watch: Watch = 'none',
  { caution, holds = false }: { caution?: CautionCode; holds?: boolean } = {},
): Rule => ({ best, watch, holds, caution: caution ?? null, shows: 'outside' });

const inside = (...facts: Parameters<typeof rule>): Rule => ({ ...rule(...facts), shows: 'opened' });

const BOTULISM = { caution: 'oxygen-free-moist', holds: true } as const;
const MOULD = { caution: 'rodent-mould' } as const;

/** The best outcome each finding allows. Units: none. Errors: none. Source: common practice, no source; FDA for mould and rodents. */
export const INSPECTION_RULES: Readonly<Record<Finding, Rule>> = {
  'nothing-wrong': rule('table'),
  'bulge-hiss-spurt': rule('discard', 'window', BOTULISM),
  'surface-rust': rule('table'),
  'pitting-or-seam-rust': rule('discard', 'lot'),
  'dented-body': rule('table'),
  'dented-seam': rule('discard'),
  leak: rule('discard', 'window', { holds: true }),
  'loose-seal': rule('kitchen-soon', 'lot'),
  'torn-liner': rule('kitchen-soon'),
  'absorber-hard': inside('table'),
  'rancid-smell': inside('animals', 'lot'),
  'sour-or-musty-smell': inside('discard', 'window', { ...MOULD, holds: true }),
  'chemical-smell': rule('discard', 'window', { caution: 'unknown-history', holds: true }),
  'live-insects': rule('freeze-and-repack', 'place'),
  webbing: rule('animals', 'place'),
  'insect-damaged-kernels': inside('animals', 'lot'),
  'stones-or-chaff': inside('table'),
  'glass-or-metal': inside('discard', 'lot'),
  'wet-or-caked': rule('discard', 'lot', MOULD),
  mould: rule('discard', 'lot', MOULD),
  'rodent-marks': rule('discard', 'place', MOULD),
  'dark-colour': inside('table'),
  'dyed-seed': inside('discard', 'lot', { caution: 'treated-seed', holds: true }),
  'stale-taste': inside('animals'),
};

/** Findings that together are worse than each alone. Source: common practice, no source. */
const WORSE_TOGETHER: readonly (readonly [Finding, Finding])[] = [
  ['loose-seal', 'rancid-smell'], // a loose seal is for the kitchen soon only while the odour is good
  ['loose-seal', 'stale-taste'],
];

/** What an inspection comes to. Units: none. Errors: none. */
export type Judgement = {
  readonly best: Outcome;
  readonly allowed: readonly Outcome[];
  readonly watch: readonly Watch[];
  readonly holds: boolean;
  readonly cautions: readonly CautionCode[];
  /** The findings that leave nothing better. */
  readonly deciding: readonly Finding[];
};

/**
 * What may become of food with these findings: the worst finding decides, and some findings set what stood beside it on
 * watch or on hold.
 * Units: none. Errors: none. An empty list is no inspection and may not go to anybody's table: it is `discard`.
 */
export function judgeInspection(findings: readonly Finding[]): Judgement {
  const rules = findings.map((finding) => INSPECTION_RULES[finding]);
  const together = WORSE_TOGETHER.filter((pair) =>
    pair.every((finding) => findings.includes(finding)),
  ).flat();
  const worst = Math.max(
    ...rules.map(({ best }) => OUTCOMES.indexOf(best)),
    findings.length === 0 || together.length > 0 ? OUTCOMES.length - 1 : 0,
  );
  const best = OUTCOMES[worst] ?? 'discard';
  const allowed = OUTCOMES.slice(worst);
  const watch = [...new Set(rules.map((row) => row.watch))].filter((scope) => scope !== 'none');
  const cautions = [...new Set(rules.flatMap(({ caution }) => caution ?? []))];
  const deciding = findings.filter(
    (finding) => INSPECTION_RULES[finding].best === best || together.includes(finding),
  );
  return { best, allowed, watch, holds: rules.some(({ holds }) => holds), cautions, deciding };
}

/**
 * Whether people may still eat food with this outcome, at once or after it was frozen and packed anew.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export const isForPeople = (outcome: Outcome): boolean => LETS_GO_TO[outcome].includes('eaten');

/** Where an outcome lets food go, beside the rubbish. Units: none. Errors: none. */
const LETS_GO_TO: Readonly<Record<Outcome, readonly string[]>> = {
  table: ['eaten', 'given', 'animals', 'composted', 'sampled'],
  'kitchen-soon': ['eaten', 'given', 'animals', 'composted', 'sampled'],
  'freeze-and-repack': ['eaten', 'animals', 'composted', 'sampled'],
  animals: ['animals', 'composted', 'sampled'],
  compost: ['composted'],
  discard: [],
};

/**
 * Whether food with this outcome may go there; what is thrown away or spilled always may.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export const letsGoTo = (outcome: Outcome, to: string): boolean =>
  to === 'discarded' || to === 'spilled' || LETS_GO_TO[outcome].includes(to);

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
