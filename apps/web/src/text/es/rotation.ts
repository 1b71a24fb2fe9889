import type { RotationWords } from '../en/rotation.ts';
import { keptTime } from '../kept-time.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const days = (count: number): string =>
  keptTime(count, { day: ['día', 'días'], month: ['mes', 'meses'], year: ['año', 'años'] });

export const es: RotationWords = {
  title: 'Qué comer ahora',
  shelf: 'Su despensa',
  nothing: 'En su despensa todavía no hay nada de qué comer.',
  nothingWords:
    'Anote lo que tiene en casa o envase lo que le trajo una compra; entonces aquí dirá qué abrir primero.',
  inTime: 'A su ritmo todo se come a tiempo.',
  atRisk: (mass) => `A su ritmo, ${mass} pasarían de su fecha antes de comerlos.`,
  eatNext: 'Coma ahora',
  take: 'A la cocina',
  takeOne: (code) => `Llevar ${code} a la cocina`,
  taken: (mass, food) => `${mass} de ${food} están en la cocina.`,
  thenNext: (code) => `Después sigue ${code}.`,
  lastOne: 'Era lo último de este alimento.',
  earlier: (code) => `${code} se acaba antes y sigue cerrado; ese era el que tocaba abrir.`,
  undo: 'Devolverlo',
  open: 'abierto',
  eatFirst: 'Coma primero',
  ofKitchen: (food) => `${food}, en la cocina`,
  seeAll: 'Qué comer después',
  noPlace: 'nadie dijo dónde está',
  keeps: (count) => (count === 0 ? 'pasó su fecha: primero mire y huela' : `se conserva unos ${days(count)}`),
  untold: 'nadie dijo cuánto se conserva',
  tooMuch: (mass) => `sobran ${mass}`,
  leaveShut: 'Deje cerrados estos',
  theKitchen: 'lo que está en la cocina',
  oneIsOpen: (food, count, code) =>
    `${food}, ${s(count, 'envase', 'envases')}: primero termine ${code}, que está abierto.`,
  olderButKeeps: (food, count, code) =>
    `${food}, ${s(count, 'envase', 'envases')}: más viejos que ${code}, y aún duran más. Que sea viejo no es razón para abrirlo.`,
  opensCosts: (count) => `Abierto ahora, perdería ${days(count)} de su vida.`,
  inKitchen: 'En la cocina',
  since: (day) => `desde el ${day}`,
  eaten: 'Comido',
  eatenOne: (food) => `${food}: comido`,
  riskTitle: 'Lo que pasaría de su fecha, por mes',
  whatIf: 'Qué pasaría si',
  asItIs: 'Nada cambia',
  eatFaster: 'Comiera la mitad más',
  repack: 'Envasara de nuevo lo que puede ir en lata sellada',
  give: 'Regalara lo que no empezaría a tiempo',
  moveTo: (place) => `Todo estuviera en: ${place}`,
  asked: 'Elija uno para ver una segunda línea.',
  saves: (saved, left, given) => `Eso salvaría ${saved}; aún sobrarían ${left}. Regalado: ${given}.`,
  month: 'Mes',
  ifNothing: 'Si nada cambia',
  ifSo: 'Si es así',
  inAll: 'En total',
  byPlace: 'Por lugar',
  place: 'Lugar',
  paceTitle: 'Lo que se come en un mes',
  paceWords: 'El ritmo constante es el menor que come todo a tiempo.',
  food: 'Alimento',
  eatenAMonth: 'Usted come',
  steadyAMonth: 'Ritmo constante',
  past: (mass) => `(${mass} pasados de fecha)`,
  howReckoned:
    'Cuánto se conserva cada uno es una estimación por su envase, su tratamiento y el calor de sus lugares. Lo que sus comensales necesitan de un grupo se toma de sus alimentos según los hay (práctica común, sin fuente). Lo que está hinchado, mojado, mohoso o huele mal nunca se prueba; pregunte en la oficina de extensión de su condado.',
};
