import type { NoticeWords } from '../en/notices.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: NoticeWords = {
  title: 'Avisos',
  stands: (unread) =>
    unread === 0 ? 'Ha leído todo lo que se le dijo.' : `${s(unread, 'aviso', 'avisos')} por leer.`,
  find: 'Buscar en los avisos',
  show: 'Mostrar',
  states: { all: 'Todos', unread: 'Sin leer', open: 'Sin confirmar' },
  none: 'Aquí no hay nada.',
  noneWords:
    'Llega un aviso cuando avanza una compra en la que prometió, o cuando un coordinador tiene algo que decir.',
  safety: 'Sobre seguridad',
  unread: 'Sin leer',
  by: (name, at) => `${name}, ${at}`,
  byBook: (at) => `El libro, ${at}`,
  dueBy: (day) => `Hasta el ${day}`,
  see: 'Ir allí',
  read: 'Lo he leído',
  acknowledge: 'Entendido',
  acknowledged: (at) => `Lo confirmó el ${at}.`,
  more: 'Más antiguos',
  write: 'Escribir un aviso y ver a quién llegó',
  toNotices: 'Avisos',
  writeTitle: 'Decir algo a la gente',
  writeWords:
    'Lo ven todos aquellos para quienes es. No escriba nunca lo que debe un hogar, lo que pagaría como mucho ni quién come en él.',
  to: 'Para',
  audiences: {
    everyone: 'Todos',
    duty: 'Quienes tienen un cargo',
    household: 'Un hogar',
    buy: 'Quienes prometieron en una compra',
  },
  duty: 'Cargo',
  duties: {
    coordinator: 'Coordinador',
    treasurer: 'Tesorero',
    packing_lead: 'Jefe de envasado',
    equipment_keeper: 'Encargado de equipos',
    reviewer: 'Revisor',
  },
  household: 'Hogar',
  buy: 'Compra',
  about: 'De qué se trata',
  says: 'Qué hay que hacer',
  dueOn: 'Hasta qué día, si lo hay',
  isSafety: 'Es sobre seguridad: nadie puede apagarlo, y se pide a todos que lo confirmen',
  send: 'Decirlo',
  sent: 'Ya está dicho.',
  aboutProblem: 'Dígalo en pocas palabras, 120 letras como mucho.',
  saysProblem: 'Diga qué hay que hacer, en 2000 letras como mucho.',
  writtenTitle: 'Lo que se dijo',
  nothingWritten: 'Aún no se escribió nada.',
  reached: (read, acknowledged) =>
    `${s(read, 'persona lo ha', 'personas lo han')} leído, ${acknowledged} lo confirmaron.`,
  who: 'Qué hogares',
  notYet: 'aún no: llámelos por teléfono',
  reachedAt: (at) => `confirmado el ${at}`,
  takeBack: 'Retirarlo',
  reachNoted: 'Cada hogar ve que usted miró.',
};
