import { MISFIT_WORDS } from '@sheafbook/keeping';

/** What the server says of containers and treatments, by its English; why a treatment does not suit is said where it is judged. */
export const ES_KEEPING: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.values(MISFIT_WORDS).map(({ en, es }) => [en, es])),
  'What this kind of container does is published and stays as it is. Add a kind of your own instead.':
    'Lo que hace este tipo de envase está publicado y queda como está. Agregue un tipo propio.',
  'Say who says so, or that it is your own judgement.': 'Diga quién lo dice, o que es su propio criterio.',
};
