import type { KeepingClass } from '@sheafbook/foods';
import type { Barrier } from './container-traits.ts';
import { type TreatmentCode, treatmentOf } from './treatment.ts';

/**
 * How long something keeps: the least, the likely and the most.
 * Units: years at 70 °F; Infinity where only damp and time nobody has measured would end it. Errors: none by itself.
 */
export type LifeBand = { readonly low: number; readonly likely: number; readonly high: number };

/**
 * A band with where it comes from. `isEstimate` where no published figure stands behind it.
 * Units: as `LifeBand`. Errors: none by itself.
 */
export type SourcedBand = LifeBand & { readonly source: string; readonly isEstimate: boolean };

/** How container and treatment together keep oxygen out. Units: none. Errors: none. */
export type PackClass =
  | 'can-oxygen-free'
  | 'foil-oxygen-free'
  | 'glass-oxygen-free'
  | 'pet-oxygen-free'
  | 'closed-with-air'
  | 'bare-pail'
  | 'open-sack';

const PRACTICE = 'common practice, no source';
const band = (low: number, likely: number, high: number, source: string, isEstimate = false): SourcedBand => {
  return { low, likely, high, source, isEstimate };
};

/** What each pack allows whatever is in it. Units: years at 70 °F. Errors: none. Source: beside each row. */
export const PACK_BANDS: Readonly<Record<PackClass, SourcedBand>> = {
  'can-oxygen-free': band(
    30,
    30,
    30,
    'a university survey of canned wheat, under 1 to 32 years old (facpub/32)',
  ),
  'foil-oxygen-free': band(20, 22, 25, PRACTICE, true),
  'glass-oxygen-free': band(20, 25, 30, `as a can while dark and unbroken; ${PRACTICE}`, true),
  'pet-oxygen-free': band(
    5,
    5,
    10,
    'a published container page: up to 5 years, wheat, corn and dry beans longer',
  ),
  'closed-with-air': band(2, 5, 10, `half of what an absorber gives at the most; ${PRACTICE}`, true),
  'bare-pail': band(
    2,
    3,
    5,
    `plastic passes oxygen slowly (a pail leaflet); its years are ${PRACTICE}`,
    true,
  ),
  'open-sack': band(0.5, 0.75, 1, `insects decide; ${PRACTICE}`, true),
};

const CANNED =
  'a list of a university and a church welfare service: No. 10 can, low oxygen, room temperature or cooler';
const USU = 'Utah State University Extension, food storage';

/**
 * What each kind of food allows in the best pack.
 * Units: years at 70 °F. Errors: none. Source: beside each row.
 */
export const FOOD_BANDS: Readonly<Record<KeepingClass, SourcedBand>> = {
  'whole-grain-hard': band(30, 30, 30, CANNED),
  'whole-grain-soft': band(8, 12, 25, `softer kernels age sooner; ${PRACTICE}`, true),
  'hulled-barley': band(2, 2, 8, `${USU}: 2 recommended, 8 at most`),
  'pearled-barley': band(1, 1.5, 2, `rancid at 12 to 24 months; ${PRACTICE}`, true),
  'rolled-oats': band(30, 30, 30, CANNED),
  'white-rice': band(30, 30, 30, CANNED),
  'brown-rice': band(0.5, 0.5, 1, `${USU}: 6 months at 70 °F`),
  'whole-meal': band(0.08, 0.25, 0.5, `about a month at room temperature; ${PRACTICE}`, true),
  'white-flour': band(5, 10, 10, CANNED),
  'cracked-grain': band(0.25, 0.5, 1, `between whole grain and meal; ${PRACTICE}`, true),
  pasta: band(30, 30, 30, CANNED),
  'dry-legume': band(30, 30, 30, CANNED),
  'oily-legume': band(2, 3, 5, `fat ages them sooner than other legumes; ${PRACTICE}`, true),
  'dry-milk': band(20, 20, 20, CANNED),
  sugar: band(30, 30, 30, CANNED),
  honey: band(30, 30, 30, PRACTICE, true),
  salt: band(30, 30, 30, `indefinite if dry; ${PRACTICE}`, true),
  oil: band(1, 2, 2, 'a university page: about 2 years'),
};

/** How long a food keeps once it is opened. Units: days. Errors: none. Source: common practice, no source. */
export const OPENED_DAYS: Readonly<Partial<Record<KeepingClass, number>>> = { 'dry-milk': 30 };
const OPENED_DAYS_ELSE = 90;

/** Days that a food keeps after opening. Units: days. Errors: none. Source: as `OPENED_DAYS`. */
export const openedDaysOf = (keepingClass: KeepingClass) => OPENED_DAYS[keepingClass] ?? OPENED_DAYS_ELSE;

/**
 * The pack class of a container with what was done to it.
 * Units: none. Errors: none. A null treatment or barrier is unknown and takes the cautious one.
 */
export function packClassOf(barrier: Barrier | null, treatment: TreatmentCode | null): PackClass {
  if (barrier === null || barrier === 'open') return 'open-sack';
  if (barrier === 'bare-plastic') return 'bare-pail';
  const isOxygenFree = treatment !== null && treatmentOf(treatment).isOxygenFree;
  if (!isOxygenFree) return barrier === 'pet' ? 'bare-pail' : 'closed-with-air';
  if (barrier === 'metal') return 'can-oxygen-free';
  return `${barrier}-oxygen-free`;
}

/** What a bottle keeps beyond the years it is published with. Source: as the row of `PACK_BANDS`. */
const LONG_IN_BOTTLES: readonly KeepingClass[] = ['whole-grain-hard', 'dry-legume'];

function packBandOf(packClass: PackClass, keepingClass: KeepingClass): SourcedBand {
  const pack = PACK_BANDS[packClass];
  const isCapped = packClass === 'pet-oxygen-free' && !LONG_IN_BOTTLES.includes(keepingClass);
  return isCapped ? { ...pack, high: pack.likely } : pack;
}

/** Which of the two ends a life first. Units: none. Errors: none. */
export type WeakestLink = 'food' | 'pack';

/**
 * How long a food keeps in a pack: the lesser of what the food and the pack allow, with whichever is the weaker link.
 * Whole wheat, corn and dry beans may keep longer in bottles; other foods keep up to 5 years there.
 * Units: years at 70 °F. Errors: none. Source: `FOOD_BANDS` and `PACK_BANDS`.
 */
export function lifeBandOf(
  keepingClass: KeepingClass,
  packClass: PackClass,
): SourcedBand & { readonly weakestLink: WeakestLink } {
  const food = FOOD_BANDS[keepingClass];
  const pack = packBandOf(packClass, keepingClass);
  const weakestLink = food.likely <= pack.likely ? 'food' : 'pack';
  const { source } = weakestLink === 'food' ? food : pack;
  return {
    low: Math.min(food.low, pack.low),
    likely: Math.min(food.likely, pack.likely),
    high: Math.min(food.high, pack.high),
    isEstimate: food.isEstimate || pack.isEstimate,
    source,
    weakestLink,
  };
}
