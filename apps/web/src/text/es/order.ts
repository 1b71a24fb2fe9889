import type { OrderWords } from '../en/order.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: OrderWords = {
  fixingTitle: (bags, total, currency) => `Fijada ahora, esta compra es ${bags} por ${total} ${currency}.`,
  bagsOf: (bags, food) => `${s(bags, 'saco', 'sacos')} de ${food.toLowerCase()}`,
  nothingBought: 'Con las promesas de ahora no se compraría nada.',
  nobodyLeftOut: 'Nadie queda fuera.',
  leftOut: (count) => `${s(count, 'promesa no recibe', 'promesas no reciben')} nada.`,
  whoGetsWhat: 'Quién recibe qué',
  household: 'Hogar',
  wanted: 'Deseado',
  gets: 'Recibe',
  unfilled: 'Reserva común',
  sum: 'En total',
  whoIsLeftOut: 'Quién queda fuera, y por qué',
  because: 'Porque',
  reasons: {
    ceiling: 'el precio supera el más alto que nombraron',
    'does-not-fit': 'no se junta un saco entero',
    'line-not-bought': 'se desea muy poco para un saco',
    'no-quote': 'ninguna oferta vigente para este alimento',
    substitute: 'el precio supera el más alto; reciben su sustituto',
    override: 'dejado fuera a mano',
  },
  instead: (food) => `en su lugar: ${food.toLowerCase()}`,
  watch: 'Mire esto primero',
  cheaper: (food, bags, cost) =>
    `${food}: ${s(bags, 'saco', 'sacos')} cambiarían la cuenta en ${cost}. Un pedido mayor no cuesta más; haga ese.`,
  lapsesSoon: (supplier, day) =>
    `La oferta de ${supplier} vale hasta ${day}; los depósitos necesitan unos tres días.`,
  certificate: (isProven) =>
    isProven
      ? 'Ningún otro llenado de estas promesas es mejor; está probado.'
      : 'Es el mejor llenado que se halló a tiempo.',

  fixTitle: 'Fijar esta compra',
  fixWords: (households, mass, percent) =>
    `Promete ${mass} a ${s(households, 'hogar', 'hogares')} y pide a cada uno un depósito del ${percent} % de su estimado. Después ya no se cambian promesas.`,
  fixNow: 'Fijar esta compra',
  cantFix: 'No se puede fijar aún.',
  byHand: 'Poner sacos y partes a mano',
  byHandWords: 'Solo se envía lo que usted cambie. El motivo queda con la compra, a la vista de todos.',
  bagsOfOffer: (bag, supplier) => `Sacos de ${bag} de ${supplier}`,
  getsOf: (name, unit) => `${name}, ${unit}`,
  holds: (at) =>
    `Los sacos contienen ${at.bags}; se reparten ${at.allotted}, quedan ${at.left} para la reserva común.`,
  overBy: (mass) => `Se reparten ${mass} más de lo que contienen los sacos.`,
  reason: 'Motivo',
  reasonHint: 'Por qué no se toma el llenado calculado.',
  reasonNeeded: 'Escriba el motivo.',
  fixByHand: 'Fijarla como se puso a mano',
  wholeProblem: 'Escriba un número entero.',
  unchanged: 'No se cambió nada: es el llenado calculado.',

  fixedTitle: (name) => `${name} está fijada. Esto es lo prometido.`,
  notHere: (name) => `${name} no se puede fijar en su etapa.`,
  reopen: 'Abrirla otra vez a las promesas',
  reopenWords:
    'Se van las promesas hechas, los depósitos pedidos y los acuerdos para pedir. Los depósitos recibidos siguen guardados hasta que se fije de nuevo.',
  told: 'Su depósito sigue guardado, y se lo dije',
  reopenNow: 'Abrir otra vez a las promesas',

  orderTitle: (name, total, currency) => `${name}: el pedido suma ${total} ${currency}.`,
  orderedTitle: (name, count, numbers) =>
    count === 1
      ? `${name} está pedida con el número ${numbers}.`
      : `${name} está pedida con los números ${numbers}.`,
  reckonedAt: (total) => `Se calculó en ${total} al fijar la compra; los proveedores piden otra cosa ahora.`,
  agreements: 'Dos acuerdos',
  agreementsWords: 'La segunda de dos personas envía el pedido. Entonces se mira lo que falta.',
  asCoordinator: 'Coordinación',
  asTreasurer: 'Tesorería',
  agreedBy: (name, at) => `${name} lo acordó, ${at}`,
  notYet: 'aún no',
  agreeTitle: (isLast) => (isLast ? 'Acordar, y enviar el pedido' : 'Acordar el pedido'),
  agreeFirst: 'Su acuerdo queda anotado. No se pide nada hasta que el otro cargo lo acuerde también.',
  agreeLast: (total, suppliers) =>
    `Pide ${total} a ${s(suppliers, 'proveedor', 'proveedores')}, cada uno con su número.`,
  agreeAs: (duty) => `Acordar por ${duty.toLowerCase()}`,
  alreadyAgreed: 'Usted ya lo acordó. Sigue el otro cargo.',
  note: 'Nota para el proveedor',
  noteHint: 'Como: por favor, un camión con plataforma.',
  deposits: 'Depósitos',
  depositIn: 'recibido o dispensado',
  depositMissing: 'falta',
  depositState: 'Estado',
  confirmTerms: 'Lo que piden ahora los proveedores',
  orders: 'El pedido',
  orderNo: (number) => `Pedido n.º ${number}`,
  orderedOn: (day) => `pedido el ${day}`,
  deliverTo: 'Entregar en',
  askFor: 'Preguntar por',
  food: 'Alimento',
  bag: 'Saco',
  bags: 'Sacos',
  aBag: 'Un saco',
  goods: 'Mercancía',
  freight: 'Porte',
  total: 'Mercancía y porte',
  cancelled: (note) => `Cancelado: ${note}`,
};
