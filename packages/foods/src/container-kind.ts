import { microlitresOf } from '@sheafbook/units';
import type { Words } from './food.ts';

/**
 * A kind of container: what it is called and what it truly holds, not what its name says.
 * Units: `capacityMicrolitres` whole; `tareGrams` whole grams with its lid, null until someone weighs one; `perCarton`
 * containers, null where they come without a carton. Errors: none by itself.
 */
export type ContainerKind = {
  readonly kindCode: string;
  readonly names: Words;
  readonly capacityMicrolitres: number;
  readonly tareGrams: number | null;
  readonly perCarton: number | null;
  readonly source: string;
};

const LISTED = 'size lists of the can trade';
const BY_NAME = 'its nominal volume, by the definition of the unit';

/**
 * The kinds of container that a storehouse packs into. Tares are unknown until the group weighs ten of its own.
 * Units: as `ContainerKind`. Errors: none. Source: beside each row.
 */
export const CONTAINER_KINDS: readonly ContainerKind[] = [
  kind('can-no-10', ['No. 10 can', 'Lata n.º 10'], {
    // 105.1 fl oz is 3,108.178 mL; the printed 3,108.18 mL is kept so that every fill agrees with the trade's tables.
    capacityMicrolitres: 3_108_180,
    perCarton: 6,
    source: `603 × 700, 105.1 US fl oz, ${LISTED}; an older list gives 109.43 fl oz filled to the brim`,
  }),
  kind('can-no-2-5', ['No. 2 1/2 can', 'Lata n.º 2 1/2'], {
    capacityMicrolitres: microlitresOf(29.79, 'us-fluid-ounce'),
    source: `401 × 411, 29.79 US fl oz, an older list among the ${LISTED}`,
  }),
  kind('pail-5-gallon-lined', ['5-gallon pail with foil liner', 'Balde de 5 galones con bolsa de aluminio'], {
    capacityMicrolitres: microlitresOf(5, 'us-gallon'),
    source: `${BY_NAME}; filled to the brim about 5.3 US gallons (common practice, no source)`,
  }),
  kind('pail-5-gallon-bare', ['5-gallon pail without liner', 'Balde de 5 galones sin bolsa'], {
    capacityMicrolitres: microlitresOf(5, 'us-gallon'),
    source: `${BY_NAME}; filled to the brim about 5.3 US gallons (common practice, no source)`,
  }),
  kind('pail-6-gallon-lined', ['6-gallon pail with foil liner', 'Balde de 6 galones con bolsa de aluminio'], {
    capacityMicrolitres: microlitresOf(6, 'us-gallon'),
    source: BY_NAME,
  }),
  kind('pail-6-gallon-bare', ['6-gallon pail without liner', 'Balde de 6 galones sin bolsa'], {
    capacityMicrolitres: microlitresOf(6, 'us-gallon'),
    source: BY_NAME,
  }),
  kind('pouch-1-gallon', ['1-gallon foil pouch', 'Bolsa de aluminio de 1 galón'], {
    capacityMicrolitres: microlitresOf(1, 'us-gallon'),
    source: `${BY_NAME}; foil laminate of 7 mil`,
  }),
  kind('bottle-pet-2-litre', ['2-litre PET bottle', 'Botella PET de 2 litros'], {
    capacityMicrolitres: microlitresOf(2, 'litre'),
    source: 'its nominal volume (common practice, no source)',
  }),
  kind('jar-quart', ['Quart jar', 'Frasco de un cuarto de galón'], {
    capacityMicrolitres: microlitresOf(1, 'us-quart'),
    source: BY_NAME,
  }),
  kind('jar-half-gallon', ['Half-gallon jar', 'Frasco de medio galón'], {
    capacityMicrolitres: microlitresOf(2, 'us-quart'),
    source: BY_NAME,
  }),
  kind('drum-55-gallon', ['55-gallon drum', 'Bidón de 55 galones'], {
    capacityMicrolitres: microlitresOf(55, 'us-gallon'),
    source: BY_NAME,
  }),
];

const KIND_OF_CODE = new Map(CONTAINER_KINDS.map((row) => [row.kindCode, row]));

/** The container kind of a code, or undefined. Units: as `ContainerKind`. Errors: none. */
export function findContainerKind(kindCode: string): ContainerKind | undefined {
  return KIND_OF_CODE.get(kindCode);
}

function kind(
  kindCode: string,
  [en, es]: readonly [en: string, es: string],
  facts: { capacityMicrolitres: number; perCarton?: number; source: string },
): ContainerKind {
  return { kindCode, names: { en, es }, tareGrams: null, perCarton: null, ...facts };
}
