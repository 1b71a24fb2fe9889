import type { en } from '../en/glance.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: typeof en = {
  title: 'La jornada de un vistazo',
  finish: '¿Cuándo terminamos?',
  finishAt: (at, containers) => `A las ${at}, con ${containers} envases.`,
  finishBehind: (at, planned, minutes) =>
    `A las ${at} tal como va, ${minutes} minutos después de las ${planned} del plan.`,
  nothing: 'Nadie ha dicho aún qué envasar.',
  tooFew: 'Hay muy pocas personas para una línea.',
  people: '¿Vienen bastantes personas?',
  bottleneck: '¿Dónde se atasca?',
  supplies: '¿Tenemos todos los materiales?',
  allThere: 'Está todo.',
  short: (name, pieces) => `${name}: faltan ${pieces}`,
  unkept: (count) => `${s(count, 'cosa no está', 'cosas no están')} en la lista del almacén`,
  order: '¿En qué orden pasan los alimentos?',
  overPour: '¿Echamos de más?',
  onTarget: 'No: no se regala nada.',
  under: (grams, count) => `No: ${grams} g de menos tras ${s(count, 'envase', 'envases')}.`,
  seamer: '¿Está la cerradora dentro de los límites?',
  stopped: (machine) => `${machine} está parada.`,
  good: (machine, since, left, minutes) =>
    `${machine}: ${s(since, 'envase', 'envases')} desde el último control bueno; el próximo tras ${left} o ${s(minutes, 'minuto', 'minutos')}.`,
  nextOne: (machine) =>
    `${machine}: pasó la hora desde el último control bueno; controle el próximo que cierre.`,
  due: (machine) => `${machine}: contrólela ahora.`,
  noMachine: 'Ninguna línea ha cerrado nada todavía.',
  suspects: '¿Qué latas están en duda?',
  none: 'Ninguna.',
  toReCan: (count) =>
    `Ninguna en duda; ${count === 1 ? 'una que no pasó espera lata nueva' : `${count} que no pasaron esperan latas nuevas`}.`,
  inDoubt: (line, from, to, count) =>
    `${line === null ? '' : `Línea ${line}, `}números ${from} a ${to}: ${s(count, 'envase', 'envases')}.`,
  pack: '¿Cuándo hay que cerrar el paquete de absorbedores?',
  noPack: 'No hay ningún paquete abierto.',
  packBy: (at, packets) => `Antes de las ${at}; tenía ${s(packets, 'sobre', 'sobres')}.`,
  mass: '¿Cuadra la masa?',
  trained: '¿Quién sabe usar la selladora?',
  nobodyTrained: 'Nadie de los que vienen lo ha dicho.',
  labels: '¿Qué etiquetas están impresas y sin usar?',
  labelsWait: (blank, spent) =>
    `${blank === 0 ? 'Ninguna espera' : s(blank, 'espera', 'esperan')}${spent === 0 ? '.' : `; ${s(spent, 'código anulado', 'códigos anulados')}.`}`,
  onLine: '¿De quién es lo que está en la línea?',
  foodOf: (food, household) => `${food} de ${household}.`,
  lastAllergens: '¿Qué alérgenos pasaron al final por la línea?',
  left: '¿Cuántas latas le faltan a quién?',
  cansLeft: ({ household, count }) => `${household}: ${count}`,
  unmeasured: '¿Qué alimentos no tienen lectura de humedad?',
  heaviest: '¿Cuál es la carga más pesada?',
  bagOf: (bagNo, mass) => `Saco ${bagNo}: ${mass}.`,
  lifted: {
    one: 'Una persona puede levantarlo (NIOSH 94-110; manda su médico).',
    'one-held-close':
      'Una persona, solo entre rodilla y pecho y pegado al cuerpo (NIOSH 94-110; manda su médico).',
    two: 'Dos personas o una carretilla (NIOSH 94-110; manda su médico).',
  },
  scrap: '¿Qué se perdió, y en qué?',
  scrapBy: (spilled, sampled, undone) =>
    `${spilled} g derramados, ${sampled} g en muestras; ${s(undone, 'lata devuelta', 'latas devueltas')}.`,
  cleanDown: '¿Qué queda de la limpieza?',
  notHere: '¿Quién no está para llevarse latas?',
  allHere: 'Todos los que tienen hora están aquí.',
  pastDay: (name) => `Lo que dejó la última jornada: ${name}`,
  passed: (machine, when) => `${machine}: dentro de los límites en su último control, ${when}.`,
  failed: (machine, when) => `${machine}: fuera de los límites en su último control, ${when}.`,
  unchecked: 'No se controló nada ese día.',
  rate: '¿Cuántos envases por hora?',
  rateOf: (rate, count) => `${rate}, en ${s(count, 'envase', 'envases')}.`,
  noRate: (count) => `${s(count, 'envase', 'envases')}, anotados de una vez.`,
};
