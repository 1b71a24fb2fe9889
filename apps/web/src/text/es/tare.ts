import type { TareWords } from '../en/tare.ts';

export const es: TareWords = {
  title: 'Pesar diez vacíos',
  notWeighed: (kind) => `${kind}: aún nadie ha pesado diez vacíos.`,
  weighs: (kind, grams) => `${kind}: vacío pesa ${grams} g.`,
  unlike: (kind, grams) => `${kind}: los vacíos difieren en ${grams} g, así que cada uno se pesa aparte.`,
  last: (when, who, least, most) => `Pesados ${when} por ${who}, de ${least} a ${most} g.`,
  says: 'Pese diez al abrir un lote nuevo de envases o de tapas: cada uno tal como estará lleno en la balanza, con su tapa o su forro, o sin ellos.',
  kind: 'Envase',
  ten: 'Los diez pesados',
  takeOut: (no, grams) => `Quitar el número ${no}: ${grams} g`,
  soFar: (count, spread, most) =>
    count === 0
      ? 'El primero de diez.'
      : `${count} de diez. ${spread} g entre el más ligero y el más pesado; se admiten ${most} g.`,
  onTheScale: (no) => `Envase vacío ${no}, en gramos`,
  readingProblem: 'Escriba gramos enteros, de 1 a 100 000.',
  pad: 'Teclas de cifras',
  rubOut: 'Borrar la última cifra',
  next: 'Siguiente',
  same: (grams) => `Otra vez igual: ${grams} g`,
  alike: (grams, spread) => `${grams} g cada uno, ${spread} g entre el más ligero y el más pesado.`,
  tooUnlike: (spread, most) =>
    `${spread} g entre el más ligero y el más pesado; más de ${most} g es demasiado para una sola tara. Toque una cifra mal tomada, o pese cada envase aparte.`,
  keep: (grams) => `Guardar ${grams} g como tara`,
  isGross: (kind) => `Cada ${kind} está en la balanza con su alimento`,
  takenOff: (grams) => `Se descuentan ${grams} g por el envase.`,
  noTare: 'Nadie ha pesado diez vacíos de este tipo; escriba lo que pesa vacío cada uno.',
  eachByItself: (spread) => `Los diez vacíos difieren en ${spread} g; escriba lo que pesa vacío cada uno.`,
  ownTare: 'Este envase vacío, en gramos',
  typeOwn: 'Pese antes este vacío',
  figureGross: 'En la balanza, con el envase',
  scaleShows: (grams) => `la balanza marca ${grams} g`,
  net: (gross, tare, net) => `${gross} g menos ${tare} g son ${net} g netos.`,
  inAll: (count, grams) => `${count} de ellos: ${grams} g.`,
  tareAbove: (tare, gross) =>
    `El envase vacío pesa ${tare} g y el lleno ${gross} g. Vuelva a leer la balanza.`,
  keepUnlike: 'Guardar: cada uno se pesa aparte',
};
