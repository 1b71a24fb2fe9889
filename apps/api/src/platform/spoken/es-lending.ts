/** Equipment that is lent, in Spanish. */
export const ES_LENDING: Readonly<Record<string, string>> = {
  'It is taken at that time. Free times that follow are listed, if there are any.':
    'Está ocupado a esa hora. Abajo están las horas libres que siguen, si las hay.',
  'It can’t be lent as it is. What must be put right first is listed.':
    'No se puede prestar como está. Abajo está lo que hay que arreglar antes.',
  'The household has booked this already. Give that time back first.':
    'El hogar ya lo reservó. Devuelva antes esa hora.',
  'The household waits for this already.': 'El hogar ya espera esto.',
  'This booking does not stand any more.': 'Esta reserva ya no está en pie.',
  'This is not out.': 'Esto no está prestado.',
  'Damage is charged between a return and the next loan.':
    'El daño se cobra entre la devolución y el préstamo siguiente.',
  'It is out still. Say what the damage costs when it comes back.':
    'Sigue prestado. Diga cuánto cuesta el daño cuando vuelva.',
  'It went out again since, so nobody can tell whose damage it is.':
    'Salió otra vez desde entonces, así que nadie sabe de quién es el daño.',
  'Say what the damage costs.': 'Diga cuánto cuesta el daño.',
  'Something was found damaged on what you brought back, before it went out again: {}. Its loan says what it costs.':
    'Se encontró un daño en lo que devolvió, antes de que saliera otra vez: {}. Su préstamo dice cuánto cuesta.',
  'This can’t be handed straight on.': 'Esto no puede pasar directamente de uno a otro.',
  'A booking ends after it begins.': 'Una reserva termina después de empezar.',
  'This time is over. Book from now on.': 'Esa hora ya pasó. Reserve de ahora en adelante.',
  'It is out and late; nobody knows when it is back. Wait for that time, and it is offered to you once it is here.':
    'Está prestado con retraso; nadie sabe cuándo vuelve. Espere esa hora, y se le ofrece cuando esté aquí.',
  'This is no scale. Say of the thing that it is one, then check it.':
    'Esto no es una balanza. Diga del objeto que lo es, y pruébela después.',
  'It was checked as a scale, so it stays one.': 'Se probó como balanza, así que lo sigue siendo.',
  'This is no thermometer. Say of the thing that it is one, then check it.':
    'Esto no es un termómetro. Diga del objeto que lo es, y pruébelo después.',
  'It was checked as a thermometer, so it stays one.': 'Se probó como termómetro, así que lo sigue siendo.',
  'A thing is a scale or a thermometer. List what is both as two things.':
    'Un objeto es balanza o termómetro. Apunte como dos objetos el que sea ambas cosas.',
  'Give whole tenths of a degree Celsius.': 'Dé décimas enteras de grado Celsius.',
  'No thermometer of food or a room is that cold: −100 °C (−148 °F) at the least.':
    'Ningún termómetro de alimentos o de un cuarto está tan frío: −100 °C (−148 °F) como mínimo.',
  'No thermometer of food or a room is that hot: 300 °C (572 °F) at the most.':
    'Ningún termómetro de alimentos o de un cuarto está tan caliente: 300 °C (572 °F) como máximo.',
  'What it may be off by is 20 °C (36 °F) at the most.': 'Lo que puede errar es 20 °C (36 °F) como máximo.',
  'Give whole grams.': 'Dé gramos enteros.',
  'That is more than two tonnes.': 'Son más de dos toneladas.',
  'Lay a weight on whose grams are known.': 'Ponga una pesa cuyos gramos se conozcan.',
  'Write down what the scale shows, zero or more.': 'Anote lo que marca la balanza, cero o más.',
  'What it may be off by is zero or more.': 'Lo que puede errar es cero o más.',
  'What goes through it was told already.': 'Lo que pasa por ello ya está dicho.',
  'The piece has gone out again since: a photo of it shows no more how this loan was.':
    'La unidad ha vuelto a salir: una foto suya ya no muestra cómo fue este préstamo.',
  'It is out and late.': 'Está prestado con retraso.',
  'It is taken at that time.': 'Está ocupado a esa hora.',
  'Nobody books more than {} days ahead.': 'Nadie reserva con más de {} días de antelación.',
  '{} needs the {} at your time. The same hours of another day are kept for you for three days: say whether you take them.':
    '{} necesita {} a su hora. Se le guardan las mismas horas de otro día durante tres días: diga si las toma.',
  '{} needs the {} at your time. No other day is free at those hours: choose another time.':
    '{} necesita {} a su hora. Ningún otro día está libre a esas horas: elija otra.',
  '{} has no {} at its new time. Look for another day or another thing.':
    '{} no tiene {} a su nueva hora. Busque otro día u otro objeto.',
  'You had booked this and did not fetch it within {} hours, so it is free for others again: {}.':
    'Lo tenía reservado y no lo recogió en {} horas, así que vuelve a estar libre para los demás: {}.',
  'This was before it was booked or went out.': 'Eso fue antes de que se reservara o saliera.',
  'What is older than a day the keeper writes down.':
    'Lo que tiene más de un día lo anota quien guarda el equipo.',
  'The clocks skip this time; the next that comes is {}.':
    'Los relojes se saltan esa hora; la próxima que llega es {}.',
  'It is lent for {} days at most.': 'Se presta por {} días como máximo.',
  'This is never handed straight on: it comes back to be cleaned and looked at first.':
    'Esto nunca pasa directamente: antes vuelve para limpiarlo y revisarlo.',
  'Nobody hands on to themselves. Book the longer time.':
    'Nadie se pasa algo a sí mismo. Reserve el tiempo entero.',
  'One has it still when the other wants it already.': 'Uno lo tiene todavía cuando el otro ya lo quiere.',
  'The keeper needs a day to say no. Ask earlier, or fetch it from the store.':
    'El encargado necesita un día para decir que no. Pida antes, o recójalo en el almacén.',
  'The two count on it: the keeper says no a day before at the latest. If it is broken, write that down at the piece.':
    'Los dos cuentan con ello: el encargado dice que no un día antes como muy tarde. Si está roto, anótelo en la pieza.',
  'It will not be handed straight on to you, so your time is free again: {}. Book a time at which it comes from the store.':
    'No le llegará directamente, así que su hora queda libre: {}. Reserve una hora en que salga del almacén.',
  'It is cleaned of one grain before another goes in, so it comes back first.':
    'Se limpia de un grano antes de que entre otro, así que antes vuelve.',
  'A packing session has booked this; change it there.': 'Lo reservó una jornada de envasado; cámbielo allí.',
  'The offer has lapsed; the time goes to the next.': 'La oferta venció; la hora pasa al siguiente.',
  'It may be fetched until {} hours after its start.':
    'Se puede recoger hasta {} horas después de su comienzo.',
  'There is equipment called {} already.': 'Ya hay un equipo que se llama {}.',
  'There are {} of it. Retire the one that is gone.': 'Hay {}. Retire el que ya no está.',
  'This part belongs to something else.': 'Esta pieza es de otra cosa.',
  'It has {} of these.': 'Tiene {} de estas.',
  'An amount is not below zero.': 'Una cantidad no es menor que cero.',
  'This has {} characters at most.': 'Esto tiene {} caracteres como máximo.',
  'Two weeks is the most between two bookings.': 'Dos semanas es lo más entre dos reservas.',
  'Leave it empty where there is no such interval.': 'Déjelo vacío donde no hay tal intervalo.',
  'There is one at least.': 'Hay uno por lo menos.',
  'Name each part once.': 'Nombre cada pieza una vez.',
  'Say how many of this are there: {}.': 'Diga cuántos hay de esto: {}.',
  '{} of these went out.': 'De estas salieron {}.',
  'Whoever ticks the parts signs with a name.': 'Quien marca las piezas firma con su nombre.',
  'Tick each part once.': 'Marque cada pieza una vez.',
  'It is handed on clean, or it comes back first.': 'Se pasa limpio, o antes vuelve.',
  'The time of this booking is over. Book anew.': 'La hora de esta reserva ya pasó. Reserve de nuevo.',
  'Only the keeper takes or gives money. Let it stand on your balance.':
    'Solo el encargado recibe o da dinero. Déjelo en su saldo.',
  'Whoever has it has not brought it back yet, and nobody knows when it comes. Ask the keeper.':
    'Quien lo tiene aún no lo ha devuelto, y nadie sabe cuándo llega. Pregunte a quien guarda el equipo.',
  'Whoever has it has not brought it back yet. Another one, or the next free times, are listed.':
    'Quien lo tiene aún no lo ha devuelto. Abajo están otro igual o las próximas horas libres.',
  'Only the keeper says what damage costs.': 'Solo el encargado dice cuánto cuesta un daño.',
  'The tin holds less than the deposit.': 'La caja tiene menos que el depósito.',
  'The two have not agreed to hand it on.': 'Los dos no han acordado pasárselo.',
  'It is somebody else’s until then. Fetch it at its hour.': 'Hasta entonces es de otro. Recójalo a su hora.',
  'Say what was done.': 'Diga qué se hizo.',
  'Say which foods go through it: what they leave there matters to who comes next.':
    'Diga qué alimentos pasan por él: lo que dejan le importa a quien viene después.',
  'There is no such food here.': 'Aquí no hay tal alimento.',
  'Name 20 foods at most.': 'Nombre 20 alimentos como mucho.',
  'Not back yet: {}. Ask when it comes, and tell who is next.':
    'Aún no ha vuelto: {}. Pregunte cuándo llega y avise a quien sigue.',
  'Broken: {}. Have it mended, or take it out of use.': 'Roto: {}. Hágalo arreglar o retírelo del uso.',
  'Dirty: {}. Clean it before it goes out again.': 'Sucio: {}. Límpielo antes de que salga otra vez.',
  'A part is missing without which it does not run: {}.': 'Falta una pieza sin la que no funciona: {}.',
  'Service is due, and it takes no new loan until then: {}.':
    'Le toca la revisión, y hasta entonces no se presta: {}.',
  'Service comes due: {}.': 'Pronto le toca la revisión: {}.',
  'Two borrowers mean to hand it straight on and no answer is in yet: {}.':
    'Dos hogares quieren pasárselo directamente y aún falta la respuesta: {}.',
  'A neighbour asks to take this straight from you; say yes or no: {}.':
    'Un vecino pide recogerlo directamente de usted; diga sí o no: {}.',
  'Bring this back: {}.': 'Devuelva esto: {}.',
  'This came free for you; say whether you take it: {}.': 'Esto quedó libre para usted; diga si lo toma: {}.',
  'Whoever has it before you is late: {}. See what else is free.':
    'Quien lo tiene antes que usted se atrasa: {}. Vea qué más está libre.',
};
