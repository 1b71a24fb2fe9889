import { MISFIT_WORDS } from '@sheafbook/keeping';

/** What the server says of containers and treatments, by its English; why a treatment does not suit is said where it is judged. */
export const ES_KEEPING: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.values(MISFIT_WORDS).map(({ en, es }) => [en, es])),
  'What this kind of container does is published and stays as it is. Add a kind of your own instead.':
    'Lo que hace este tipo de envase está publicado y queda como está. Agregue un tipo propio.',
  'This treatment does not suit what is to be packed.':
    'Este tratamiento no conviene a lo que se va a envasar.',
  'There is no container with anything in it to label.':
    'No hay ningún envase con algo dentro que etiquetar.',
  '{} is no code of a container; look at it again.': '{} no es código de un envase; mírelo otra vez.',
  'Print 500 labels at a time at most.': 'Imprima 500 etiquetas de una vez como máximo.',
  'Name each container once.': 'Nombre cada envase una sola vez.',
  'Labels count from 1.': 'Las etiquetas se cuentan desde 1.',
  'The sheet has fewer labels than that.': 'La hoja tiene menos etiquetas.',
  'A moisture is at most 100 %.': 'La humedad es de 100 % como máximo.',
  'Say who says so, or that it is your own judgement.': 'Diga quién lo dice, o que es su propio criterio.',
};
