import type { RunWords } from '../en/run.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: RunWords = {
  runBuy: 'Llevar esta compra',
  seeRun: 'Cómo se lleva la compra',
  planOne: 'Planear una compra',
  stagesOf: 'Etapas de la compra',
  stageAt: (at, of) => `${at} de ${of}`,

  planned: (name, foods, quotes) =>
    `${name} se está planeando: ${s(foods, 'alimento', 'alimentos')}, ${s(quotes, 'oferta', 'ofertas')}.`,
  gathersDays: (name, days) => `${name} reúne promesas por ${s(days, 'día', 'días')} más.`,
  gathersToday: (name, at) => `${name} reúne promesas hasta hoy, ${at}.`,
  gatheringOver: (name) => `El plazo para prometer en ${name} ha terminado.`,
  tipPrice: (food, bags, extra) =>
    `${food}: ${s(bags, 'saco lleno', 'sacos llenos')}; ${s(extra, 'saco más trae', 'sacos más traen')} el siguiente precio.`,
  tipFreight: (food, bags, extra) =>
    `${food}: ${s(bags, 'saco lleno', 'sacos llenos')}; ${s(extra, 'saco más trae', 'sacos más traen')} porte gratis.`,
  fixedWaits: (name, count) =>
    `${name} está fijada. ${count === 1 ? 'Falta 1 depósito' : `Faltan ${count} depósitos`}.`,
  fixedReady: (name) => `${name} está fijada. Solo faltan los dos acuerdos para pedir.`,

  notOrderedYet: (name) => `${name} no está pedida aún. Primero se fija.`,
  nextStep: 'El siguiente paso',
  missingTitle: 'Falta aún',
  nothingMissing: 'No falta nada.',
  see: 'Ver',
  whoMoves: (duties) => `Esto corresponde a: ${duties}.`,
  duties: {
    coordinator: 'coordinación',
    treasurer: 'tesorería',
    packing_lead: 'jefatura de envasado',
    equipment_keeper: 'cuidado del equipo',
    reviewer: 'revisión',
  },

  openForPledges: 'Abrir a las promesas',
  openPosts: (households, closes) =>
    `${s(households, 'hogar podrá', 'hogares podrán')} prometer para cada alimento hasta ${closes}. Cuando alguien haya prometido, ya no se añaden alimentos.`,
  lookBeforeFixing: 'Mirar antes de fijar',
  toOrder: 'Al pedido',
  toLanding: 'A la llegada',
  toSplit: 'A la división',
  toClosing: 'Al cierre',
  askTitle: (extra, food, by) =>
    `Pida ${s(extra, 'saco más', 'sacos más')} de ${food.toLowerCase()} antes de ${by}`,
  askWords: (extra, cost, saved) =>
    `${extra === 1 ? 'Cuesta' : 'Cuestan'} ${cost} entre todos. Los que ya están ahorran juntos ${saved}.`,
  askFree: (saved) => `La cuenta total no sube. Los que ya están ahorran juntos ${saved}.`,
  copyAsk: 'Copiar las palabras para los vecinos',
  copied: 'Copiado. Péguelo donde hablan sus vecinos.',
  copyByHand: 'Marque las palabras de abajo y cópielas.',
  askMessage: (at) =>
    `${at.buy}: con ${at.mass} más de ${at.food.toLowerCase()} baja el precio para todos. En total cuesta ${at.cost} más, y los que ya están ahorran juntos ${at.saved}. Las promesas cierran ${at.by}.`,

  quotesLanded: (food, quotes) => `${food}: ${s(quotes, 'oferta', 'ofertas')}, puestas aquí`,
  freightByOrder: 'cada una con su porte',
  perUnitLanded: (unit) => (unit === 'kg' ? '¢ por kilogramo, puesto aquí' : '¢ por libra, puesta aquí'),
  curveLabel: (food) =>
    `Precio de ${food} puesto aquí según el peso, oferta por oferta; la tabla de abajo dice lo mismo`,
  pledgedMark: (mass) => `prometido ${mass}`,
  leastMark: (mass) => `mínimo ${mass}`,
  mostMark: (mass) => `máximo ${mass}`,
  hatched: 'rayado: más caro que el salto',
  jumpMark: (bags, price) => `${s(bags, 'saco', 'sacos')}, ${price}`,
  supplierAndBag: 'Proveedor, saco',
  priceABag: 'Precio por saco',
  freight: 'Porte',
  from: (price, bags) => (bags === 1 ? price : `${price} desde ${bags}`),
  incremental: 'cada tramo para sus sacos',
  freightFrom: (money, mass) => `${money} desde ${mass}`,
  freeFrom: (money) => `0,00 desde ${money}`,
  atLeastGoods: (money) => `${money} como mínimo`,
  atLeastMass: (mass) => `${mass} como mínimo`,
  mostBagsOf: (bags) => `${s(bags, 'saco', 'sacos')} como máximo`,
  till: (bag, day) => `${bag}, hasta ${day}`,
  daysToSpare: (days) => `${s(days, 'día', 'días')} de margen`,
  lapsesBefore: 'vence antes del pedido',
  belowMinimum: 'bajo su mínimo',
  cheapest: 'la más barata',
  chosen: 'elegida',
  notOffered: 'no tanto',
  noQuoteForFood: 'Ninguna oferta vigente para este alimento.',
  deadZones: (spans) => `Nunca pida ${spans}: un pedido mayor cuesta menos.`,
  span: (from, to) => `de ${from} a ${to}`,

  lines: 'Alimentos',
  lineFacts: (at) => `mínimo ${at.least}, deseado ${at.wanted}, máximo ${at.most}`,
  bagsOrdered: (bags) => s(bags, 'saco', 'sacos'),
  bagsFull: 'Sacos llenos',
  toNextBag: 'Al siguiente le falta',
  toGo: (mass) => `faltan ${mass}`,
  full: 'lleno',
  nobody: 'nadie aún',
  landedPrice: 'Puesto aquí',
  tipColumn: 'Unos sacos más',
  tipCell: (extra, cost, saved) => `${extra} más: ${cost}, ahorra ${saved}`,
  noTip: 'ningún salto cerca',

  wholeBuy: 'Toda la compra, ahora',
  wholeBetween: 'Entre mínimo y máximo',
  wholeMass: 'En sacos enteros',
  commonStock: 'Queda para la reserva común',

  pledges: 'Promesas',
  pledgesInAll: (least, most) => `en total: mínimo ${least}, máximo ${most}`,
  household: 'Hogar',
  threeColumn: 'Mínimo, deseado, máximo',
  wantedColumn: 'Deseado',
  fillColumn: 'Recibe',
  findHousehold: 'Buscar un hogar',
  nothingFound: 'Ningún hogar se llama así.',
  inOf: (count, of) => `${count} de ${of}`,
  noPledges: 'Nadie ha prometido para este alimento aún.',
  late: 'Quién falta',
  notPledged: (count) => (count === 1 ? '1 hogar no ha prometido: ' : `${count} hogares no han prometido: `),
  allPledged: 'Todos los hogares han prometido algo.',
  depositsMissing: (count) => (count === 1 ? 'Falta 1 depósito: ' : `Faltan ${count} depósitos: `),
  allDeposits: 'Todos los depósitos han llegado o se dispensaron.',
  amountsHidden: 'Cuánto, y por qué se dispensó a alguien, queda entre el hogar y la tesorería.',

  more: 'Más sobre esta compra',
  editPlan: 'Nombre, días, lugar y alimentos',
  toQuotes: 'Ofertas',
  promised: 'Lo prometido, y abrirla otra vez',
  theOrder: 'El pedido y sus números',
  asMember: 'La compra como la ven los miembros',
  takeOut: 'Sacar un hogar',
  takeOutWords: {
    gathering: 'Sus promesas se van, y un depósito guardado vuelve a su saldo.',
    fixed:
      'Los sacos se llenan otra vez sin él. Su depósito paga lo que eso cuesta a los demás, hasta donde alcance; el resto vuelve. Los dos acuerdos para pedir se dan de nuevo.',
    ordered:
      'Su comida se ofrece a quienes prometieron más, luego a la reserva común. Paga lo que nadie tome.',
    landed:
      'Su comida se ofrece a quienes prometieron más, luego a la reserva común. Paga lo que nadie tome.',
  },
  chooseHousehold: 'Elija un hogar',
  declined: 'Se les ofreció tomar la comida, y dijeron que no',
  reason: 'Motivo',
  reasonHint: 'Queda guardado con la compra.',
  reasonNeeded: 'Escriba el motivo.',
  takeOutNow: (name) => `Sacar a ${name}`,
  takenOut: (name, taken, left) =>
    `${name} está fuera. Otros tomaron ${taken}; ${left} se queda con el hogar.`,
  takenOutPledges: (name) => `${name} está fuera de la compra.`,
  withdrawnBefore: 'Sacados hasta ahora',
  callOff: 'Cancelar la compra',
  callOffWords: 'Cada depósito vuelve al saldo de su hogar. A nadie se le cobra nada.',
  callOffOrdered:
    'La compra está pedida: cancele primero con los proveedores. Lo que aún facturen lo lleva el fondo del almacén.',
  cancellationNote: 'Lo acordado con los proveedores',
  cancellationCost: (supplier) => `Aún factura ${supplier}`,
  callOffNow: (name) => `Cancelar ${name}`,
  calledOff: (count) =>
    count === 1
      ? 'La compra está cancelada. Volvió 1 depósito.'
      : `La compra está cancelada. Volvieron ${count} depósitos.`,

  needsMe: 'Lo que le espera hoy',
  nothingNeedsMe: 'Nada espera a sus cargos.',
  byDay: (day) => `antes del ${day}`,
  overdue: 'con retraso',

  moneyProblem: 'Escriba un importe, como 41,20.',
  numberProblem: 'Escriba un número entero.',
  massProblem: 'Escriba un peso, como 25, 25 lb o 12,5 kg.',

  problems: {},
};
