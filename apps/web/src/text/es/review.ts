import type { ReviewWords } from '../en/review.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: ReviewWords = {
  audit: 'Revisión',
  traces: 'Rastros',
  counts: 'Recuentos',
  year: 'Año',
  allHold: (count) => `El libro está bien: las ${count} comprobaciones se cumplen.`,
  someFail: (failing, count) => `${failing} de ${count} comprobaciones no se cumplen.`,
  lookedAt: (entries, movements) =>
    `Calculado de nuevo ahora mismo con ${entries} asientos y ${movements} movimientos.`,
  reviewNext: 'Lo que sigue en una revisión',
  drawTraces: 'Sortear diez rastros',
  countStock: 'Contar la reserva común',
  signYear: 'Firmar el año',
  invariant: 'Lo que debe cumplirse',
  figure: 'Cifra',
  state: 'Estado',
  holds: 'se cumple',
  fails: 'no se cumple',
  tracesTitle: 'Diez rastros, sorteados con una semilla.',
  drawnTitle: (seed) => `Diez rastros, sorteados con «${seed}».`,
  seed: 'Semilla',
  seedHint: 'Cualquier texto. La misma semilla sortea los mismos sacos en cualquier máquina.',
  draw: 'Sortear',
  drawnFrom: (count, all) => `${s(count, 'saco', 'sacos')} de ${all}.`,
  addsUp: 'cuadra',
  doesNotAddUp: 'no cuadra',
  wayOf: (of) =>
    `${of.food} de ${of.supplier}${of.mark ? `, lote ${of.mark}` : ''}, para ${of.buy}, llegó ${of.day}.`,
  way: 'Camino',
  place: 'Lugar',
  whose: 'De quién',
  gramsHead: 'Gramos',
  ways: { in: 'al saco', out: 'del saco', left: 'aún dentro' },
  placesOf: {
    supplier: 'del proveedor',
    bag: 'el saco',
    home: 'llevado a casa',
    container: 'un recipiente',
    eaten: 'comido',
    given: 'donado',
    animals: 'animales',
    composted: 'compostado',
    spilled: 'derramado',
    sampled: 'de muestra',
    discarded: 'tirado',
    transformed: 'transformado',
    unexplained: 'sin explicar',
  },
  owners: { unassigned: 'aún de nadie', common: 'reserva común', household: 'un hogar' },
  inIsOut: (came, went, left) => `${came} entran = ${went} salen + ${left} quedan`,
  howDrawn: 'Cómo se sortean, para sortearlos otra vez',
  drawnBy:
    'El código de cada saco pasa por SHA-256 tras la semilla y un salto de línea; se toman los diez valores menores, en ese orden.',
  download: 'Descargar como CSV',
  noCommonStock: 'No hay reserva común que contar.',
  countsTitle: (count, differing) =>
    differing === 0
      ? `${s(count, 'envase', 'envases')} de reserva común, sin diferencias abiertas.`
      : `${s(count, 'envase', 'envases')} de reserva común; ${s(differing, 'difiere', 'difieren')} del libro.`,
  findStock: 'Buscar por código o alimento',
  bookSays: (mass) => `libro: ${mass}`,
  notCounted: 'sin contar',
  meets: 'coincide con el libro',
  differs: (mass, money, isBooked) => `${mass}, ${money}${isBooked ? ', anotado' : ''}`,
  bookDifference: 'Anotar la diferencia',
  bookSentence: (mass, money) =>
    `Mueve ${mass} a lo sin explicar o desde ello, y ${money} entre 1400 Reserva común y 5000 Pérdidas.`,
  reason: 'Motivo',
  post: 'Anotar',
  countOf: (code) => `Contado en ${code}`,
  massProblem: 'Escriba un peso, como 25, 25 lb o 12,5 kg.',
  writeDown: 'Apuntar',
  neverClosed: 'Los libros aún no se han cerrado.',
  closedThrough: (day) => `Los libros están cerrados hasta ${day}.`,
  yearEnd: 'El fin de un año',
  yearEnded: (day) =>
    `El último año terminó el ${day}. Al cerrar un año, los ingresos y gastos deben estar en el fondo; un cierre dentro del año solo los enumera.`,
  throughDay: 'Hasta el día',
  nothingToCarry: 'No entró ni salió nada que no se haya trasladado ya.',
  toFund: 'A 3000 Fondo del almacén',
  carry: 'Trasladarlo al fondo',
  carrySentence: (money) => `Anota un asiento que deja cada una en 0,00 y ${money} en el fondo.`,
  close: (day) => `Cerrar los libros hasta ${day}`,
  closeButton: 'Cerrar',
  closeSentence: (day, open) =>
    `Ya no se podrá anotar nada en ${day} ni antes, nunca. Se guarda un resumen de lo cerrado.${
      open > 0 ? ' Lo de la lista de arriba queda abierto.' : ''
    }`,
  openAt: (day) => `Lo que quedaría abierto el ${day}`,
  nothingOpen: 'no queda nada abierto',
  blocksClose: 'hay que resolverlo antes',
  staysOpen: 'quedaría abierto',
  missingAtClose: {
    'results-not-carried': (count, money, day) =>
      `${s(count, 'cuenta', 'cuentas')} de ingresos y gastos, ${money}, sin trasladar al fondo${
        day ? ` por el año que terminó el ${day}` : ''
      }.`,
    'buys-not-clear': (count) =>
      `${s(count, 'compra repartida o cancelada', 'compras repartidas o canceladas')} sin saldar del todo:`,
    'buys-open': (count) => `${s(count, 'compra', 'compras')} sin cerrar:`,
    'claims-open': (count, money) =>
      `${s(count, 'reclamación', 'reclamaciones')} a proveedores sin respuesta, ${money}:`,
    'deposits-held': (count, money) => `Depósitos de ${money} retenidos en ${s(count, 'compra', 'compras')}:`,
    'bank-differs': (_, money, day) => `El banco y el libro difieren en ${money}${day ? ` el ${day}` : ''}.`,
    'bank-not-told': (count, _, day) =>
      `${s(count, 'asiento', 'asientos')} del banco desde que dio su saldo${day ? ` el ${day}` : ''}.`,
    'tin-not-counted': (count) => `${s(count, 'asiento', 'asientos')} de la caja desde que se contó.`,
    'stock-not-counted': (count) =>
      `${s(count, 'saco o envase', 'sacos y envases')} de la reserva común sin contar desde el último cierre.`,
    'stock-differs': (count) =>
      `${s(count, 'recuento', 'recuentos')} de la reserva común con una diferencia sin anotar.`,
  },
  throughTitle: (day) => `Cerrado hasta ${day}`,
  closedBy: (name, at, entries) =>
    entries === null ? `${name}, ${at}.` : `${name}, ${at}: ${s(entries, 'asiento', 'asientos')}.`,
  noDigest: 'Este cierre no guardó resumen.',
  digestHolds: 'el resumen sigue cumpliéndose',
  digestFails: 'el resumen ya no se cumple',
  takeText: 'Llevarse el texto del que sale',
  howSummed: 'sha256sum de ese texto da el resumen. Cada texto empieza con el resumen del cierre anterior.',
  duties: { reviewer: 'revisor', treasurer: 'tesorero', coordinator: 'coordinador' },
  signed: (duty) => `firmado como ${duty}`,
  notSigned: (duty) => `sin firma: ${duty}`,
  signAs: (duty) => `Firmar como ${duty}`,
  remarks: 'Observaciones y excepciones',
  signSentence: (digest) => `Usted firma lo que tiene el resumen ${digest}… Una firma nunca se retira.`,
  sign: 'Firmar',
};
