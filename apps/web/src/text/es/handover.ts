import type { HandoverWords } from '../en/handover.ts';
import { es as people } from './people.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: HandoverWords = {
  title: 'Traspaso',
  people: 'Personas',
  notYours: 'Esta página es para la coordinación y la tesorería.',
  stands: (buys, sessions, claims, toSign) =>
    `Están abiertas ${s(buys, 'compra', 'compras')}, ${s(sessions, 'día de envasado', 'días de envasado')} y ${s(claims, 'reclamación', 'reclamaciones')}; ${s(toSign, 'cosa espera', 'cosas esperan')} una firma.`,
  never:
    'Traspase un cargo, en la página de las personas, y nunca una contraseña: quien toma el cargo entra con la suya.',
  withAmounts: 'Usted ve importes, porque lleva el dinero.',
  withoutAmounts: 'Lo que deben los hogares es de la tesorería; de los depósitos usted ve si aún faltan.',
  nothing: 'Nada.',
  duties: 'Quién puede hacer qué',
  nobody: 'nadie',
  holder: (name, since, canSignIn) => `${name}, desde ${since}${canSignIn ? '' : ' (no puede entrar)'}`,
  dutyNames: people.duties,
  toSign: 'Lo que espera una firma',
  yearOpen: (day) => `El año terminó el ${day} y no está cerrado`,
  close: (day) => `El cierre hasta ${day}`,
  order: (buy) => `El encargo de ${buy}`,
  buys: 'Compras abiertas',
  steps: {
    planning: 'reunir ofertas y abrirla a pedidos',
    gathering: 'reunir pedidos y fijarla',
    fixed: 'cobrar depósitos y acordar el encargo',
    ordered: 'recibirla',
    landed: 'repartirla y luego repartir sus costos',
    'shared-out': 'entregar la comida y cerrarla en 0.00',
  },
  by: (when) => `para el ${when}`,
  since: (when) => `desde el ${when}`,
  sessions: 'Días de envasado',
  sessionStages: { open: 'abierto', running: 'en marcha', signed: 'por liquidar' },
  claims: 'Reclamaciones abiertas',
  bills: 'Facturas sin pagar',
  deposits: 'Depósitos que faltan',
  seatName: (name, seat) => `${name}, puesto ${seat}`,
  balances: 'Lo que deben los hogares, en conjunto',
  owing: 'Hogares que deben',
  owed: 'Se debe al almacén',
  credit: 'A su favor',
  lent: 'Prestado',
  unit: (name, no) => `${name}, n.º ${no}`,
  late: 'con retraso',
  held: 'Retenido',
  atRisk: 'Reserva común en riesgo',
  atRiskSays: (mass) => `${mass} pasan su fecha si nadie los toma.`,
  giving: 'Ofrecido y donado',
  offered: (food) => `${food}, se ofrece a los miembros`,
  out: (no, pantry) => `Manifiesto ${no} a ${pantry}: falta su recibo`,
  unasked: (pantry) => `${pantry}: vuelva a preguntar qué acepta`,
  askedOn: (day) => `se preguntó el ${day}`,
  suppliers: 'Proveedores y sus reglas',
  noTerms: 'nunca ofertó',
  quote: (reference, until) =>
    reference === ''
      ? `la última oferta vale hasta ${until}`
      : `última oferta ${reference}, vale hasta ${until}`,
  lead: (days) => `${s(days, 'día', 'días')} del encargo a la llegada`,
  leastMoney: (money) => `al menos ${money} de mercancía`,
  leastMass: (mass) => `al menos ${mass}`,
  freeFreight: (money) => `porte gratis desde ${money}`,
};
