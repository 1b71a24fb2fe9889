import type { Words } from '@sheafbook/foods';
import type { CautionCode } from './caution.ts';
import type { Barrier } from './container-traits.ts';

/** The names of the treatments. Units: none. Errors: none. */
export const TREATMENT_CODES = [
  'oxygen-absorber',
  'dry-ice',
  'vacuum',
  'nitrogen-flush',
  'freeze-thaw-freeze',
  'food-grade-earth',
  'none',
] as const;

/** One of `TREATMENT_CODES`. Units: none. Errors: none. */
export type TreatmentCode = (typeof TREATMENT_CODES)[number];

/** One step of a treatment. Units: `waitMinutes` whole minutes until the next one. Errors: none. */
export type TreatmentStep = { readonly say: Words; readonly waitMinutes: number };

/**
 * What is done to food as it is packed.
 * Units: `mostGrams` whole grams in one container, null without a limit. Errors: none by itself.
 */
export type Treatment = {
  readonly code: TreatmentCode;
  readonly names: Words;
  readonly barriers: readonly Barrier[];
  /** It leaves too little oxygen for moist food to be safe in. */
  readonly isOxygenFree: boolean;
  readonly mostGrams: number | null;
  /** What must be at hand for it, beside what is used up. */
  readonly needs: Words | null;
  readonly steps: readonly TreatmentStep[];
  readonly cautions: readonly CautionCode[];
  readonly source: string;
};

const DAY = 24 * 60;
const step = (en: string, es: string, waitMinutes = 0): TreatmentStep => ({ say: { en, es }, waitMinutes });

/** The treatments that a storehouse knows. Units: as `Treatment`. Errors: none. Source: beside each row. */
export const TREATMENTS: readonly Treatment[] = [
  {
    code: 'oxygen-absorber',
    names: { en: 'Oxygen absorber', es: 'Absorbedor de oxígeno' },
    barriers: ['metal', 'foil', 'glass', 'pet'],
    isOxygenFree: true,
    mostGrams: null,
    needs: null,
    steps: [
      step(
        'Open a pack only when the containers stand filled.',
        'Abra un paquete solo con los envases ya llenos.',
      ),
      step('Put the packets on top and close at once.', 'Ponga los sobres encima y cierre enseguida.'),
      step(
        'Put what is left of the pack in a full small jar.',
        'Guarde lo que sobra en un frasco pequeño lleno.',
      ),
      step(
        'Leave it shut so that no insect stage lives.',
        'No lo abra, para que no viva ningún insecto.',
        12 * DAY,
      ),
    ],
    cautions: ['oxygen-free-moist'],
    source: 'Utah State University Extension booklet: under 1 % oxygen for at least 12 days',
  },
  {
    code: 'dry-ice',
    names: { en: 'Dry ice', es: 'Hielo seco' },
    barriers: ['foil', 'bare-plastic'],
    isOxygenFree: true,
    mostGrams: null,
    needs: {
      en: 'insulated gloves, eye cover and fresh air',
      es: 'guantes aislantes, protección para los ojos y aire fresco',
    },
    steps: [
      step('Wipe the frost off the ice, with gloves on.', 'Quite la escarcha del hielo, con guantes.'),
      step(
        'Lay it on the bottom and fill to an inch from the top.',
        'Póngalo en el fondo y llene hasta 2,5 cm del borde.',
      ),
      step(
        'Snap the lid half way round until the bottom is no longer very cold.',
        'Cierre la tapa solo a medias hasta que el fondo deje de estar muy frío.',
        60,
      ),
      step(
        'Close it and watch; if a wall bulges, lift an edge.',
        'Ciérrelo y observe; si se abomba, levante un borde.',
        15,
      ),
    ],
    cautions: ['dry-ice', 'carbon-dioxide', 'oxygen-free-moist'],
    source: 'a published pail leaflet; an hour is the least of its waits',
  },
  {
    code: 'vacuum',
    names: { en: 'Vacuum', es: 'Vacío' },
    barriers: ['glass', 'foil'],
    isOxygenFree: true,
    mostGrams: 907, // 2 lb
    needs: { en: 'a vacuum sealer', es: 'una selladora al vacío' },
    steps: [
      step(
        'Seal, and look again after a day: the lid stays down.',
        'Selle y revise al día siguiente: la tapa sigue hundida.',
        DAY,
      ),
    ],
    cautions: ['machines', 'oxygen-free-moist'],
    source:
      'Utah State University Extension, insect page: small bags of 1 to 2 lb; sharp grains puncture them',
  },
  {
    code: 'nitrogen-flush',
    names: { en: 'Nitrogen flush', es: 'Purga con nitrógeno' },
    barriers: ['metal', 'foil', 'glass'],
    isOxygenFree: true,
    mostGrams: null,
    needs: {
      en: 'a nitrogen bottle with its regulator, and an oxygen meter',
      es: 'una botella de nitrógeno con su regulador y un medidor de oxígeno',
    },
    steps: [
      step(
        'Flush until the meter reads 2 % oxygen or less, then close.',
        'Purgue hasta que el medidor marque 2 % de oxígeno o menos y cierre.',
      ),
    ],
    cautions: ['machines', 'oxygen-free-moist'],
    source:
      'Agronomy 12(11) 2748 (2022) for insects below 1 %; the 2 % for keeping is common practice, no source',
  },
  {
    code: 'freeze-thaw-freeze',
    names: { en: 'Freeze, thaw, freeze', es: 'Congelar, descongelar, congelar' },
    barriers: ['metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open'],
    isOxygenFree: false,
    mostGrams: 6803, // 15 lb
    needs: { en: 'room in a freezer for a week', es: 'sitio en un congelador durante una semana' },
    steps: [
      step('Freeze in a heavy or doubled bag.', 'Congele en una bolsa gruesa o doble.', 3 * DAY),
      step(
        'Warm it for a day so that eggs that live hatch.',
        'Témplelo un día para que nazcan los huevos vivos.',
        DAY,
      ),
      step('Freeze it again.', 'Congélelo otra vez.', 3 * DAY),
      step('Dry the outside, then pack.', 'Seque el exterior y envase.'),
    ],
    cautions: [],
    source:
      'Utah State University Extension, insect treatments: 1 to 15 lb, 2 to 3 days, a day warm, 2 to 3 days',
  },
  {
    code: 'food-grade-earth',
    names: { en: 'Food-grade diatomaceous earth', es: 'Tierra de diatomeas alimentaria' },
    barriers: ['metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open'],
    isOxygenFree: false,
    mostGrams: null,
    needs: { en: 'a mask and goggles', es: 'mascarilla y gafas' },
    steps: [
      step(
        'Mix in what the label allows, with a mask on.',
        'Mezcle lo que permite la etiqueta, con mascarilla.',
      ),
    ],
    cautions: ['filter-earth', 'grain-dust'],
    source:
      'a trial of 4 to 8 lb a ton on wheat; an extension page does not recommend it at home, so it is off by default',
  },
  {
    code: 'none',
    names: { en: 'No treatment', es: 'Sin tratamiento' },
    barriers: ['metal', 'foil', 'glass', 'pet', 'bare-plastic', 'open'],
    isOxygenFree: false,
    mostGrams: null,
    needs: null,
    steps: [],
    cautions: [],
    source: 'common practice, no source',
  },
];

const TREATMENT_OF_CODE = new Map(TREATMENTS.map((row) => [row.code, row]));

/** The treatment of a code. Units: as `Treatment`. Errors: none: every code has one, which a test holds. */
export function treatmentOf(code: TreatmentCode): Treatment {
  return TREATMENT_OF_CODE.get(code) as Treatment;
}

/** A treatment as it was written down; null is unknown. Units: none. Errors: none. */
export function readTreatment(text: string | null): TreatmentCode | null {
  return TREATMENT_CODES.find((code) => code === text) ?? null;
}
