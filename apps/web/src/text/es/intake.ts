import type { en } from '../en/intake.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: typeof en = {
  title: 'Recibido',
  shelf: 'Su despensa',
  whose: 'De quién pasa a ser',
  owners: { household: 'De nuestro hogar', common: 'De las existencias comunes' },
  stands: (count) =>
    count === 0 ? 'Aún no se recibió nada' : s(count, 'donación recibida', 'donaciones recibidas'),
  listWords:
    'Lo que no se compró a través del almacén entra tras una breve entrevista. Lo que nadie sabe cuenta como desconocido, y se toma como viejo y guardado al calor. Quién lo dio se escribe aparte y no sale en ninguna lista ni etiqueta.',
  begin: 'Recibir lo que alguien da',
  unknownHistory: 'historia desconocida',
  takenOn: (day) => `recibido ${day}`,
  packedOn: (day) => `envasado ${day}`,
  interview: '¿Qué sabemos de ello?',
  step: (at, all) => `Pregunta ${at} de ${all}`,
  unknownIsFine: '«Nadie sabe» es una buena respuesta: adivinar es peor.',
  back: 'Una pregunta atrás',
  questions: {
    packedBy: {
      ask: '¿Quién dice qué es y cuándo se envasó?',
      answers: {
        paper: 'Está en papel o en la etiqueta',
        memory: 'Alguien lo recuerda',
        unknown: 'Nadie sabe',
      },
    },
    packedHow: {
      ask: '¿Cómo se envasó?',
      answers: {
        'bought-sealed': 'Comprado, y aún sellado por su fabricante',
        'home-packed': 'Envasado en casa',
        unknown: 'Nadie sabe',
      },
    },
    summers: {
      ask: '¿Dónde estuvo en los veranos?',
      answers: {
        cellar: 'En un sótano, o igual de fresco',
        kitchen: 'En una cocina u otro cuarto',
        garage: 'En un garaje, un cobertizo o un desván',
        unknown: 'Nadie sabe',
      },
    },
    harm: {
      ask: '¿Estuvo alguna vez mojado, o cerca de combustible, pintura o veneno?',
      answers: {
        never: 'Ni lo uno ni lo otro',
        wet: 'Estuvo mojado, o en una inundación',
        chemicals: 'Estuvo cerca de combustible, pintura o veneno',
        unknown: 'Nadie sabe',
      },
    },
    pests: {
      ask: '¿Se vieron roedores o insectos en ello o cerca?',
      answers: { no: 'No', yes: 'Sí', unknown: 'Nadie sabe' },
    },
    opened: {
      ask: '¿Se abrió antes algo de ello?',
      answers: { no: 'No', yes: 'Sí', unknown: 'Nadie sabe' },
    },
  },
  verdicts: {
    refused: 'No se recibe',
    'unknown-history': 'Puede entrar, con historia desconocida',
    known: 'Puede entrar',
  },
  verdictSays: {
    refused: 'Dé las gracias a quien lo trajo. No lo coma ni lo pase a otros.',
    'unknown-history':
      'Se calcula como si siempre hubiera estado al calor. Mire cada envase antes de que alguien coma de él, y no prometa a nadie cuánto dura.',
    known: 'Cuánto dura se calcula con lo que se dijo, y se muestra como estimación.',
  },
  anew: 'Empezar con otra donación',
  weigh: 'Pesarlo y apuntarlo',
  weighWords:
    'Ponga cada envase en la balanza y reste lo que pesa vacío. Un cubo o saco lleno es carga para dos: levante con las piernas.',
  food: 'Alimento',
  otherFood: 'Otro alimento',
  foodNeeded: 'Elija antes un alimento.',
  packedGuess: 'Nadie sabe cuándo se envasó: ponga el día más temprano que pueda ser.',
  mark: 'Marca de lote o de caducidad, si la hay',
  allergensMet: 'Alérgenos en la cocina de donde viene',
  allergensHint: 'Como cacahuate, leche, trigo; o desconocido.',
  donor: 'Quién lo da',
  donorHint:
    'Se guarda aparte: solo lo lee un coordinador que diga para qué. Escriba «desconocido» si nadie lo sabe.',
  donorNeeded: 'Diga quién lo dio, o «desconocido».',
  note: 'Nota',
  takeIn: 'Recibirlo',
  tookIn: (mass, count) => `${mass} están en el libro, en ${s(count, 'envase', 'envases')}.`,
  writeCodes: 'Escriba cada código en su etiqueta:',
  lookNext: 'Mirarlos ahora',
};
