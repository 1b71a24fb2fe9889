import type { en } from '../en/asked.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const and = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} y ${names.at(-1)}`;

export const es: typeof en = {
  title: 'También se puede preguntar',
  pledge: '¿Qué conviene pedir para llegar a la meta?',
  noBuy: 'Ninguna compra reúne pedidos ahora.',
  reached: (days) => `Nada: lo que tienen dura ${s(days, 'día', 'días')} o más.`,
  take: (buy, foods) => `${buy}: ${and(foods)}.`,
  toWay: 'Dentro de un presupuesto',
  cost: '¿Cuánto costará nuestro pedido?',
  notPledged: (buy) => `No han pedido nada en ${buy}.`,
  costs: (buy, money) => `${buy}: ${money} tal como está.`,
  between: (low, high) => `${low} si todos toman lo mínimo, ${high} si todos toman lo máximo.`,
  recall: '¿Estaba nuestra comida en una retirada?',
  noRecall: 'No hay nada retenido.',
  notOurs: (holds) =>
    `No: ${s(holds, 'retención está en pie', 'retenciones están en pie')}, y nada de ello es ni fue suyo.`,
  ours: (about, mass, codes) => `${about}: ${mass} suyos, en ${codes}. No los coma, abra ni regale.`,
  wasOurs: (about) => `${about}: tuvieron algo, y según el libro no queda nada.`,
  ourKitchen: 'su cocina',
  share: '¿Qué nos tocó, y fue justo?',
  noShare: 'Nada de lo que pidieron se ha repartido todavía.',
  got: ({ food, award, claim, rule }) => `${food}: ${award} de ${claim}, ${rule}.`,
  allGot: (least, most) =>
    least === most
      ? `Todos recibieron el ${least} % de lo que reclamaban.`
      : `Todos recibieron entre el ${least} % y el ${most} % de lo que reclamaban.`,
  eat: '¿Lo pueden comer todos?',
  allMay: 'Todos en su mesa pueden comer todo lo que tienen.',
  mayNot: (name, foods) => `${name} no puede comer ${and(foods).toLowerCase()}.`,
  nextOpen: (what) => `Lo próximo por abrir, ${what}:`,
  fine: 'todos lo pueden comer.',
  notFor: (names) => `no es para ${and(names)}.`,
  careFor: (name, foods) =>
    `${name} tenga cuidado: por su línea pasó antes ${and(foods).toLowerCase()} ese día.`,
  offers: '¿Qué se nos ofrece, y hasta cuándo?',
  noOffers: 'Nada ahora.',
};
