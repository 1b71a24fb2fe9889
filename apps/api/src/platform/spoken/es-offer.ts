/** What members offer each other, in Spanish. */
export const ES_OFFER: Readonly<Record<string, string>> = {
  'This is offered to others. Take the offer back first, or wait until it closes.':
    'Esto está ofrecido a otros. Retire antes la oferta, o espere a que cierre.',
  'This has been opened. Only what is still shut is offered to others.':
    'Esto ya se abrió. A otros solo se ofrece lo que sigue cerrado.',
  'Somebody else has taken this already.': 'Otro hogar ya tomó esto.',
  'This offer is over.': 'Esta oferta terminó.',
  'This is your own offer. Take it back instead.': 'Esta oferta es suya. Retírela, si quiere.',
  'It is others’ turn now.': 'Ahora es el turno de otros.',
  'The book does not know what this cost. Name an amount, or give it.':
    'El libro no sabe cuánto costó esto. Ponga un importe, o regálelo.',
  'Something is offered to you first. Say whether you take it.':
    'Se le ofrece algo primero. Diga si lo toma.',
  'Choose a container.': 'Elija un envase.',
  'Offer 100 containers at a time at most.': 'Ofrezca 100 envases de una vez como máximo.',
  'A turn lasts an hour at least.': 'Un turno dura al menos una hora.',
  'A turn lasts two weeks at most.': 'Un turno dura dos semanas como máximo.',
  'This time is past. Let it close later.': 'Esa hora ya pasó. Deje que cierre más tarde.',
  'An offer closes within {} days.': 'Una oferta cierra en {} días como máximo.',
  'Offer one food at a time; who is asked first goes by who lacks it.':
    'Ofrezca un alimento por vez; se pregunta primero a quien le falta.',
  '{} has been opened. Only what is still shut is offered to others.':
    '{} ya se abrió. A otros solo se ofrece lo que sigue cerrado.',
  'What was found in {} does not let it go to others.': 'Lo que se halló en {} no permite pasarlo a otros.',
  'There is nothing left in {}.': 'No queda nada en {}.',
  'The price is another than was shown. Look at the offer again.':
    'El precio es otro que el que se mostró. Mire la oferta de nuevo.',
  'Offer it back instead; what changed hands is mended by whoever has it now.':
    'Ofrézcalo de vuelta; lo que cambió de manos lo arregla quien lo tiene ahora.',
  'Something is offered, and it is your turn to say first. The page of offers says until when.':
    'Se ofrece algo, y le toca a usted decir primero. La página de ofertas dice hasta cuándo.',
  'Everybody whose turn it was has let your offer pass. It is open to all members now, until it closes.':
    'Todos los que tenían turno dejaron pasar su oferta. Ahora está abierta a todos los miembros, hasta que cierre.',
  'A household took this of what the store offers: {}.':
    'Un hogar tomó esto de lo que ofrece el almacén: {}.',
  'A household took this of what you offer: {}. The offer’s page says who. Agree when it is fetched.':
    'Un hogar tomó esto de lo que usted ofrece: {}. La página de la oferta dice cuál. Acuerden cuándo se recoge.',
  'Nobody took this yet.': 'Nadie lo ha tomado aún.',
  'Things of this offer were taken more than once: say which time.':
    'De esta oferta se tomó algo más de una vez: diga cuál.',
};
