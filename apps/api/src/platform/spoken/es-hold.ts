/** Holds of every scope, and the way of a lot, in Spanish. */
export const ES_HOLD: Readonly<Record<string, string>> = {
  'Something in this is on hold, so it stays as it is until that is released.':
    'Algo de esto está retenido, así que se queda como está hasta que se libere.',
  'On hold: {}. It is neither eaten, opened, given nor lent until it is released.':
    'Retenido: {}. No se come, abre, da ni presta hasta que se libere.',
  'Some of the {} in your kitchen came out of what is on hold, and it lies together there. None of it is eaten or given until that is released; it may be thrown away.':
    'Algo de {} en su cocina salió de lo que está retenido, y allí está todo junto. No se come ni se da nada de ello hasta que se libere; se puede tirar.',
  'What it held was thrown away.': 'Lo que había se tiró.',
  'This is on hold already.': 'Esto ya está retenido.',
  'Nothing that is or was here falls under this.': 'Nada de lo que hay o hubo aquí entra en esto.',
  'There is no such thing here.': 'Aquí no hay tal cosa.',
  'Say why it is put on hold.': 'Diga por qué se retiene.',
  'Name at least one container.': 'Nombre al menos un recipiente.',
  'Give both numbers, or neither.': 'Dé los dos números, o ninguno.',
  'Each line counts for itself: say which one.': 'Cada línea cuenta por sí misma: diga cuál.',
  'The last number comes after the first.': 'El último número va después del primero.',
  'Write the mark as it stands on the bag.': 'Escriba la marca como está en el saco.',
  'The last day comes after the first.': 'El último día va después del primero.',
  'Food that you had is on hold: {} By the book you have none of it left. Look whether that is so, eat none of it, and say what became of it.':
    'Un alimento que usted tuvo está retenido: {} Según el libro no le queda nada. Mire si es así, no coma nada de ello y diga qué fue de él.',
  'Food that you have is on hold: {} It is in {}. Do not eat any of it, open it or give it away until you hear more.':
    'Un alimento que usted tiene está retenido: {} Está en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más.',
  'Food that you have is on hold: {} It is in {}. Do not eat any of it, open it or give it away until you hear more. You used some of it before: say what became of it.':
    'Un alimento que usted tiene está retenido: {} Está en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más. Antes usó una parte: diga qué fue de ella.',
  'A container that was closed with it was looked at: {}.': 'Se revisó un envase cerrado junto con él: {}.',
  'Food that you have is on hold: A container that was closed with it was looked at: {}. It is in {}. Do not eat any of it, open it or give it away until you hear more.':
    'Un alimento que usted tiene está retenido: se revisó un envase cerrado junto con él: {}. Está en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más.',
  'Food that you have is on hold: A container that was closed with it was looked at: {}. It is in {}. Do not eat any of it, open it or give it away until you hear more. You used some of it before: say what became of it.':
    'Un alimento que usted tiene está retenido: se revisó un envase cerrado junto con él: {}. Está en {}. No coma nada de ello, no lo abra ni lo dé hasta saber más. Antes usó una parte: diga qué fue de ella.',
  'Food that you had is on hold: A container that was closed with it was looked at: {}. By the book you have none of it left. Look whether that is so, eat none of it, and say what became of it.':
    'Un alimento que usted tuvo está retenido: se revisó un envase cerrado junto con él: {}. Según el libro no le queda nada. Mire si es así, no coma nada de ello y diga qué fue de él.',
  'What was on hold is released: {} What you have of it may be used again, unless it is on hold for something else.':
    'Lo que estaba retenido queda libre: {} Lo que usted tiene de ello se puede usar otra vez, salvo que esté retenido por otra cosa.',
  'Some containers are on hold: find out what is the matter.':
    'Hay recipientes retenidos: averigüe qué les pasa.',
  'Some containers are on hold: agree to their release, or let it be.':
    'Hay recipientes retenidos: apruebe su liberación, o déjelo.',
  '{} is on hold: find out what is the matter.': '{} está retenido: averigüe qué pasa.',
  '{} is on hold: agree to its release, or let it be.': '{} está retenido: apruebe su liberación, o déjelo.',
  'Type a code.': 'Escriba un código.',
  'A code has 120 characters at most.': 'Un código tiene 120 caracteres como mucho.',
  'Type a code, or name one thing.': 'Escriba un código o nombre una cosa.',
  'Say what kind of thing it is.': 'Diga qué clase de cosa es.',
  'Nothing here has this code. A code stands on a bag, a container or a paper; a mark stands on the supplier’s sack.':
    'Nada aquí tiene este código. Un código está en un saco, un envase o un papel; una marca está en el saco del proveedor.',
  'One character is wrong: the last one does not fit the others. Look at the label again.':
    'Hay un carácter mal: el último no cuadra con los demás. Mire otra vez la etiqueta.',
  'One character is wrong: the last one does not fit the others. It may be {}. Look at the label again.':
    'Hay un carácter mal: el último no cuadra con los demás. Puede ser {}. Mire otra vez la etiqueta.',
  'This day is still to come.': 'Ese día está por venir.',
  'Nothing of this was ever theirs.': 'Nada de esto fue nunca suyo.',
  'Nothing of this went there.': 'Nada de esto llegó allí.',
  'A notice is for one household or for one pantry.': 'Un aviso es para un hogar o para una despensa.',
  'Say who signed the slip.': 'Diga quién firmó el talón.',
  'Say whose slip it is: a household’s or a pantry’s.':
    'Diga de quién es el talón: de un hogar o de una despensa.',
  'The hold began after that; look at the day on the slip again.':
    'La retención empezó después; mire otra vez el día del talón.',
  'This code is not on their notice.': 'Este código no está en su aviso.',
  'This code stands here twice.': 'Este código está aquí dos veces.',
  'Say what became of at least one of the codes.': 'Diga qué fue de al menos uno de los códigos.',
  'Nothing of this was ever yours.': 'Nada de esto fue nunca suyo.',
  'Nothing of it is there to throw away.': 'No queda nada de ello que tirar.',
  'Say why it is thrown away.': 'Diga por qué se tira.',
};
