import type { Finding } from '@sheafbook/keeping';

type Group = {
  readonly code: 'ends' | 'wall' | 'seal' | 'animals' | 'damp' | 'smell' | 'inside';
  readonly findings: readonly Finding[];
};

/** The questions of a look in their order, what hurts first. */
const OUTSIDE: readonly Group[] = [
  { code: 'ends', findings: ['bulge-hiss-spurt', 'leak'] },
  { code: 'damp', findings: ['mould', 'wet-or-caked', 'chemical-smell'] },
  { code: 'animals', findings: ['rodent-marks', 'live-insects', 'webbing'] },
  { code: 'wall', findings: ['surface-rust', 'pitting-or-seam-rust', 'dented-body', 'dented-seam'] },
  { code: 'seal', findings: ['loose-seal', 'torn-liner'] },
];
const INSIDE: readonly Group[] = [
  { code: 'smell', findings: ['sour-or-musty-smell', 'rancid-smell', 'stale-taste'] },
  {
    code: 'inside',
    findings: ['glass-or-metal', 'dyed-seed', 'stones-or-chaff', 'dark-colour', 'absorber-hard'],
  },
];

export const groupsOf = (how: 'outside' | 'opened'): readonly Group[] =>
  how === 'outside' ? OUTSIDE : [...OUTSIDE, ...INSIDE];
