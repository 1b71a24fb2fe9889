/** What the wall of a container is, the tightest first. Units: none. Errors: none. */
export const BARRIERS = ['metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open'] as const;

/** What the wall of a container keeps out. Units: none. Errors: none. */
export type Barrier = (typeof BARRIERS)[number];

/**
 * What a container does for the food in it, beside what it holds.
 * Units: `mostStacked` containers. Errors: none by itself.
 */
export type ContainerTraits = {
  readonly kindCode: string;
  readonly barrier: Barrier;
  readonly isDark: boolean;
  readonly isBreakable: boolean;
  readonly isRodentProof: boolean;
  /** It wants a box, a pail or a crate around it. */
  readonly needsOuter: boolean;
  readonly isReusable: boolean;
  readonly mostStacked: number | null;
  readonly source: string;
};

const PRACTICE = 'common practice, no source';
const PAILS = 'published pail leaflets: off the floor, no more than three high; plastic passes oxygen slowly';
const metal = {
  barrier: 'metal',
  isDark: true,
  isBreakable: false,
  isRodentProof: true,
  needsOuter: false,
  isReusable: false,
  mostStacked: null,
  source: PRACTICE,
} as const;
const pail = { ...metal, isRodentProof: false, isReusable: true, mostStacked: 3, source: PAILS };
const linedPail = { ...pail, barrier: 'foil' } as const;
const barePail = { ...pail, barrier: 'bare-plastic' } as const;
const jar = {
  ...metal,
  barrier: 'glass',
  isDark: false,
  isBreakable: true,
  needsOuter: true,
  isReusable: true,
} as const;

/**
 * The traits of the reference container kinds. A kind of a group's own takes those of the barrier it names.
 * Units: as `ContainerTraits`. Errors: none. Source: beside each row.
 */
export const CONTAINER_TRAITS: readonly ContainerTraits[] = [
  { kindCode: 'can-no-10', ...metal },
  { kindCode: 'can-no-2-5', ...metal },
  { kindCode: 'pail-5-gallon-lined', ...linedPail },
  { kindCode: 'pail-5-gallon-bare', ...barePail },
  { kindCode: 'pail-6-gallon-lined', ...linedPail },
  { kindCode: 'pail-6-gallon-bare', ...barePail },
  {
    kindCode: 'pouch-1-gallon',
    ...metal,
    barrier: 'foil',
    isRodentProof: false,
    needsOuter: true,
    source: 'a published note: foil pouches are not rodent-proof',
  },
  {
    kindCode: 'bottle-pet-2-litre',
    ...metal,
    barrier: 'pet',
    isDark: false,
    isRodentProof: false,
  },
  { kindCode: 'jar-quart', ...jar },
  { kindCode: 'jar-half-gallon', ...jar },
  { kindCode: 'drum-55-gallon', ...barePail, isRodentProof: false, mostStacked: 1, source: PRACTICE },
];

const TRAITS_OF_CODE = new Map(CONTAINER_TRAITS.map((row) => [row.kindCode, row]));

/** The traits of a reference kind, or undefined. Units: as `ContainerTraits`. Errors: none. */
export function findContainerTraits(kindCode: string): ContainerTraits | undefined {
  return TRAITS_OF_CODE.get(kindCode);
}

/** A barrier as it was written down; null for what is none, so that nobody takes it for tight. Units: none. Errors: none. */
export function readBarrier(text: string | null): Barrier | null {
  return BARRIERS.find((barrier) => barrier === text) ?? null;
}
