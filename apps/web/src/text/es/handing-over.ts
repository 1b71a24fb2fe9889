import type { HandingOverWords } from '../en/handing-over.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: HandingOverWords = {
  handingOver: 'Entrega',
  toBuy: 'La compra',
  notYet: 'No se recoge nada antes de repartir la compra.',
  stillToFetch: (still, all) =>
    still === 0
      ? `${s(all, 'hogar ya recogió', 'hogares ya recogieron')} lo suyo: no falta ninguno.`
      : `Faltan por recoger ${still} de ${s(all, 'hogar', 'hogares')}.`,
  findHousehold: 'Buscar un hogar',
  nobodyFound: 'Ningún hogar se llama así.',
  hasFetched: 'recogido',
  waits: (mass) => `esperan ${mass}`,
  comes: (from, to) => `viene ${from} a ${to}`,
  piece: (food, bagNo, code) => `${food}, saco ${bagNo} (${code}):`,
  onHold: 'retenido, se queda',
  fetched: (at, by, mass) => `${mass} recogidos ${at}; firmó ${by}.`,
  signedBy: (household) => `Quién de ${household} se lo lleva`,
  nameNeeded: 'Quien se lo lleva firma con su nombre.',
  signPosts: (mass) => `Anota que ${mass} salieron con esa persona. Lo retenido se queda.`,
  sign: (mass) => `Firmar: ${mass} entregados`,
  mayFetchUntil: (day) => `Según la regla del grupo se puede recoger hasta el ${day}.`,
  note: 'Nota',
  takePosts: (household) =>
    `Pasa a la reserva común para siempre lo que ${household} nunca recogió y le abona lo que costaron sus gramos como mercancía y como porte por peso. Pregúntele una vez más antes.`,
  take: 'Pasarlo a la reserva común',
};
