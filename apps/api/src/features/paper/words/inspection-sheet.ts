/**
 * The words of the inspection sheet, in both languages: the second has the type of the first. What the guided look says on
 * a screen stands here letter for letter, which a test compares.
 */
export const inspectionSheetEn = {
  title: 'Inspection sheet',
  toLook: (count: number) =>
    count === 0
      ? 'Nothing has to be looked at'
      : `${count} ${count === 1 ? 'container' : 'containers'} to look at`,
  outsideFirst:
    'Look from outside first. What is bulged, leaks or hisses stays shut: do not open it, smell it or taste it.',
  howTo:
    'Tick what you see, or that nothing is wrong, and write who looked and on which day. Then key it in: the code leads to the page, which says what becomes of the food. Until then nobody eats what has a finding.',
  onWatch: 'On watch',
  onWatchSays:
    'Something was found beside these or in the same lot. Look at them before anybody eats from them.',
  because: (finding: string, day: string) => `${finding}, found ${day}.`,
  sameWindow: 'Packed in the same go as that one.',
  due: 'Due',
  nothing: 'Nothing is due.',
  dueSince: (why: string, day: string) => `${why}; due since ${day}`,
  whys: {
    open: 'Open for 30 days since it was last looked at',
    'pouch-or-jar': 'Pouch, jar or pail: every 180 days',
    sample: 'One of the sample of its lot, once a year',
  },
  howOften:
    'What is open is looked at every 30 days, pouches, jars and pails every 180, and of shut cans the square root of each lot once a year (common practice, no source).',
  planningAid:
    'A planning aid, not a laboratory. When in doubt, throw it out; your county extension office knows more.',
  container: 'Container, and why',
  stands: (place: string) => `Where: ${place}`,
  outside: 'From outside, still shut',
  opened: 'If it is open',
  groups: {
    ends: 'Ends and lid',
    damp: 'Damp and smell from outside',
    animals: 'Insects and rodents',
    wall: 'Rust and dents',
    seal: 'Seal and liner',
    smell: 'Smell and taste, only if all outside is clean',
    inside: 'In the food',
  },
  kernels: 'Kernels damaged by insects: ____\u00a0in\u00a0____\u00a0g',
  lookedBy: 'Looked: ____________',
  lookedOn: 'Day: ____________',
  tick: '[ ]',
};

export const inspectionSheetEs: typeof inspectionSheetEn = {
  title: 'Hoja de revisión',
  toLook: (count) =>
    count === 0 ? 'No hay nada que revisar' : `${count} ${count === 1 ? 'envase' : 'envases'} por revisar`,
  outsideFirst:
    'Mire primero por fuera. Lo que está hinchado, gotea o silba queda cerrado: no lo abra, no lo huela ni lo pruebe.',
  howTo:
    'Marque lo que ve, o que no hay nada malo, y escriba quién miró y qué día. Después páselo: el código lleva a la página, que dice qué se hace con el alimento. Hasta entonces nadie come de lo que tiene un hallazgo.',
  onWatch: 'En observación',
  onWatchSays:
    'Se encontró algo al lado de estos o en su mismo lote. Mírelos antes de que alguien coma de ellos.',
  because: (finding, day) => `${finding}, visto el ${day}.`,
  sameWindow: 'Envasado en la misma tanda.',
  due: 'Toca revisar',
  nothing: 'No toca revisar nada.',
  dueSince: (why, day) => `${why}; toca desde el ${day}`,
  whys: {
    open: 'Abierto hace 30 días desde la última revisión',
    'pouch-or-jar': 'Bolsa, frasco o cubeta: cada 180 días',
    sample: 'De la muestra de su lote, una vez al año',
  },
  howOften:
    'Lo abierto se revisa cada 30 días; bolsas, frascos y cubetas cada 180; de latas cerradas, la raíz cuadrada de cada lote una vez al año (práctica común, sin fuente).',
  planningAid:
    'Una ayuda para planear, no un laboratorio. Si duda, tírelo; la oficina de extensión de su condado sabe más.',
  container: 'Envase, y por qué',
  stands: (place) => `Dónde: ${place}`,
  outside: 'Por fuera, todavía cerrado',
  opened: 'Si está abierto',
  groups: {
    ends: 'Extremos y tapa',
    damp: 'Humedad y olor por fuera',
    animals: 'Insectos y roedores',
    wall: 'Óxido y abolladuras',
    seal: 'Cierre y forro',
    smell: 'Olor y sabor, solo si todo lo de fuera está limpio',
    inside: 'En el alimento',
  },
  kernels: 'Granos picados por insectos: ____\u00a0en\u00a0____\u00a0g',
  lookedBy: 'Miró: ____________',
  lookedOn: 'Día: ____________',
  tick: '[ ]',
};
