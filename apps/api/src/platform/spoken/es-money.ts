/** Money, in Spanish, with the accountant's words where the treasurer reads them. */
export const ES_MONEY: Readonly<Record<string, string>> = {
  'This can’t be signed as it stands.': 'Esto no se puede firmar tal como está.',
  'A digest is 64 digits and small letters from a to f.':
    'Un resumen son 64 cifras y letras minúsculas de la a a la f.',
  'Remarks have 2000 characters at most.': 'Las observaciones tienen como mucho 2000 letras.',
  'This close kept no digest, so there is nothing to sign.':
    'Este cierre no guardó resumen, así que no hay nada que firmar.',
  'This is not the digest of that close.': 'Este no es el resumen de ese cierre.',
  'What was closed no longer gives its digest. Look at the audit before anybody signs.':
    'Lo cerrado ya no da su resumen. Mire la revisión antes de que nadie firme.',
  'Say what the money is for.': 'Diga para qué es el dinero.',
  'A purpose has 200 characters at most.': 'Un fin tiene como mucho 200 letras.',
  'An entry has a number from 1 on.': 'Un asiento tiene un número a partir del 1.',
  'There is no such equipment.': 'No existe ese equipo.',
  'The store fund has {} free. Say why it is promised all the same, or promise less.':
    'El fondo tiene {} libres. Diga por qué se promete de todos modos, o prometa menos.',
  'There is no entry of that number.': 'No hay ningún asiento con ese número.',
  'That entry was taken back.': 'Ese asiento se anuló.',
  'That entry takes nothing out of the store fund.': 'Ese asiento no saca nada del fondo.',
  'This promise was withdrawn already.': 'Esta promesa ya se retiró.',
  'This promise was fulfilled already.': 'Esta promesa ya se cumplió.',
  'This count is booked already.': 'Este recuento ya está anotado.',
  'The count met the book to the gram.': 'El recuento coincidió con el libro al gramo.',
  'Something was taken or brought since it was counted. Count it again.':
    'Desde el recuento se tomó o se trajo algo. Cuéntelo otra vez.',
  'Write a seed, such as the day and two names.': 'Escriba una semilla, como el día y dos nombres.',
  'A seed has 200 characters at most.': 'Una semilla tiene como mucho 200 letras.',
  'This claim has been settled already.': 'Esta reclamación ya está resuelta.',
  'The storehouse keeps one currency. Put a foreign price in the note.':
    'El almacén lleva una sola moneda. Ponga el precio extranjero en la nota.',
  'The books are closed through that day. Post it today and name the old day.':
    'Los libros están cerrados hasta ese día. Anótelo hoy y nombre el día antiguo.',
  'The books are closed through {}. Post it today and name the old day in the note.':
    'Los libros están cerrados hasta {}. Anótelo hoy y nombre el día antiguo en la nota.',
  'The books are closed through {} already, and stay so.':
    'Los libros ya están cerrados hasta {}, y así quedan.',
  'This account is closed at 0.00 and stays there.': 'Esta cuenta está cerrada en 0,00 y así queda.',
  'This entry has been reversed already.': 'Este asiento ya se anuló.',
  'This entry can’t be reversed while others depend on it.':
    'Este asiento no se puede anular mientras otros dependan de él.',
  'The same amount was received from this household within two days.':
    'El mismo importe se recibió de este hogar hace menos de dos días.',
  'Nothing has landed that could bear the freight. Claim it back from whoever billed it.':
    'No llegó nada que pueda cargar con el porte. Reclámelo a quien lo facturó.',
  'More is claimed back for this food than was billed for it.':
    'Se reclama más por este alimento de lo que se facturó.',
  'Nothing of this food was shared, so nobody can bear what it cost. Claim it back from the supplier; what is not granted falls on those it was promised to.':
    'De este alimento no se repartió nada, así que nadie puede cargar con su coste. Reclámelo al proveedor; lo que no conceda recae en quienes lo tenían prometido.',
  'That is more than the whole buy was charged, less what came back before.':
    'Eso es más de lo que se cargó por toda la compra, menos lo ya devuelto.',
  'A credit is never more than what the buy has cost.': 'Un abono nunca es mayor que lo que costó la compra.',
  'Name the charge that the money comes back on.': 'Nombre el cargo al que vuelve el dinero.',
  'A credit of nothing needs no entry.': 'Un abono de nada no necesita asiento.',
  'Name the till that the money came into, or the supplier who credits it: one of the two.':
    'Nombre la caja en que entró el dinero, o el proveedor que lo abona: uno de los dos.',
  'The clearing account holds something that is neither billed, claimed nor withheld.':
    'La cuenta puente tiene algo que no está facturado, reclamado ni retenido.',
  'The charges meet the bills to the cent already.': 'Los cargos ya coinciden con las facturas al centavo.',
  'Freight is claimed for the order as a whole.': 'El porte se reclama por el pedido entero.',
  'Name the food that came short, damaged or wrong.':
    'Nombre el alimento que faltó, llegó dañado o equivocado.',
  'There is no such food in this buy.': 'No hay ese alimento en esta compra.',
  'Nothing of this buy came from this supplier.': 'Nada de esta compra vino de este proveedor.',
  'That is more than it cost, less what has been claimed before.':
    'Eso es más de lo que costó, menos lo ya reclamado.',
  'A claim is never more than what it is about.': 'Una reclamación nunca supera aquello de que trata.',
  'The claim asked for less than that.': 'La reclamación pedía menos que eso.',
  'Weigh the bag again, or refuse it.': 'Pese el saco otra vez, o rechácelo.',
  'A claim is answered once. What the supplier does later is a late credit or a late bill.':
    'Una reclamación se responde una vez. Lo que el proveedor haga después es un abono o una factura tardíos.',
  'Mend the bill or the claim behind it; then the charges are brought up to them.':
    'Corrija la factura o la reclamación que hay detrás; luego los cargos se ajustan a ellas.',
  'Undo the split instead.': 'Mejor deshaga el reparto.',
  'Split again instead.': 'Mejor reparta otra vez.',
  'Void the bill instead.': 'Mejor anule la factura.',
  'Enter the bill again instead.': 'Mejor anote la factura otra vez.',
  'Credit or refuse the claim instead.': 'Mejor abone o rechace la reclamación.',
  'Enter the same amount as a late bill instead.': 'Mejor anote el mismo importe como factura tardía.',
  'Enter the same amount as a late credit instead.': 'Mejor anote el mismo importe como abono tardío.',
  'What it moved has moved on: {}.': 'Lo que movió ya se ha movido más: {}.',
  'Goods name their food; freight and other costs name none.':
    'La mercancía nombra su alimento; el porte y otros costes, ninguno.',
  'An invoice has a number.': 'Una factura tiene número.',
  'A number has 80 characters at most.': 'Un número tiene como mucho 80 letras.',
  'An invoice has at least one line.': 'Una factura tiene al menos una línea.',
  'This supplier’s invoice of that number is in the book.':
    'La factura de este proveedor con ese número ya está en el libro.',
  'Together the lines are larger than the book can hold.':
    'Juntas, las líneas superan lo que cabe en el libro.',
  'An amount is above zero.': 'Un importe es mayor que cero.',
  'A receipt names the household that paid.': 'Un recibo nombra el hogar que pagó.',
  'A balance of nothing needs no entry.': 'Un saldo de nada no necesita asiento.',
  'Name the household when the balance is one, and only then.':
    'Nombre el hogar cuando el saldo sea de uno, y solo entonces.',
  'Name the supplier when the balance is one, and only then.':
    'Nombre el proveedor cuando el saldo sea de uno, y solo entonces.',
  'Name the till, or say that it goes by the balance: one of the two.':
    'Nombre la caja, o diga que va por el saldo: uno de los dos.',
  'A deposit names the household that pays it.': 'Un depósito nombra el hogar que lo paga.',
  'A refund names the household that gets it.': 'Una devolución nombra el hogar que la recibe.',
  'The store fund holds less than that.': 'En el fondo hay menos que eso.',
  'This bill came from another supplier.': 'Esta factura es de otro proveedor.',
  'This supplier is owed less than that. Say that it is a prepayment if it is one.':
    'A este proveedor se le debe menos que eso. Diga que es un anticipo si lo es.',
  'Nothing came in or went out that is not carried yet.':
    'No entró ni salió nada que no se haya trasladado ya.',
  'The deposit on this buy is smaller than that.': 'El depósito de esta compra es menor que eso.',
  'This book is kept in {}. Enter what was paid in {}, and the foreign price in the note.':
    'Este libro se lleva en {}. Anote lo pagado en {}, y el precio extranjero en la nota.',
  'Entry {} of {} has the same amount from the same household. Send isKnownDuplicate if both were paid.':
    'El asiento {} de {} tiene el mismo importe del mismo hogar. Dígalo si se pagaron los dos.',
  'Say so if this is a second payment.': 'Dígalo si este es un segundo pago.',
  'The cash tin holds {} {}.': 'En la caja de efectivo hay {} {}.',
  'The household’s credit is smaller than that.': 'El saldo a favor del hogar es menor que eso.',
  'The household owes less than that.': 'El hogar debe menos que eso.',
  'The period ends before it begins.': 'El periodo termina antes de empezar.',
  'Whoever asked for a write-off can’t be the one who agrees to it.':
    'Quien pidió perdonar una deuda no puede ser quien lo aprueba.',
  'This write-off was settled already.': 'Esta deuda perdonada ya se resolvió.',
  'You kept these books as treasurer for a part of this time. Please let somebody review them who did not.':
    'Usted llevó estos libros como tesorería durante una parte de este tiempo. Deje que los revise alguien que no lo hizo, por favor.',
  'Somebody of your household kept these books for a part of this time. Please let another household review them.':
    'Alguien de su hogar llevó estos libros durante una parte de este tiempo. Deje que los revise otro hogar, por favor.',
  'These days can’t be closed yet. What must be settled first is listed.':
    'Estos días aún no se pueden cerrar. Abajo está lo que hay que resolver antes.',
};
