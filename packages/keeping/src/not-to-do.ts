import type { Words } from '@sheafbook/foods';

/** Something that people try and should not, with the reason. Units: none. Errors: none. */
export type NotToDo = {
  readonly code: string;
  readonly idea: Words;
  readonly why: Words;
  readonly source: string;
};

/** What not to do to food that is to keep. Units: none. Errors: none. Source: beside each row. */
export const NOT_TO_DO: readonly NotToDo[] = [
  {
    code: 'oven-heat',
    idea: { en: 'Heat sacks in the oven', es: 'Calentar los sacos en el horno' },
    why: {
      en: 'It heats unevenly, scorches, kills germination and harms baking.',
      es: 'Calienta de forma desigual, quema, mata la germinación y daña la panificación.',
    },
    source: 'common practice; an extension booklet does give 130 °F for 30 minutes in a thin layer',
  },
  {
    code: 'microwave',
    idea: { en: 'Heat it in a microwave', es: 'Calentarlo en el microondas' },
    why: { en: 'As in the oven: uneven and harmful.', es: 'Como en el horno: desigual y dañino.' },
    source: 'common practice; an extension booklet gives 10 minutes for small amounts',
  },
  {
    code: 'insecticide',
    idea: {
      en: 'Spray insecticide, lay mothballs or fumigant',
      es: 'Usar insecticida, naftalina o fumigante',
    },
    why: {
      en: 'None of it is labelled for food at home; some of it kills people.',
      es: 'Nada de eso está autorizado para alimentos en casa; algo de eso mata personas.',
    },
    source: 'EPA and FIFRA labels (from memory)',
  },
  {
    code: 'treated-seed',
    idea: { en: 'Eat or feed coloured, treated seed', es: 'Comer o dar de comer semilla tratada, de color' },
    why: { en: 'Its coating is poisonous.', es: 'Su recubrimiento es venenoso.' },
    source: '21 CFR 2.25 (from memory)',
  },
  {
    code: 'charms',
    idea: {
      en: 'Put bay leaves, gum, nails or salt in the grain',
      es: 'Poner laurel, chicle, clavos o sal en el grano',
    },
    why: {
      en: 'There is no evidence that it controls insects.',
      es: 'No hay pruebas de que controle los insectos.',
    },
    source: 'extension publications (from memory)',
  },
  {
    code: 'non-food-container',
    idea: { en: 'Reuse containers that held no food', es: 'Reusar envases que no eran para alimentos' },
    why: { en: 'What they held comes out into the food.', es: 'Lo que contenían pasa al alimento.' },
    source: 'a published pail leaflet',
  },
  {
    code: 'bare-concrete',
    idea: { en: 'Stand containers on bare concrete', es: 'Poner los envases sobre el hormigón' },
    why: { en: 'Moisture wicks up and cans rust.', es: 'Sube la humedad y las latas se oxidan.' },
    source:
      'a published pail page and the USU wheat page: at least half an inch off the floor, three high at most',
  },
  {
    code: 'absorber-with-sugar-or-salt',
    idea: { en: 'Put an absorber in sugar or salt', es: 'Poner un absorbedor en azúcar o sal' },
    why: { en: 'They set hard and gain nothing.', es: 'Se endurecen y no se gana nada.' },
    source: 'a published dry-pack page for sugar; common practice for salt',
  },
  {
    code: 'oxygen-free-moist-or-fatty',
    idea: {
      en: 'Pack flour, moist or fatty food without oxygen',
      es: 'Envasar sin oxígeno harina o alimentos húmedos o grasos',
    },
    why: {
      en: 'Moist food without oxygen can grow botulism; fat turns rancid all the same.',
      es: 'Lo húmedo sin oxígeno puede criar botulismo; la grasa se enrancia igual.',
    },
    source: 'Utah State University Extension',
  },
];
