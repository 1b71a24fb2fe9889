/** A buy from its plan to its order, in Spanish. */
export const ES_BUY: Readonly<Record<string, string>> = {
  'A price is for some mass.': 'Un precio es por cierto peso.',
  'No shop asks that much.': 'Ninguna tienda pide tanto.',
  'No shop sells that much at once.': 'Ninguna tienda vende tanto de una vez.',
  'Where it was seen has 60 characters at most.': 'Dónde se vio tiene como mucho 60 letras.',
  'The buy is not at a stage that allows this.': 'La compra no está en una etapa que lo permita.',
  'The buy can’t move on yet. What is missing is listed.':
    'La compra aún no puede avanzar. Abajo está lo que falta.',
  'The gathering has closed.': 'El plazo de las promesas ha cerrado.',
  'The quote is not valid for this.': 'La oferta no vale para esto.',
  'Least, wanted and most are not in order.': 'Mínimo, deseado y máximo no van en orden.',
  'The mass is not a whole number of steps.': 'El peso no es un número entero de pasos.',
  'The household has pledged for this food already. Change that pledge instead.':
    'El hogar ya prometió de este alimento. Cambie esa promesa.',
  'A second person must agree to this.': 'Una segunda persona debe estar de acuerdo.',
  'The rules of this buy were frozen when it was fixed.':
    'Las reglas de esta compra quedaron fijas cuando se fijó.',
  'The buy has no food yet.': 'La compra aún no tiene alimentos.',
  'No food of the buy has a quote that stands.': 'Ningún alimento de la compra tiene una oferta en vigor.',
  'Nobody has said when the gathering closes.': 'Nadie ha dicho cuándo cierran las promesas.',
  'A quote lapses before the gathering closes.': 'Una oferta vence antes de que cierren las promesas.',
  'A quote has lapsed.': 'Una oferta ha vencido.',
  'The bags have not been filled yet.': 'Los sacos aún no se han repartido entre las promesas.',
  'Pledges or quotes have changed since the bags were filled.':
    'Las promesas o las ofertas cambiaron desde que se repartieron los sacos.',
  'Nobody would get anything.': 'Nadie recibiría nada.',
  'A pledge would get more than its most.': 'Una promesa recibiría más que su máximo.',
  'A pledge would pay more than its ceiling.': 'Una promesa pagaría más que su precio más alto.',
  'A supplier’s minimum order is not reached.': 'No se alcanza el pedido mínimo de un proveedor.',
  'A household whose deposit is held has not been told.':
    'Un hogar con depósito guardado no ha sido avisado.',
  'Coordinator and treasurer must both agree, with a login each.':
    'Coordinador y tesorero deben estar de acuerdo, cada uno con su acceso.',
  'A deposit has neither come in nor been waived.': 'Un depósito no ha llegado ni se ha dispensado.',
  'The price has risen too far since the buy was fixed.':
    'El precio subió demasiado desde que se fijó la compra.',
  'A food has not been counted at landing.': 'Un alimento no se ha contado a la llegada.',
  'A bag has been neither weighed nor exempted.': 'Un saco no se ha pesado ni eximido.',
  'A food has not been split.': 'Un alimento no se ha repartido.',
  'Shares, common stock and loss do not come to what landed.':
    'Las partes, la reserva común y la pérdida no suman lo que llegó.',
  'A supplier whose goods landed has not billed them yet.':
    'Un proveedor cuya mercancía llegó aún no la ha facturado.',
  'A claim is neither granted nor refused yet.': 'Una reclamación aún no se ha concedido ni rechazado.',
  'The buy’s clearing account is not at 0.00.': 'La cuenta puente de la compra no está en 0,00.',
  'A deposit of the buy is still held.': 'Aún se guarda un depósito de la compra.',
  'Some grams belong to nobody: split them, or release or throw away the bags on hold.':
    'Hay gramos que no son de nadie: repártalos, o libere o tire los sacos retenidos.',
  'Nobody has written down that the supplier’s order was cancelled.':
    'Nadie ha anotado que se canceló el pedido al proveedor.',
  'A bag that was counted has no number yet.': 'Un saco contado aún no tiene número.',
  'A split, a claim or a bill came after the buy was shared out. Recharge the buy.':
    'Un reparto, una reclamación o una factura llegó después de repartir la compra. Cargue la compra de nuevo.',
  'The buy is {}; this can be done while it is {}.':
    'La compra está {}; esto se puede hacer mientras está {}.',
  'That is more than a thousand tonnes.': 'Eso es más de mil toneladas.',
  'That is more money than any buy.': 'Eso es más dinero que cualquier compra.',
  'This day is over; nothing can land on it any more.': 'Ese día ya pasó; nada puede llegar ya en él.',
  'A place has 200 characters at most.': 'Un lugar tiene como mucho 200 letras.',
  'The buy has a line for this food already.': 'La compra ya tiene una línea para este alimento.',
  'Someone has pledged in these steps.': 'Alguien ya prometió en estos pasos.',
  'A pledge for this food was made and withdrawn; it stays on record.':
    'Se hizo y se retiró una promesa de este alimento; queda anotada.',
  'A quote offers this food. Withdraw or replace the quote first.':
    'Una oferta incluye este alimento. Retírela o reemplácela primero.',
  'The day on which the gathering closes is over.': 'El día en que cierran las promesas ya pasó.',
  'A buy that is {} can’t become {} next.': 'Una compra que está {} no puede pasar a estar {}.',
  'From {} a buy goes on to {}.': 'De {} una compra pasa a {}.',
  'A buy becomes {} by a command of its own, not by this one.':
    'Una compra pasa a estar {} con una orden propia, no con esta.',
  'The gathering must close in the future.': 'Las promesas deben cerrar en el futuro.',
  'The gathering closes on {}, after this day.': 'Las promesas cierran el {}, después de este día.',
  'The food can’t land before it is ordered.': 'El alimento no puede llegar antes de pedirse.',
  'There is a buy called {} already.': 'Ya hay una compra llamada {}.',
  'There is no such food.': 'No existe ese alimento.',
  '{} is retired. Put it back on the lists first.':
    '{} está retirado. Vuélvalo a poner en las listas primero.',
  'Someone has pledged in this buy, so its foods stay as they are.':
    'Alguien ya prometió en esta compra, así que sus alimentos quedan como están.',
  'Nothing is ordered from this supplier in this buy.': 'En esta compra no se pide nada a este proveedor.',
  'The buy is ordered. Cancel it with the supplier first and write down what was agreed.':
    'La compra está pedida. Cancélela primero con el proveedor y anote lo acordado.',
  '{} bags of this buy have been taken in already.': 'Ya se recibieron {} sacos de esta compra.',
  'This deposit is waived already.': 'Este depósito ya está dispensado.',
  'This buy has no such line.': 'Esta compra no tiene esa línea.',
  'No valid quote offers this food.': 'Ninguna oferta en vigor incluye este alimento.',
  'A bag size stands here twice.': 'Un tamaño de saco está aquí dos veces.',
  'The quote has no such bag for this food.': 'La oferta no tiene ese saco para este alimento.',
  'The supplier has {} of these at most.': 'El proveedor tiene como mucho {} de estos.',
  'A pledge stands here twice.': 'Una promesa está aquí dos veces.',
  'No such pledge stands on this line.': 'No hay tal promesa en esta línea.',
  'Nothing, or whole steps between the pledge’s least and most.':
    'Nada, o pasos enteros entre el mínimo y el máximo de la promesa.',
  'This pledge is served by its substitute.': 'Esta promesa se cumple con su sustituto.',
  'The bags hold {} less than is allotted.': 'En los sacos hay {} menos de lo asignado.',
  '{} would be left over; common stock takes {}.': 'Sobrarían {}; la reserva común toma {}.',
  'A whole bag would be bought for the common stock alone.':
    'Se compraría un saco entero solo para la reserva común.',
  'No line holds so much.': 'Ninguna línea tiene tanto.',
  'An override needs its written reason, and a reason needs an override.':
    'Un cambio a mano necesita su motivo escrito, y un motivo, un cambio.',
  'The quote of {} for {} stands until {}, before the order.':
    'La oferta de {} para {} vale hasta {}, antes del pedido.',
  'Pay {} its bill {} by {}.': 'Pague a {} su factura {} antes de {}.',
  'Claim by {} what came short or damaged of {}.': 'Reclame antes de {} lo que faltó o llegó dañado de {}.',
  'Hand over food of {}: {}.': 'Entregue alimentos de {}: {}.',
  'Bag {} is on hold: find out what is the matter.': 'El saco {} está retenido: averigüe qué le pasa.',
  'Bag {} is on hold: agree to its release, or let it be.':
    'El saco {} está retenido: apruebe su liberación, o déjelo.',
  'Fetch your food of {} at the time you chose.': 'Recoja lo suyo de {} a la hora que eligió.',
  '{} gathers pledges, and you have made none.': '{} reúne promesas, y usted no tiene ninguna.',
  'Your deposit on {} is asked for by {}.': 'Su depósito para {} se pide antes de {}.',
  'Food of {} waits for you; fetch it by {}.': 'Alimentos de {} le esperan; recójalos antes de {}.',
  'You owe the storehouse what your statement shows.': 'Debe al almacén lo que muestra su cuenta.',
  'Open the buy for pledges.': 'Abra la compra a las promesas.',
  'Fix the buy: its bags are filled, the grams promised and the deposits asked for.':
    'Fije la compra: se reparten los sacos, se prometen los gramos y se piden los depósitos.',
  'Agree to order. Coordinator and treasurer both do, with a login each.':
    'Apruebe el pedido. Lo hacen coordinador y tesorero, cada uno con su acceso.',
  'Land the buy: count every food, number every bag, and end the landing.':
    'Reciba la compra: cuente cada alimento, numere cada saco y termine la llegada.',
  'Share the buy out: every cost is charged to the cent.':
    'Reparta la compra: cada coste se carga al centavo.',
  'Close the buy, at 0.00 and with no gram left over.': 'Cierre la compra, en 0,00 y sin que sobre un gramo.',
  'The {} has agreed already.': 'Ya aprobó: {}.',
  'You hold both duties: say for which one you agree.': 'Tiene los dos cargos: diga por cuál aprueba.',
  'The supplier must let it stand for today at least.': 'El proveedor debe mantenerla al menos por hoy.',
  'The quote has no such bag.': 'La oferta no tiene ese saco.',
  'What was typed has 200 characters at most.': 'Lo escrito tiene como mucho 200 letras.',
  'A ceiling is an amount for some grams: give both, or neither.':
    'Un precio más alto es un importe por unos gramos: dé los dos, o ninguno.',
  'The least may not be above the wanted.': 'El mínimo no puede superar lo deseado.',
  'The most may not be below the wanted.': 'El máximo no puede ser menor que lo deseado.',
  'The nearest masses are {} and {}.': 'Los pesos más cercanos son {} y {}.',
  'Least, wanted and most must be whole bags of one size, of {} {}.':
    'Mínimo, deseado y máximo deben ser sacos enteros de un tamaño, de {} {}.',
  'Not all three are whole bags of one size.': 'No son los tres sacos enteros de un tamaño.',
  'This pledge was withdrawn.': 'Esta promesa se retiró.',
  'There is no such line in this buy.': 'No hay esa línea en esta compra.',
  'A substitute is another food of the buy.': 'Un sustituto es otro alimento de la compra.',
  'The gathering closed at {}. A pledge can be lowered or withdrawn until the buy is fixed.':
    'Las promesas cerraron: {}. Una promesa se puede bajar o retirar hasta que la compra se fije.',
  'This can’t grow any more.': 'Esto ya no puede crecer.',
  'No quote says how large a bag of this food is. Pledge a share of a bag, or wait for a quote.':
    'Ninguna oferta dice el tamaño del saco de este alimento. Prometa una parte de un saco, o espere una oferta.',
  'A price is needed.': 'Hace falta un precio.',
  'The first price must hold from 1 bag on.': 'El primer precio debe valer desde 1 saco.',
  'Price breaks must ascend, each number of bags once.':
    'Los tramos de precio van en aumento, cada número de sacos una vez.',
  'The first freight step must begin at 0 grams.': 'El primer tramo de porte debe empezar en 0 gramos.',
  'Freight steps must ascend by weight, each weight once.':
    'Los tramos de porte van en aumento por peso, cada peso una vez.',
  'A quote offers at least one bag of one food.': 'Una oferta incluye al menos un saco de un alimento.',
  'A bag size stands once for each food.': 'Un tamaño de saco está una vez por alimento.',
  'A reference has 120 characters at most.': 'Una referencia tiene como mucho 120 letras.',
  'There is no such quote in this buy.': 'No hay esa oferta en esta compra.',
  'The quote was withdrawn or has lapsed.': 'La oferta se retiró o venció.',
  'The quote does not offer this food.': 'La oferta no incluye este alimento.',
  'The storehouse keeps {}. Put a price in {} into foreignPriceNote.':
    'El almacén lleva sus cuentas en {}. Ponga el precio en {} en la nota de precio extranjero.',
  'There is no such supplier.': 'No existe ese proveedor.',
  'This supplier has a quote with this reference in the buy. Replace that one, or tell them apart.':
    'Este proveedor ya tiene una oferta con esta referencia en la compra. Reemplácela, o distíngalas.',
  'The quote lapsed before today, {}.': 'La oferta venció antes de hoy, {}.',
  'The gathering closes on {}; a quote must stand longer than that.':
    'Las promesas cierran el {}; una oferta debe valer más tiempo.',
  'The quote was withdrawn before.': 'La oferta ya se había retirado.',
  'The quote stands until {}; the order is planned for {}.':
    'La oferta vale hasta {}; el pedido está previsto para {}.',
  'The crop of {} is more than one year old.': 'La cosecha de {} tiene más de un año.',
  'A bag of {} {} is no whole number of steps of {} {}.':
    'Un saco de {} {} no es un número entero de pasos de {} {}.',
  'A coordinator asks round and notes who declines.': 'Un coordinador pregunta y anota quién no quiere.',
  'There is nothing of this household’s in the buy to withdraw.':
    'No hay nada de este hogar en la compra que retirar.',
  'This household has withdrawn already.': 'Este hogar ya se retiró.',
  'Food of this buy has been split. Take the split back first.':
    'Ya se repartió alimento de esta compra. Deshaga primero el reparto.',
};
