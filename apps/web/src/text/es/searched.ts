import type { en } from '../en/searched.ts';

export const es: typeof en = {
  find: 'Buscar en esta lista',
  none: 'Nada de esta lista se encuentra así.',
  more: (left) => `Ver más (quedan ${left})`,
};
