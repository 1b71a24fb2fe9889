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
};
