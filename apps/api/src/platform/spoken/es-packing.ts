/** Packing days, in Spanish. */
export const ES_PACKING: Readonly<Record<string, string>> = {
  'Nobody counts more than 999.': 'Nadie cuenta más de 999.',
  'The lines of this day have no such station.': 'Las líneas de esta jornada no tienen ese puesto.',
  'What runs together has changed since you saw it. Look at it again.':
    'Lo que se envasa junto ha cambiado desde que lo vio. Mírelo otra vez.',
  'This has changed hands already.': 'Esto ya cambió de dueño.',
  'Nothing changes hands here.': 'Aquí nada cambia de dueño.',
  'Send back what was shown.': 'Devuelva lo que se mostró.',
  'A bag of this lot stands at the line already, counted as it is.':
    'Un saco de este lote ya está en la línea, contado como está.',
  'Give it back on the plan of the session.': 'Devuélvalo en el plan de la jornada.',
  'Book it again on the plan of the session.': 'Anótelo otra vez en el plan de la jornada.',
  'Your food runs together with others’: of the {} g that you put in, {} g went to others. Yours: containers {}, left over {} g.':
    'Su alimento se envasa junto con el de otros: de los {} g que puso, {} g pasaron a otros. Suyo: envases {}, sobran {} g.',
  'Your food runs together with others’: to the {} g that you put in, {} g came from others. Yours: containers {}, left over {} g.':
    'Su alimento se envasa junto con el de otros: a los {} g que puso se suman {} g de otros. Suyo: envases {}, sobran {} g.',
  'Your food no longer runs together with others’: what had changed hands went back.':
    'Su alimento ya no se envasa junto con el de otros: lo que cambió de dueño volvió.',
  'Tear down a can that line {} has closed, and measure it: {}.':
    'Desmonte y mida una lata que cerró la línea {}: {}.',
  'Tug and squeeze under water what line {} has closed: {}.':
    'Estire y apriete bajo el agua lo que cerró la línea {}: {}.',
  'A container of {} is in doubt since a check failed: say what becomes of it.':
    'Un envase de {} está en duda desde que falló una revisión: diga qué se hace con él.',
  '{} containers of {} are in doubt since a check failed: say what becomes of them.':
    '{} envases de {} están en duda desde que falló una revisión: diga qué se hace con ellos.',
  'That is more than ten hours.': 'Eso es más de diez horas.',
  'A station takes time.': 'Un puesto lleva tiempo.',
  'That is more than an hour.': 'Eso es más de una hora.',
  'A session has a line at least.': 'Una jornada tiene al menos una línea.',
  'That is more lines than a hall holds.': 'Son más líneas de las que caben en un salón.',
  'Somebody stands at a line.': 'Alguien tiene que estar en la línea.',
  'That is more people than a line needs.': 'Son más personas de las que necesita una línea.',
  'A line has a station at least.': 'Una línea tiene al menos un puesto.',
  'Each station stands once.': 'Cada puesto figura una sola vez.',
  'Ask for a container at least.': 'Pida al menos un envase.',
  'That is more than a line fills in days.': 'Es más de lo que una línea llena en días.',
  'A household asks for 40 kinds of containers at most.': 'Un hogar pide como mucho 40 clases de envases.',
  '{} has a time outside these hours.': '{} tiene una hora fuera de este horario.',
  '{} has a time on line {}.': '{} tiene una hora en la línea {}.',
  'A pack is shut after it was opened.': 'Un paquete se cierra después de abrirlo.',
  'The session has not begun yet.': 'La jornada aún no ha empezado.',
  'The session has begun.': 'La jornada ya empezó.',
  'The session is over and signed.': 'La jornada terminó y está firmada.',
  'The session is over and settled.': 'La jornada terminó y está liquidada.',
  'The session was called off.': 'La jornada se anuló.',
  'You have a time already. Give it back to choose another.':
    'Ya tiene una hora. Devuélvala para elegir otra.',
  'Say first what you want packed; the time follows from it.':
    'Diga primero qué quiere envasar; de ahí sale el tiempo.',
  'Your containers take {} min; that does not lie between setting up and cleaning down from then on.':
    'Sus envases llevan {} min; a partir de esa hora no caben entre la preparación y la limpieza.',
  '{} has no line left for that long. You can wait for one.':
    '{} no tiene ya una línea libre por tanto tiempo. Puede esperar una.',
  'No line is free then. The first one that is begins at {}.':
    'Ninguna línea está libre entonces. La primera libre empieza a las {}.',
  'Your time at {} was given back by who plans it. Choose another one.':
    'Quien planea {} devolvió su hora. Elija otra.',
  'Nobody came to {} within {} minutes of your time, so it is free for others. Say there that you are here, and you get the next one.':
    'Nadie vino a {} en los {} minutos después de su hora, así que queda libre para otros. Diga allí que ya está y recibe la siguiente.',
  'The labels made ahead say {}; the book says {}. Print these labels anew.':
    'Las etiquetas hechas de antemano dicen {}; el libro dice {}. Imprímalas de nuevo.',
  'A line has become free: you are booked at {} on {} at {}.':
    'Quedó libre una línea: tiene hora en {} el {} a las {}.',
  'A session is opened before it starts.': 'Una jornada se abre antes de que empiece.',
  '{} is open. Say what you want packed and book a time.':
    '{} está abierta. Diga qué quiere envasar y reserve una hora.',
  'A session ends after it starts.': 'Una jornada termina después de empezar.',
  'A session lasts a day at most. Open one for each day.':
    'Una jornada dura como mucho un día. Abra una para cada día.',
  'There is a session called {} already.': 'Ya hay una jornada llamada {}.',
  '{} has moved, and your time with it: {} at {}.':
    '{} ha cambiado de hora, y con ella su turno: {} a las {}.',
  '{} has another time or place now. Look at it again.':
    '{} tiene ahora otra hora u otro lugar. Vuelva a mirarla.',
  'You own {} g of it in bags; {} g are asked for.': 'Tiene {} g en sacos; se piden {} g.',
  'The packing session is not at a stage that allows this.':
    'La jornada de envasado no está en una etapa que lo permita.',
  'Somebody must not meet what runs before their food.':
    'Alguien no debe encontrar lo que pasa antes de su alimento.',
  'Somebody who gets {} must not meet what runs before it on line {}. Move the times, or pack it on another day.':
    'Alguien que recibe {} no debe encontrar lo que pasa antes por la línea {}. Cambie las horas o envase eso otro día.',
  'No line is free at that time.': 'Ninguna línea está libre a esa hora.',
  'Give the grams of a container at least.': 'Dé los gramos de al menos un envase.',
  'Log 500 containers at a time.': 'Anote 500 envases de una vez como mucho.',
  'Packets are sold in other sizes.': 'Los sobres se venden en otros tamaños.',
  'A pack holds a packet at least.': 'Un paquete tiene al menos un sobre.',
  'That is more than a case holds.': 'Eso es más de lo que trae una caja.',
  'The session has {} lines.': 'La jornada tiene {} líneas.',
  'This time is still to come. Set the clock of the phone.':
    'Esa hora aún no llega. Ponga en hora el teléfono.',
  'This was before the packing day began.': 'Eso fue antes de que empezara el día de envasado.',
  'What is left in {} has not been weighed yet.': 'Aún no se ha pesado lo que queda en {}.',
  '{} g of {} are not accounted for; {} g are explained by dust and scales. Weigh again, or say why.':
    'Faltan {} g de {} por explicar; {} g se explican por polvo y básculas. Vuelva a pesar o diga por qué.',
  'Weigh {} empty containers, one after the other.': 'Pese {} envases vacíos, uno tras otro.',
  'An empty container weighs something.': 'Un envase vacío pesa algo.',
  'No empty container weighs more than 100 kg.': 'Ningún envase vacío pesa más de 100 kg.',
  'Give what the scale shows of each container.': 'Dé lo que marca la báscula de cada envase.',
  'Give what each container weighs empty.': 'Dé lo que pesa vacío cada envase.',
  'The empty container weighs as much as the full one.': 'El envase vacío pesa tanto como el lleno.',
  'Gross less tare is {} g; the net is given as {} g.': 'Bruto menos tara son {} g; el neto se da como {} g.',
  'No ten empties of this kind have this tare. Weigh ten, or tare each container by itself.':
    'Ningunos diez vacíos de este tipo tienen esta tara. Pese diez, o pese vacío cada envase.',
  'Grain is 50 % moist at most.': 'El grano tiene como mucho un 50 % de humedad.',
  'Moisture explains what a second weighing finds. This is the first.':
    'La humedad explica lo que halla una segunda pesada. Esta es la primera.',
  'This pack is shut already.': 'Este paquete ya está cerrado.',
  'The pack held {} packets.': 'El paquete tenía {} sobres.',
  'Mend it in the pour log of the session instead.': 'Corríjalo en el registro de envasado de la jornada.',
  'Count what is there and book the difference instead.': 'Cuente lo que hay y asiente la diferencia.',
  'Bring your bags to the line: {}.': 'Traiga sus sacos a la línea: {}.',
  'You said that you come to help: {}.': 'Dijo que viene a ayudar: {}.',
  'A packet takes up something.': 'Un sobre absorbe algo.',
  'That is more than a drum needs.': 'Es más de lo que necesita un bidón.',
  'Packets go with the treatment that uses them.': 'Los sobres van con el tratamiento que los usa.',
  '{} with {} g of {} needs packets for {} ml of oxygen; these take up {} ml.':
    '{} con {} g de {} necesita sobres para {} ml de oxígeno; estos absorben {} ml.',
  'Make a label at least.': 'Haga una etiqueta al menos.',
  'Make 500 labels at a time.': 'Haga 500 etiquetas cada vez.',
  'No container here has the code {}.': 'Ningún envase de aquí tiene el código {}.',
  'The label {} is of another household.': 'La etiqueta {} es de otro hogar.',
  '{} is on hold, so nothing is poured into it.': '{} está retenido, así que no se vierte nada en él.',
  '{} has ended: what was in it stands in a new one.': '{} ha terminado: lo que contenía está en uno nuevo.',
  '{} was filled and closed already. Read the label again.':
    '{} ya se llenó y se cerró. Lea otra vez la etiqueta.',
  'The label {} is of another lot of food.': 'La etiqueta {} es de otro lote.',
  'The label {} is of another kind of container.': 'La etiqueta {} es de otro tipo de envase.',
  'The label {} is of another day.': 'La etiqueta {} es de otro día.',
  'Give a code for each container, or none.': 'Dé un código por envase, o ninguno.',
  'A container was filled under this label already.': 'Ya se llenó un envase con esta etiqueta.',
  'This label was made for something else.': 'Esta etiqueta se hizo para otra cosa.',
};
