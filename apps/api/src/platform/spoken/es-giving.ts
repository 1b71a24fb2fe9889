/** Pantries and gifts, in Spanish. */
export const ES_GIVING: Readonly<Record<string, string>> = {
  'Under this card the pantry would take nothing.':
    'Con esta ficha, el banco de alimentos no aceptaría nada.',
  'There is a pantry of this name already.': 'Ya hay un banco de alimentos con este nombre.',
  'Say on which days its door is open.': 'Diga qué días abre su puerta.',
  'It takes nothing as this stands: not what a maker sealed, nor what was packed at home or in a licensed kitchen.':
    'Así no acepta nada: ni lo cerrado de fábrica, ni lo envasado en casa o en una cocina autorizada.',
  'Name a kind of container that it takes, or say that any will do.':
    'Nombre una clase de envase que acepte, o diga que sirve cualquiera.',
  'Every food that it wants is one that it does not want.':
    'Todos los alimentos que quiere están entre los que no quiere.',
  'Say where its door is.': 'Diga dónde está su puerta.',
  'Say whom to ask for there, by duty.': 'Diga por quién preguntar allí, según su función.',
  'Say who told it, by duty.': 'Diga quién lo dijo, según su función.',
  'It closes after it opens.': 'Cierra después de abrir.',
  'Write a time such as 09:30.': 'Escriba una hora, por ejemplo 09:30.',
  'Name each time once.': 'Nombre cada horario una sola vez.',
  'Days are not below zero.': 'Los días no bajan de cero.',
  'A most is above nothing; leave it empty where there is none.':
    'Un máximo es mayor que nada; déjelo vacío si no hay ninguno.',
  'Leave it empty where nothing past its date is taken.':
    'Déjelo vacío si no se acepta nada pasada su fecha.',
  'This can’t be given like that. What forbids it is listed.':
    'Esto no se puede dar así. Se dice abajo lo que lo impide.',
  'Take the receipt back on the page of its manifest.':
    'Deshaga el recibo en la página de su hoja de entrega.',
  'Write the receipt again on the page of its manifest.':
    'Escriba otra vez el recibo en la página de su hoja de entrega.',
  '{} is on manifest {}.': '{} está en la hoja de entrega {}.',
  '{} may not go there: treated or mouldy food is thrown away, and what was found unfit goes where its last look lets it.':
    '{} no puede ir allí: lo tratado o mohoso se tira, y lo que se halló no apto va adonde lo permita su última revisión.',
  'Nobody goes to {} any more.': 'Ya nadie va a {}.',
  'A trip is still to come.': 'Un viaje está aún por hacer.',
  'Plan at most 90 days ahead.': 'Planee a 90 días como mucho.',
  '{} is not open on that day of the week.': '{} no abre ese día de la semana.',
  'Go to a pantry once a week in one matching.': 'En un reparto, vaya a cada banco una vez por semana.',
  'A trip carries something.': 'Un viaje lleva algo.',
  'Name a trip.': 'Nombre un viaje.',
  'Six trips at a time.': 'Seis viajes a la vez.',
  'Name each trip once.': 'Nombre cada viaje una sola vez.',
  'Say who drives.': 'Diga quién conduce.',
  'Say who took it in, by duty.': 'Diga quién lo recibió, según su función.',
  'Say why it came back.': 'Diga por qué volvió.',
  'Name each container once.': 'Nombre cada envase una sola vez.',
  'The matching has no such trip.': 'El reparto no tiene ese viaje.',
  'There is nothing on this trip.': 'En este viaje no hay nada.',
  '{} is gone from the store.': '{} ya no está en el almacén.',
  '{} has a newer card than this matching. Match again.':
    '{} tiene una ficha más nueva que este reparto. Reparta otra vez.',
  'The day of this trip is over. Match again.': 'El día de este viaje ya pasó. Reparta otra vez.',
  '{} takes no more on that day. Match again.': '{} no acepta más en ese día. Reparta otra vez.',
  '{} takes no more in that week. Match again.': '{} no acepta más en esa semana. Reparta otra vez.',
  'This is not on the manifest.': 'Esto no está en la hoja de entrega.',
  'This trip was planned for {}, not before.': 'Este viaje estaba planeado para el {}, no antes.',
  'The gift of {} closed on {}.': 'El plazo para dar {} cerró el {}.',
  'This manifest is not out any more.': 'Esta hoja de entrega ya no está en camino.',
  'There is no receipt of this manifest to take back.': 'Esta hoja de entrega no tiene recibo que deshacer.',
  '{} is on hold.': '{} está retenido.',
  '{} holds treated seed, which is never food.': '{} contiene semilla tratada, que nunca es alimento.',
  '{} was found mouldy.': 'A {} se le halló moho.',
  'What was found in {} lets it go to no pantry.': 'Lo que se halló en {} no lo deja ir a ningún banco.',
  '{} has been opened.': '{} se ha abierto.',
  '{} is not sealed.': '{} no está cerrado.',
  'The pantry does not take what a maker sealed.': 'El banco no acepta lo cerrado de fábrica.',
  '{} was packed at home, which the pantry does not take.': '{} se envasó en casa, y el banco no lo acepta.',
  '{} was packed in a licensed kitchen, which the pantry does not take.':
    '{} se envasó en una cocina autorizada, y el banco no lo acepta.',
  '{} was packed at home without oxygen, which the pantry takes only where its card says so.':
    '{} se envasó en casa sin oxígeno, y el banco solo lo acepta si lo dice su ficha.',
  'Nobody said how {} was packed, and the pantry takes no food that was packed at home without oxygen.':
    'Nadie dijo cómo se envasó {}, y el banco no acepta lo envasado en casa sin oxígeno.',
  '{} is of a kind that the pantry does not take.': '{} es de una clase que el banco no acepta.',
  'The label of {} lacks something that the pantry asks for.':
    'A la etiqueta de {} le falta algo que el banco pide.',
  '{} holds a food that the pantry does not want.': '{} contiene un alimento que el banco no quiere.',
  '{} holds an allergen that the pantry does not take.': '{} contiene un alérgeno que el banco no acepta.',
  '{} keeps for fewer days than the pantry asks for: its gift has closed.':
    '{} dura menos días de los que pide el banco: su plazo para dar ha cerrado.',
  '{} is past its date: its gift has closed.': '{} pasó su fecha: su plazo para dar ha cerrado.',
  '{} weighs more than the pantry takes at a time.': '{} pesa más de lo que el banco acepta de una vez.',
  'Nobody has said how long the food in {} keeps.': 'Nadie ha dicho cuánto dura el alimento de {}.',
  '{} is being offered to members.': '{} se está ofreciendo a los miembros.',
  '{} is on another manifest already.': '{} ya está en otra hoja de entrega.',
};
