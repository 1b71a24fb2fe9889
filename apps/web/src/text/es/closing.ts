import type { ClosingWords } from '../en/closing.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: ClosingWords = {
  closing: 'Cierre',
  toBuy: 'La compra',
  notForYou:
    'Coordinación, tesorería y revisión ven lo que impide cerrar una compra. Su parte está en su estado de cuenta.',
  tooEarly: 'Una compra se cierra después de repartirla.',
  isClosed: (money) => `Cerrada en ${money}.`,
  isReady: (money) => `Está todo: la compra queda en ${money} y se puede cerrar.`,
  lacks: (count) => `${s(count, 'cosa impide', 'cosas impiden')} cerrar la compra.`,
  whatLacks: 'Lo que falta',
  times: (count) => `(${count})`,
  toSplit: 'A los repartos',
  toBags: 'A los sacos',
  seeSplits: 'Los repartos de esta compra',
  clearing: 'En la cuenta puente de la compra',
  unassigned: 'Aún de nadie',
  charged: 'Cargado en total',
  commonStock: 'Reserva común',
  noCharges: 'Aún no se ha cargado nada.',
  whoBears: 'Quién carga con qué',
  household: 'Hogar',
  charge: 'Cargo',
  whole: 'Total',
  tieBreak: '* recibió el céntimo suelto: va al resto mayor y, en empate, al asiento más bajo.',
  costLines: {
    freight: 'Porte',
    'freight:by-weight': 'Porte por peso',
    'freight:by-value': 'Porte por valor',
    'freight:per-household': 'Porte por hogar',
    levy: 'Fondo',
    other: 'Otros gastos',
    credit: 'Abono del pedido',
    withheld: 'Retenido por retirada',
  },
  closedWords: 'La cuenta queda en 0,00: ya no se puede anotar nada en ella.',
  rechargeTitle: 'Los cargos van detrás de las facturas',
  rechargePosts:
    'Anota la diferencia a quienes les toca: cada gasto se reparte de nuevo y cada hogar recibe lo que pagó de más o paga lo que pagó de menos.',
  recharge: 'Cargar de nuevo',
  treasurerCloses: 'La cierra tesorería.',
  closeTitle: 'Cerrarla para siempre',
  closePosts: 'Desde aquí mantiene en 0,00 la cuenta puente y los depósitos de esta compra.',
  close: 'Cerrar la compra',
};
