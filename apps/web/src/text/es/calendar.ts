import type { CalendarWords } from '../en/calendar.ts';

export const es: CalendarWords = {
  title: 'Calendario',
  stands: (count) =>
    count === 0
      ? 'Nada tiene fecha por delante.'
      : count === 1
        ? 'Hay una fecha u hora por delante.'
        : `Hay ${count} fechas y horas por delante.`,
  ahead: 'Lo que viene',
  nothing: 'En cuanto se planee una compra, sus fechas estarán aquí.',
  own: 'suya',
  states: { tentative: 'puede cambiar', cancelled: 'anulada' },
  until: (from, to) => `${from} a ${to}`,
  save: 'guardar',
  saveWords: 'Elija una para guardarla en un calendario.',
  subscribe: 'Verlo en su propio calendario',
  subscribeWords:
    'El programa de calendario de un teléfono o computadora puede leer una dirección suya y mostrar por sí solo lo que cambia.',
  shows: 'Muestra',
  mine: 'las fechas de mi hogar y las de todos',
  storehouse: 'solo las fechas de todos, para una pared o un amigo',
  onlyItem: (name) => `solo las fechas de ${name}`,
  make: 'Crear una dirección',
  made: 'Esta dirección se muestra solo esta vez. Quien la tenga puede leer el calendario; guárdela para usted.',
  address: 'Dirección',
  open: 'Abrir en el calendario de este aparato',
  copy: 'Copiar la dirección',
  copied: 'Copiada.',
  feeds: 'Sus direcciones',
  noFeeds: 'No ha creado ninguna.',
  scopes: {
    mine: 'Las fechas de mi hogar y las de todos',
    storehouse: 'Las fechas de todos',
    item: 'Las fechas de una sola cosa',
  },
  oneThing: (name) => `Las fechas de ${name}`,
  madeOn: (on) => `creada el ${on}`,
  renewedOn: (on) => `con dirección nueva desde el ${on}`,
  renew: 'Dirección nueva',
  end: 'Terminarla',
  renewWords: 'Una dirección nueva anula la anterior al momento. Hágalo si otros llegaron a conocerla.',
  inBuy: 'Sus fechas en un calendario',
  toCalendar: 'Todas las fechas, y una dirección para su calendario',
};
