/** Notices and reminders, in Spanish. */
export const ES_NOTICE: Readonly<Record<string, string>> = {
  'Search for 100 characters at most.': 'Busque como mucho 100 letras.',
  'Say in a few words what it is about.': 'Diga en pocas palabras de qué se trata.',
  'A title has 120 characters at most.': 'Un título tiene como mucho 120 letras.',
  'Say what is to be done.': 'Diga qué hay que hacer.',
  'A notice has 2,000 characters at most.': 'Un aviso tiene como mucho 2000 letras.',
  'This day is over; nobody can meet it.': 'Ese día ya pasó; nadie puede cumplirlo.',
  'There is no such household here.': 'Aquí no hay tal hogar.',
  'There is no such buy.': 'No existe esa compra.',
  'The book told this itself; it stands as long as what it is about.':
    'Esto lo dijo el propio libro; vale mientras valga aquello de lo que trata.',
  'These hours never come: they end when they begin.': 'Estas horas no llegan nunca: acaban cuando empiezan.',
  'The hour of the daily letter must lie in your hours, or it never comes.':
    'La hora de la carta diaria debe estar en sus horas, o no llega nunca.',
  'What is about safety can’t be stopped, only acknowledged.':
    'Lo que trata de seguridad no se puede parar, solo confirmar.',
  '{} gathers pledges until {}. Pledge what you want of it.':
    '{} reúne promesas hasta el {}. Prometa lo que quiera de ella.',
  '{} gathers pledges again: {} Look at your pledge.': '{} vuelve a reunir promesas: {} Mire su promesa.',
  '{} is fixed. Look at what you were promised and see to your deposit.':
    '{} está fijada. Mire lo que se le prometió y ocúpese de su depósito.',
  '{} is ordered. The day on which it lands is not settled yet.':
    '{} está pedida. El día de su llegada aún no está fijado.',
  '{} is ordered and lands on {}. Hands are wanted on that day.':
    '{} está pedida y llega el {}. Ese día hacen falta manos.',
  '{} has landed. It is weighed and shared out next.': '{} ha llegado. Ahora se pesa y se reparte.',
  '{} is shared out. Choose an hour to fetch your food.':
    '{} está repartida. Elija una hora para recoger su alimento.',
  '{} is called off: {} What you paid stands on your balance.':
    '{} queda anulada: {} Lo que pagó está en su saldo.',
  'The day on which {} lands is open again.': 'El día de llegada de {} vuelve a estar abierto.',
  '{} is about safety. Telephone {} and {} more: nobody there has acknowledged it.':
    '{} trata de seguridad. Llame a {} y a {} más: nadie allí lo ha confirmado.',
  '{} is about safety. Telephone {}: nobody there has acknowledged it.':
    '{} trata de seguridad. Llame a {}: nadie allí lo ha confirmado.',
  '{} now lands on {}.': '{} llega ahora el {}.',
  '{} now lands here: {}': '{} llega ahora aquí: {}',
  'The place where {} lands is open again.': 'El lugar de llegada de {} vuelve a estar abierto.',
  '{} now lands on {}; the place is open again.': '{} llega ahora el {}; el lugar vuelve a estar abierto.',
  '{} now lands on {}; the place is now: {}': '{} llega ahora el {}; el lugar es ahora: {}',
  'When and where {} lands is open again.': 'El día y el lugar de llegada de {} vuelven a estar abiertos.',
  'The day on which {} lands is open again; the place is now: {}':
    'El día de llegada de {} vuelve a estar abierto; el lugar es ahora: {}',
  'Bag {}, in which you have food, is on hold: {} Do not eat from it, open it or give it away until you hear more.':
    'El saco {}, en el que usted tiene alimento, está retenido: {} No coma de él, no lo abra ni lo dé hasta saber más.',
  'Bag {}, in which you have food, is on hold: {} You have more of the same lot in {}. Do not eat any of it, open it or give it away until you hear more.':
    'El saco {}, en el que usted tiene alimento, está retenido: {} Tiene más del mismo lote en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más.',
  'Bag {} is on hold: {} You have food of the same lot in {}. Do not eat any of it, open it or give it away until you hear more.':
    'El saco {} está retenido: {} Usted tiene alimento del mismo lote en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más.',
  'Bag {} is released: {} What you have of it may be used again.':
    'El saco {} queda libre: {} Lo que usted tiene de él se puede usar otra vez.',
};
