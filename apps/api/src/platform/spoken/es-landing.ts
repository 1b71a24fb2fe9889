/** Landing, splitting and handing over, in Spanish. */
export const ES_LANDING: Readonly<Record<string, string>> = {
  'This delivery is finished. What comes later is a further part of it.':
    'Esta entrega está terminada. Lo que llegue después es otra parte de ella.',
  'This bag belongs to another buy.': 'Este saco es de otra compra.',
  'This bag has been weighed already.': 'Este saco ya se pesó.',
  'The bag is on hold. Nothing leaves it until it is released.':
    'El saco está retenido. Nada sale de él hasta que se libere.',
  'The bag is on hold already.': 'El saco ya está retenido.',
  'This hold has ended already.': 'Esta retención ya terminó.',
  'There is not enough left for that.': 'No queda bastante para eso.',
  'The figures do not add up.': 'Las cifras no cuadran.',
  'This has been split already.': 'Esto ya se repartió.',
  'This pick-up has taken place already.': 'Esta recogida ya tuvo lugar.',
  'An empty bag is refused, not accepted.': 'Un saco vacío se rechaza, no se acepta.',
  'Bags with this mark are of the harvest of {}. Give the other lot a mark of its own.':
    'Los sacos con esta marca son de la cosecha de {}. Dé al otro lote una marca propia.',
  'The bag is empty, so there is nothing to accept.': 'El saco está vacío, así que no hay nada que aceptar.',
  'Part of this bag has been shared out, lost or taken. Undo that first.':
    'Parte de este saco ya se repartió, se perdió o se llevó. Deshaga eso primero.',
  'The bag was refused and went back.': 'El saco se rechazó y volvió.',
  'Grams are whole numbers.': 'Los gramos son números enteros.',
  'That is more than a scale in a hall can read.': 'Eso es más de lo que lee una báscula de salón.',
  'A full bag weighs something.': 'Un saco lleno pesa algo.',
  'An empty bag weighs 0 g or more.': 'Un saco vacío pesa 0 g o más.',
  'Moisture is given in whole tenths of a percent.': 'La humedad se da en décimas enteras de por ciento.',
  'Moisture is 0 or more.': 'La humedad es 0 o más.',
  'Moisture is 100 % at most.': 'La humedad es como mucho 100 %.',
  'Write the note that goes with this.': 'Escriba la nota que va con esto.',
  'A tare goes with a gross weight.': 'Una tara va con un peso bruto.',
  'A bag that was weighed needs no exemption.': 'Un saco que se pesó no necesita exención.',
  'Name at least one bag.': 'Nombre al menos un saco.',
  'Number 100 bags at a time.': 'Numere 100 sacos cada vez.',
  'A loss is at least 1 g.': 'Una pérdida es de al menos 1 g.',
  'Say how it was lost.': 'Diga cómo se perdió.',
  'Write down what was found.': 'Anote lo que se encontró.',
  'The bag was refused, so there is nothing to weigh.': 'El saco se rechazó, así que no hay nada que pesar.',
  'This bag has been weighed already. Weigh it again with a reason.':
    'Este saco ya se pesó. Péselo otra vez con un motivo.',
  'Say why it is weighed again.': 'Diga por qué se pesa otra vez.',
  'The bag is empty. Refuse it instead.': 'El saco está vacío. Mejor rechácelo.',
  'Part of this bag has left. Say why the rest is weighed.':
    'Parte de este saco ya salió. Diga por qué se pesa el resto.',
  'By the book there is nothing left in this bag.': 'Según el libro no queda nada en este saco.',
  "Of this bag {} g are nobody's.": 'De este saco {} g no son de nadie.',
  'At most {} g.': 'Como mucho {} g.',
  'Only a bag on hold is thrown away whole.': 'Solo un saco retenido se tira entero.',
  '{} bags of this size were counted, and this would be number {}.':
    'Se contaron {} sacos de este tamaño, y este sería el número {}.',
  'Bag {} belongs to another buy.': 'El saco {} es de otra compra.',
  'It came in {}.': 'Llegó en {}.',
  'The empty bag weighs more than the full one.': 'El saco vacío pesa más que el lleno.',
  'The bag would hold more than twice what it declares. Read the scale again.':
    'El saco tendría más del doble de lo que declara. Lea la báscula otra vez.',
  'Bags are counted in whole numbers.': 'Los sacos se cuentan en números enteros.',
  'A count is 0 or more.': 'Una cuenta es 0 o más.',
  'That is more bags than a lorry carries.': 'Son más sacos de los que lleva un camión.',
  'Name at least one bag size that was counted.': 'Nombre al menos un tamaño de saco que se contó.',
  'Nothing of this buy was ordered from this supplier.': 'De esta compra no se pidió nada a este proveedor.',
  'A bag size is counted twice here.': 'Un tamaño de saco está contado aquí dos veces.',
  '{} bags of this size have a number already.': '{} sacos de este tamaño ya tienen número.',
  'Count the bags and give each its number before the delivery is finished.':
    'Cuente los sacos y dé a cada uno su número antes de terminar la entrega.',
  'There is no such bag size.': 'No existe ese tamaño de saco.',
  'This bag size belongs to another buy.': 'Este tamaño de saco es de otra compra.',
  'This food was not ordered from this supplier.': 'Este alimento no se pidió a este proveedor.',
  'Say why the bag is put on hold.': 'Diga por qué se retiene el saco.',
  'Write down what was found, so that a second person can agree to it.':
    'Anote lo que se encontró, para que una segunda persona pueda aprobarlo.',
  'The bag was refused, so there is nothing of it here.':
    'El saco se rechazó, así que aquí no hay nada de él.',
  'Nobody has asked for the release yet.': 'Nadie ha pedido aún la liberación.',
  'Somebody else must agree to what you found.': 'Otra persona debe aprobar lo que usted encontró.',
  'A release takes a packing lead and a coordinator, two different people.':
    'Para liberar hacen falta jefe de envasado y coordinador, dos personas distintas.',
  'Send the photo as base64 text.': 'Envíe la foto como texto base64.',
  'A photo is 2 MB at most. Make it smaller first.': 'Una foto es de 2 MB como mucho. Redúzcala primero.',
  'This is no whole JPEG picture. Take the photo again.':
    'Esto no es una imagen JPEG entera. Tome la foto otra vez.',
  'Whoever took a photo takes it away again, or a coordinator does.':
    'La foto la quita quien la tomó, o un coordinador.',
  'The loan is settled, and its photos stay with it.': 'El préstamo está saldado, y sus fotos quedan con él.',
  'A photo shows a part as it is, or a loan.': 'Una foto muestra una pieza tal como está, o un préstamo.',
  'The buy is closed, and its photos stay with it.':
    'La compra está cerrada, y sus fotos se quedan con ella.',
  'Taking it moves the food to common stock for good. The household is credited what its grams cost as goods and as freight by weight. Ask it once more before.':
    'Al tomarlo, el alimento pasa para siempre a la reserva común. Al hogar se le abona lo que costaron sus gramos como mercancía y como porte por peso. Pregúntele antes una vez más.',
  'The window ends after it starts.': 'El plazo termina después de empezar.',
  'Whoever takes it signs with a name.': 'Quien lo lleva firma con su nombre.',
  'Name each bag once.': 'Nombre cada saco una vez.',
  'Nothing of this household waits to be fetched.': 'Nada de este hogar espera ser recogido.',
  'Of this bag {} g of the household wait to be fetched.':
    'De este saco {} g del hogar esperan ser recogidos.',
  'Nothing of this household waits that may be taken.': 'Nada de este hogar espera que se pueda tomar.',
  'The household may fetch its food until {}.': 'El hogar puede recoger lo suyo hasta {}.',
  'The odd gram and the odd cent go to the largest remainder, then to the lower seat.':
    'El gramo suelto y el centavo suelto van al mayor resto, y luego al puesto menor.',
  'Proportional: {} to divide among {} claimed, so each gets {} of its claim.':
    'Proporcional: {} para repartir entre {} pedidos, así que cada uno recibe {} de lo que pidió.',
  'Equal awards: each gets its claim or {}, whichever is less.':
    'Partes iguales: cada uno recibe lo que pidió o {}, lo que sea menos.',
  'Equal losses: each goes without {} of its claim, or without all of it if it claimed less.':
    'Pérdidas iguales: a cada uno le faltan {} de lo que pidió, o todo si pidió menos.',
  'First come: claims are met in the order they were pledged until nothing is left.':
    'Por orden: se cumple lo pedido en el orden de las promesas hasta que no queda nada.',
  'Need first: those whose stock would run out soonest are filled first; those who eat none of it come last.':
    'Primero la necesidad: primero quienes se quedarían antes sin reservas; al final quienes no lo comen.',
  'Rotation of loss: the missing {} is borne in proportion to claims, set right by what each has borne before.':
    'Pérdida por turnos: los {} que faltan se llevan en proporción a lo pedido, corregidos por lo que cada uno ya llevó antes.',
  'All {} claimed are there, so every claim is met in full.':
    'Están los {} pedidos, así que todo lo pedido se cumple entero.',
  'Left for the common stock: {}.': 'Queda para la reserva común: {}.',
  'Shares are rounded down to whole units; those left over go to the largest remainders, and among equals to the lower seat.':
    'Las partes se redondean hacia abajo a unidades enteras; las que sobran van a los mayores restos y, entre iguales, al puesto menor.',
  'Shares are rounded down to whole steps of {}; those left over go to the largest remainders, and among equals to the lower seat.':
    'Las partes se redondean hacia abajo a pasos enteros de {}; los que sobran van a los mayores restos y, entre iguales, al puesto menor.',
  'Left for the common stock: {}, which is no whole step of {} that a claim has room for.':
    'Queda para la reserva común: {}, que no es un paso entero de {} que quepa en lo pedido.',
  'Nothing of this food is there to split.': 'No hay nada de este alimento que repartir.',
  'What comes later is split as the first part was: {}.':
    'Lo que llega después se reparte como la primera parte: {}.',
  'Undo the later round first.': 'Deshaga primero la ronda posterior.',
  'Some of it is no longer in its bag.': 'Parte ya no está en su saco.',
};
