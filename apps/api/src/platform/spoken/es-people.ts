/** People, households, foods and containers, in Spanish. */
export const ES_PEOPLE: Readonly<Record<string, string>> = {
  'This day is past; a duty that ended is taken back.': 'Ese día ya pasó; un cargo que terminó se retira.',
  'Your duty as coordinator ends soon: hand it over.':
    'Su cargo en la coordinación termina pronto: traspáselo.',
  'The duty of {} as coordinator ends soon: find who takes it over.':
    'El cargo de {} en la coordinación termina pronto: busque quién lo toma.',
  'Your duty as treasurer ends soon: hand it over.': 'Su cargo en la tesorería termina pronto: traspáselo.',
  'The duty of {} as treasurer ends soon: find who takes it over.':
    'El cargo de {} en la tesorería termina pronto: busque quién lo toma.',
  'Your duty as packing lead ends soon: hand it over.':
    'Su cargo a cargo del envasado termina pronto: traspáselo.',
  'The duty of {} as packing lead ends soon: find who takes it over.':
    'El cargo de {} a cargo del envasado termina pronto: busque quién lo toma.',
  'Your duty as equipment keeper ends soon: hand it over.':
    'Su cargo a cargo del equipo termina pronto: traspáselo.',
  'The duty of {} as equipment keeper ends soon: find who takes it over.':
    'El cargo de {} a cargo del equipo termina pronto: busque quién lo toma.',
  'Your duty as reviewer ends soon: hand it over.': 'Su cargo en la revisión termina pronto: traspáselo.',
  'The duty of {} as reviewer ends soon: find who takes it over.':
    'El cargo de {} en la revisión termina pronto: busque quién lo toma.',
  'The reviewer may not be the treasurer nor live in the treasurer’s household.':
    'Quien revisa no puede ser el tesorero ni vivir en su hogar.',
  'Somebody else must hold this duty before it can end.':
    'Otra persona debe tener este cargo antes de que termine.',
  'The household can leave once what it owes, holds and is promised is settled.':
    'El hogar puede irse cuando esté saldado lo que debe, tiene y se le prometió.',
  'This household has left the storehouse.': 'Este hogar dejó el almacén.',
  'This has 300 characters at most.': 'Esto tiene como mucho 300 letras.',
  'Say what you need it for.': 'Diga para qué lo necesita.',
  'A purpose has 200 characters at most.': 'Un propósito tiene como mucho 200 letras.',
  'Say what you need it for; the household sees your words.':
    'Diga para qué lo necesita; el hogar verá sus palabras.',
  'Give a whole number of grams above zero.': 'Dé un número entero de gramos mayor que cero.',
  'Record 500 containers at a time at most.': 'Anote como mucho 500 recipientes a la vez.',
  'Say where it came from, or that nobody knows.': 'Diga de dónde vino, o que nadie lo sabe.',
  'There are {} g left in {}.': 'Quedan {} g en {}.',
  'There are {} g left.': 'Quedan {} g.',
  'There are {} g of it in the kitchen.': 'En la cocina hay {} g de esto.',
  'Some of it has been eaten in the kitchen since.': 'Desde entonces se comió algo de esto en la cocina.',
  '{} has been eaten from or is empty already.': 'De {} ya se ha comido, o está vacío.',
  '{} g in this bag are yours; {} g were asked for.': 'En este saco {} g son suyos; se pidieron {} g.',
  '{} g of this bag are yours.': '{} g de este saco son suyos.',
  '{} holds {} g of {} at the most.': 'En {} caben como mucho {} g de {}.',
  'Level is {} g; {} g need shaking down.': 'A ras caben {} g; para {} g hay que asentarlo.',
  'What was poured into {} was taken back, so its label is spent. Throw the label away and fill a new container.':
    'Lo que se vertió en {} se devolvió, así que su etiqueta está gastada. Tire la etiqueta y llene un recipiente nuevo.',
  'How heavy this food lies is not known, so the fill was not checked.':
    'No se sabe cuánto pesa este alimento por volumen, así que no se comprobó si cabe.',
  'The container can’t hold that much.': 'En el recipiente no cabe tanto.',
  'A container holds one lot only.': 'Un recipiente guarda un solo lote.',
  'A code is small letters and digits with single hyphens, such as jar-pint.':
    'Un código son letras minúsculas y cifras con guiones sueltos, como jar-pint.',
  'A code is small letters and digits with single hyphens, such as red-lentils.':
    'Un código son letras minúsculas y cifras con guiones sueltos, como red-lentils.',
  'Say where the capacity comes from.': 'Diga de dónde sale la capacidad.',
  'There is a kind with the code {} already.': 'Ya hay una clase con el código {}.',
  'The rest comes last.': 'El resto va al final.',
  '{} has no login, and a duty is done with one.': '{} no tiene acceso, y un cargo se ejerce con uno.',
  'A duty needs a login.': 'Un cargo necesita un acceso.',
  '{} holds this duty already.': '{} ya tiene este cargo.',
  'Write a birth date as a day, a month or a year: 2019-04-30, 2019-04 or 2019.':
    'Escriba el nacimiento como día, mes o año: 2019-04-30, 2019-04 o 2019.',
  'A birth date lies in 1900 or later.': 'Un nacimiento es de 1900 o después.',
  'This birth date is still to come.': 'Este nacimiento aún no ha llegado.',
  'Name each allergen once.': 'Nombre cada alérgeno una vez.',
  'Name each food once.': 'Nombre cada alimento una vez.',
  'Name each group once.': 'Nombre cada grupo una vez.',
  'Name one group at least.': 'Nombre al menos un grupo.',
  'The storehouse has no food called {}.': 'El almacén no tiene un alimento llamado {}.',
  'State the allergens; an empty list says that there are none.':
    'Indique los alérgenos; una lista vacía dice que no hay.',
  'Say where the figures come from.': 'Diga de dónde salen las cifras.',
  'There is a food with the code {} already.': 'Ya hay un alimento con el código {}.',
  'This food is on a line of a buy that goes on: {}.': 'Este alimento está en una compra en marcha: {}.',
  'A helper’s right ends after {} days at most.':
    'El permiso de un ayudante termina como mucho a los {} días.',
  'Say why this household needs somebody to act for it.':
    'Diga por qué este hogar necesita que alguien actúe por él.',
  'This person belongs to the household already.': 'Esta persona ya es del hogar.',
  'A helper needs a login to act with.': 'Un ayudante necesita un acceso para actuar.',
  '{} may act for this household already.': '{} ya puede actuar por este hogar.',
  'This right has ended already.': 'Este permiso ya terminó.',
  'A seat’s number is what a household that left is called.':
    'El número de un puesto es el nombre de un hogar que se fue.',
  'There is a household called {} already.': 'Ya hay un hogar llamado {}.',
  'A household that is there already has its name.': 'Un hogar que ya está tiene su nombre.',
  'This invitation is into a household with a name.': 'Esta invitación es a un hogar con nombre.',
  'A new household needs a name.': 'Un hogar nuevo necesita un nombre.',
  'The household owes{}. It is to be paid first.': 'El hogar debe{}. Primero hay que pagarlo.',
  'The household is owed{}. It is to be paid back first.':
    'Al hogar se le debe{}. Primero hay que devolverlo.',
  'A deposit{}{} is held{}.': 'Se guarda un depósito{}{}{}.',
  '{} g of {} in bag {} wait to be fetched.': '{} g de {} en el saco {} esperan ser recogidos.',
  '{} g of {} in {} are on hold.': '{} g de {} en {} están retenidos.',
  '{} is still out with the household. It is to be brought back first.':
    '{} está todavía en manos del hogar. Primero hay que devolverlo.',
  '{} is booked for the household. Give the booking back first.':
    '{} está reservado para el hogar. Antes hay que devolver la reserva.',
  '{} is to pack for the household. Take back what it wants packed there, and its time.':
    '{} va a envasar para el hogar. Antes hay que retirar lo que pidió envasar y su hora.',
  '{} packed for the household and is not settled. Wait for what it costs.':
    '{} envasó para el hogar y no está liquidado. Hay que esperar lo que cuesta.',
  'Somebody else must become {} first.': 'Antes otra persona debe asumir: {}.',
  'This is no currency code of ISO 4217, such as USD.':
    'Esto no es un código de moneda de ISO 4217, como USD.',
  'There is no such time zone; one looks like America/Chicago.':
    'No existe esa zona horaria; una se escribe como America/Chicago.',
  'A contact has 500 characters at most.': 'Un contacto tiene como mucho 500 letras.',
  'There is a supplier called {} already.': 'Ya hay un proveedor llamado {}.',
  'A CSV file holds one table, so name it; the JSON document holds them all.':
    'Un archivo CSV lleva una tabla, así que nómbrela; el documento JSON las lleva todas.',
};
