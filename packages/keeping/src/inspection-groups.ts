import type { Finding } from './inspection.ts';

/** One question of a look, with what it may find. Units: none. Errors: none. */
export type LookGroup = {
  readonly code: 'ends' | 'wall' | 'seal' | 'animals' | 'damp' | 'smell' | 'inside';
  readonly findings: readonly Finding[];
};

const OUTSIDE: readonly LookGroup[] = [
  { code: 'ends', findings: ['bulge-hiss-spurt', 'leak'] },
  { code: 'damp', findings: ['mould', 'wet-or-caked', 'chemical-smell'] },
  { code: 'animals', findings: ['rodent-marks', 'live-insects', 'webbing'] },
  { code: 'wall', findings: ['surface-rust', 'pitting-or-seam-rust', 'dented-body', 'dented-seam'] },
  { code: 'seal', findings: ['loose-seal', 'torn-liner'] },
];
const OPENED: readonly LookGroup[] = [
  { code: 'smell', findings: ['sour-or-musty-smell', 'rancid-smell', 'stale-taste'] },
  {
    code: 'inside',
    findings: ['glass-or-metal', 'dyed-seed', 'stones-or-chaff', 'dark-colour', 'absorber-hard'],
  },
];

/**
 * The questions of a look in their order, what hurts first: what shows from outside, and of an open container after that
 * what shows only in it. Damaged kernels are counted, not ticked.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export const lookGroupsOf = (how: 'outside' | 'opened'): readonly LookGroup[] =>
  how === 'outside' ? OUTSIDE : [...OUTSIDE, ...OPENED];
