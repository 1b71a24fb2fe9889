import type { SuppliesText } from '../en/supplies.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: SuppliesText = {
  shopping: 'Qué comprar',
  toShopping: 'Qué comprar',
  toShelf: 'Materiales disponibles',
  toSettlement: 'Lo que costó la jornada',
  backToDay: 'La jornada de envasado',
  nothingToBuy: (containers) =>
    containers === 0
      ? 'Nadie quiere envasar nada todavía; no hay nada que comprar.'
      : `No hay nada que comprar para ${s(containers, 'envase', 'envases')}.`,
  keepsNone: (containers) =>
    `El almacén no guarda lo que ${s(containers, 'envase necesita', 'envases necesitan')}.`,
  toBuy: (count, cost) =>
    cost === null
      ? `Hay que comprar ${s(count, 'cosa', 'cosas')}; no se saben todos los precios.`
      : `Hay que comprar ${s(count, 'cosa', 'cosas')}, por ${cost}.`,
  packs: (packs, pieces, isIce) => `${s(packs, 'paquete', 'paquetes')} de ${pieces}${isIce ? ' g' : ''}`,
  neededOnHand: (needed, onHand) => `se necesitan ${needed}, hay ${onHand}`,
  ticksKept: 'Las marcas quedan en este teléfono, también sin señal y después de cerrarlo.',
  writeDown: (count) => `Anotar lo comprado (${count})`,
  needs: 'Lo que necesita la jornada',
  supply: 'Material',
  used: 'Se usan',
  withSpare: 'Con repuestos',
  onHand: 'Hay',
  spareSays:
    'Repuestos: 3 de cada 100 latas y tapas, 5 absorbentes, 10 etiquetas (práctica común, sin fuente).',
  notKept: 'Lo que el almacén no guarda',
  broughtByHouseholds: (count, kind) => `${kind}: los hogares traen ${count}, limpios y secos.`,
  noAbsorbers: (count, size) => `Absorbentes de ${size} ml: hacen falta ${count}. Regístrelos primero.`,
  noDryIce: (grams) => `Hielo seco: hacen falta ${grams} g. Regístrelo primero.`,
  toBring: 'A mano ese día',
  toBringSays: 'Lista de práctica común, sin fuente. Deje fuera lo que su línea no necesite.',
  broughtAlong: {
    'over-lids': 'Tapas de plástico',
    clothing: 'Guantes, redecillas y delantales',
    cleaning: 'Cepillos, paños blancos, desinfectante, bolsas de basura',
    measuring: 'Una pesa conocida para la báscula; calibre de costuras o micrómetro',
    spares: 'Pasadores de repuesto del mandril, cinta, marcadores',
    power: 'Alargador con protección diferencial',
    safety: 'Botiquín y un taburete escalera',
    papers: 'Hojas de marcha y registros de cierres en blanco, impresos',
  },
  openPacks: 'Paquetes abiertos',
  packLasts: (name, pieces, minutes) =>
    `${name}: un paquete de ${pieces} dura ${minutes} minutos en la línea.`,
  intoJars: (jars, window, served) =>
    `Al abrirlo, repártalo en ${jars} frascos llenos hasta el borde: se cierran ${served} envases en los ${window} minutos que un sobre puede estar abierto.`,
  oneJar: (window) => `Se acaba antes de sus ${window} minutos al aire.`,
  absorberCaution:
    'Abra el siguiente paquete solo cuando el abierto no dure más de un minuto. No cierre nunca un sobre que esté duro o que estuvo más de 30 minutos al aire; vale lo que diga el fabricante.',
  bought: 'Lo que se compró',
  whoPaid: 'Quién pagó',
  ownHousehold: (name) => `${name}, en la tienda`,
  bank: 'El banco',
  tin: 'La caja',
  nobody: 'Nadie: ya estaba o fue un regalo',
  paidFor: (name, pieces) => `Pagado por ${pieces} × ${name}`,
  moneyProblem: 'Escriba un importe, como 12,50.',
  boughtSays: 'Las piezas entran en las existencias, y a quien pagó se le debe.',
  writeItDown: 'Anotarlo',
  waits: 'Una compra espera en este teléfono a que haya señal.',
  sendAgain: 'Enviarla otra vez',
  throwAway: 'Descartarla',
  lastGoodDay: (name) => `${name}: vale hasta (si el paquete lo dice)`,
  goodUntil: (days) => `vale hasta ${days}`,
  goodPieces: (day, pieces) => `${day} (${pieces})`,
  spoils: {
    past: (name, pieces, day) =>
      `${name}: ${pieces} de los que hay valían solo hasta el ${day}. No envase con ellos: tírelos y cuente lo que queda. Manda el papel del fabricante.`,
    passes: (name, pieces, day) =>
      `${name}: ${pieces} de los que hay valen solo hasta el ${day}, así que no el día de envasar. No se cuentan para ese día.`,
  },
  shelfStands: (worth) => `Los materiales disponibles costaron ${worth}.`,
  shelfEmpty: 'El almacén aún no guarda materiales.',
  pack: 'Paquete',
  worth: 'Costo',
  add: 'Guardar otro material',
  addIt: 'Guardarlo',
  name: 'Nombre',
  sort: 'Qué es',
  sorts: {
    container: 'Envase',
    lid: 'Tapa',
    liner: 'Forro',
    carton: 'Caja de cartón',
    absorber: 'Absorbente de oxígeno',
    'dry-ice': 'Hielo seco (en gramos)',
    label: 'Etiqueta',
    glove: 'Guantes',
    other: 'Otra cosa, una vez por jornada',
  },
  forKind: 'Para qué envase',
  size: 'Oxígeno que toma uno (ml)',
  holds: 'Cuántos envases caben en una',
  packPieces: 'Piezas por paquete',
  packPrice: (currency) => `Precio del paquete (${currency})`,
  countProblem: 'Escriba un número entero.',
  count: 'Contar lo que hay',
  which: 'Qué material',
  counted: (book) => `Contado (el libro dice ${book})`,
  why: 'Por qué difiere',
  countIt: 'Asentar la diferencia',
  buyOne: 'Anotar lo que llegó',
  packsCame: 'Paquetes que llegaron',
  next: 'Seguir',
};
