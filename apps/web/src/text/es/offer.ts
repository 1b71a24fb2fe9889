import type { OfferText } from '../en/offer.ts';

export const es: OfferText = {
  title: 'Ofertas',
  shelf: 'Mi estante',
  toMe: (count) =>
    count === 0
      ? 'Ahora no se le ofrece nada.'
      : count === 1
        ? 'Se le ofrece una cosa.'
        : `Se le ofrecen ${count} cosas.`,
  opening:
    'Se pregunta primero a quien le falta un alimento, por un tiempo propio. Después es para todos hasta que cierra. Nadie ve el orden.',
  storeTitle: 'Existencias comunes en oferta',
  storeNotYours: 'Las existencias comunes las ofrece la coordinación.',
  giving: 'Donaciones',
  storeStands: (count) =>
    count === 0
      ? 'Ahora no se ofrece nada de las existencias comunes.'
      : count === 1
        ? 'Hay una oferta abierta de las existencias comunes.'
        : `Hay ${count} ofertas abiertas de las existencias comunes.`,
  storeOpening:
    'Primero se pregunta a los miembros, por turnos. Lo que nadie toma puede ir a una despensa, si la oferta lo dice.',
  storeNever: 'Nunca se ofreció nada de las existencias comunes.',
  storeOpen: 'Abiertas',
  storeEnded: 'Terminadas',
  isOffered: 'Aún en oferta',
  wasTaken: 'Tomado por miembros',
  wasTakenBack: 'Retirado',
  wasLeft: 'Quedó al cerrar',
  none: 'nada',
  offeredOn: (at) => `ofrecido ${at}`,
  storeOffer: 'Ofrecer existencias comunes a los miembros',
  storeFood: 'Alimento',
  toPantries: 'Combinar lo que queda con despensas',
  storeAll: 'Existencias comunes: ofertas y qué fue de ellas',
  mine: 'Lo que usted ofrece',
  ofStore: 'Lo que ofrece el almacén',
  taken: 'Lo que usted tomó',
  howToOffer: 'Para ofrecer algo, abra un envase de su estante.',
  yourTurn: (until) => `Su turno hasta: ${until}`,
  forAll: (until) => `Para todos hasta: ${until}`,
  withOthers: (at) => `Ahora se pregunta a otros; para todos desde: ${at}, si todavía queda`,
  over: 'Terminada',
  open: (count, until) =>
    count === 1 ? `Queda uno ofrecido hasta: ${until}` : `Quedan ${count} ofrecidos hasta: ${until}`,
  allTaken: 'Todo tomado',
  takenBack: 'Retirada',
  toPantry: 'Nadie lo tomó; ahora puede ir a un banco de alimentos.',
  nobody: 'Nadie lo tomó.',
  whole: (count, mass) => (count === 1 ? `Un envase, ${mass}` : `${count} envases, ${mass}`),
  fromHousehold: (name) => `De ${name}`,
  fromStore: 'De las existencias comunes',
  fromMember: 'De un miembro',
  gift: 'Un regalo',
  packed: (day) => `envasado: ${day}`,
  origin: (note) => `De dónde viene: ${note}`,
  cautionTitle: 'No es para todos en su mesa',
  mayNotEat: (names) => `No puede comer esto: ${names}.`,
  contains: (allergens) => `Contiene: ${allergens}.`,
  takeTitle: '¿Qué toma?',
  takeSays: (count, money) =>
    count === 1
      ? `Toma un envase y debe ${money} más; quien lo da debe otro tanto menos.`
      : `Toma ${count} envases y debe ${money} más; quien los da debe otro tanto menos.`,
  takeGift: (count) => (count === 1 ? 'Toma un envase como regalo.' : `Toma ${count} envases como regalo.`),
  take: 'Tomarlo',
  pass: 'Dejarlo pasar',
  passed: 'Lo dejó pasar. Si todavía queda cuando sea para todos, puede tomarlo igual.',
  takenBy: (name) => `Lo tomó ${name}`,
  takenByOther: 'Tomado',
  youTook: 'Usted lo tomó. Acuerde con quien lo dio cuándo lo recoge.',
  takeBack: 'Retirar la oferta',
  takeBackSays: 'Lo que nadie ha tomado vuelve a ser suyo para usarlo.',
  noPantry: 'No darlo a un banco de alimentos',
  offerTitle: (food) => `Ofrecer ${food} a otros miembros`,
  which: '¿Qué envases?',
  stays:
    'Lo que se ofrece queda cerrado y entero hasta que alguien lo tome, usted retire la oferta o la oferta cierre.',
  price: 'Precio',
  prices: { gift: 'Un regalo', cost: 'Lo que nos costó', named: 'Un importe propio' },
  each: (currency) => `Por cada envase, ${currency}`,
  moneyProblem: 'Escriba un importe, como 4,50.',
  closes: 'Cierra en',
  days: { '3': 'tres días', '7': 'una semana', '14': 'dos semanas', '28': 'cuatro semanas' },
  turns: 'Cada turno dura',
  hours: { '24': 'un día', '48': 'dos días', '96': 'cuatro días' },
  thenPantry: 'Si nadie lo toma, puede ir a un banco de alimentos',
  note: 'Unas palabras sobre ello',
  pick: 'Marque antes un envase.',
  offer: 'Ofrecerlo',
  nothingWhole: 'Aquí no hay nada cerrado y lleno que ofrecer.',
};
