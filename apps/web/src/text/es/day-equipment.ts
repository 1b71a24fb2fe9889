import type { DayEquipmentWords } from '../en/day-equipment.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: DayEquipmentWords = {
  title: 'Equipo de la jornada',
  nothing: 'Aún no hay nada reservado para esta jornada.',
  groupHasNone: 'El grupo aún no tiene equipo en su lista.',
  fromTo: (from, until) => `${from} a ${until}`,
  giveBack: 'Devolverlo',
  thing: 'Objeto',
  free: (name, count) => `${name}: ${s(count, 'libre', 'libres')}`,
  outranks: (name, count) => `${name}: ninguno libre, ${s(count, 'préstamo cede', 'préstamos ceden')}`,
  freeLate: (name, count, late) =>
    `${name}: ${s(count, 'libre', 'libres')}, ${late} de ellos prestado con retraso ahora`,
  isLate: 'Prestado con retraso.',
  lateSince: (due) =>
    `Debía volver el ${due}; pregunte a quien guarda el equipo cuándo llega, y busque otro.`,
  book: 'Reservarlo para la jornada',
  taken: (names) => `Ocupado ese día: ${names}.`,
  gaveWay: (count) =>
    `${s(count, 'hogar tiene', 'hogares tienen')} que ceder, porque faltan más de dos semanas. Se le avisa a cada uno, y se le guardan las mismas horas de otro día si hay uno libre.`,
};
