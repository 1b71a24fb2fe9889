import type { en } from '../en/said.ts';

export const es: typeof en = {
  title: 'Con las manos mojadas: dígalo',
  label: 'Diga o escriba el saco',
  hint: 'Toque el micrófono del teclado de su teléfono y diga, por ejemplo: saco siete, seco, veintidós coma siete, guardar.',
  heard: (bag) => `Se entendió: ${bag}.`,
  bagIs: (no) => `saco ${no}`,
  otherBag: (said, now) => `Dijo saco ${said}, pero en la báscula está el saco ${now}.`,
  notHeard: (word) =>
    `«${word}» no es ninguna de las palabras que se conocen aquí. Dígalo otra vez o escríbalo.`,
  bagWords: 'saco bolsa número numero',
  keepWords: 'guardar guarda listo',
  pointWords: 'coma punto',
  andWords: 'y el la está esta es con',
  conditionWords: {
    dry: 'seco seca',
    torn: 'roto rota',
    wet: 'mojado mojada húmedo',
    infested: 'insectos bichos',
    odour: 'huele olor',
    wrong: 'otro equivocado',
  },
  unitWords: {
    kg: 'kg kilo kilos kilogramos',
    lb: 'lb libra libras',
  },
  hundreds: 'cientos',
  numbers:
    '0=cero 1=un,uno,una 2=dos 3=tres 4=cuatro 5=cinco 6=seis 7=siete 8=ocho 9=nueve 10=diez 11=once 12=doce 13=trece 14=catorce 15=quince 16=dieciséis,dieciseis 17=diecisiete 18=dieciocho 19=diecinueve 20=veinte 21=veintiuno,veintiún 22=veintidós,veintidos 23=veintitrés,veintitres 24=veinticuatro 25=veinticinco 26=veintiséis,veintiseis 27=veintisiete 28=veintiocho 29=veintinueve 30=treinta 40=cuarenta 50=cincuenta 60=sesenta 70=setenta 80=ochenta 90=noventa 100=cien,ciento 200=doscientos,doscientas',
};
