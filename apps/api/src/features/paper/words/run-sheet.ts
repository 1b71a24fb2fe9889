/** The words of a packing day's run sheet, in both languages: the second has the type of the first. */
export const runEn = {
  title: 'Run sheet',
  line: (no: number) => `Line ${no}`,
  lead: 'Lead',
  place: 'Place',
  crew: (stations: string, people: number) => `${stations} (${people})`,
  stations: {
    fill: 'fill',
    weigh: 'weigh',
    absorber: 'absorber',
    seam: 'seam',
    label: 'wipe and label',
    box: 'box',
  } as Record<string, string>,
  machine: 'Machine',
  scale: 'Scale, and its check weight reads',
  scales: {
    'never-checked': (scale: string, _grams: string, _day: string) =>
      `${scale}: nobody has checked it. Lay a known weight on it first, and write the check down.`,
    off: (scale: string, grams: string, day: string) =>
      `${scale}: off by ${grams} at its check of ${day}. Do not weigh on it.`,
    'check-is-old': (scale: string, _grams: string, day: string) =>
      `${scale}: last checked on ${day}. Lay a known weight on it first, and write the check down.`,
    true: (scale: string, grams: string, day: string) =>
      `${scale}: true at its check of ${day}, ${grams} off.`,
  },
  noScale: 'No scale is booked for this day. Check the one that stands here with a known weight.',
  spoiling: {
    past: (name: string, pieces: string, day: string) =>
      `${name}: ${pieces} of those on hand were good until ${day} only. Lay them aside; the maker’s paper comes first.`,
    passes: (name: string, pieces: string, day: string) =>
      `${name}: ${pieces} of those on hand are good until ${day} only. Lay them aside; the maker’s paper comes first.`,
  },
  before: 'Before the line runs',
  setup: (minutes: number) =>
    `${minutes} minutes to set up. [\u00a0]\u00a0Hands and table clean  [\u00a0]\u00a0Scale checked with a weight  [\u00a0]\u00a0First can cut open and measured  [\u00a0]\u00a0Absorber packs shut and hard  [\u00a0]\u00a0First aid and exit known`,
  cautions:
    'Seamer: sleeves and hair back, one trained person of 16 or older, unplug before clearing a jam; the maker’s manual comes first. Dry ice: gloves, eye cover and fresh air, never in a tight container; OSHA and your gas supplier come first. Nothing moist or fatty is sealed without oxygen: CDC and your extension office come first.',
  no: 'No.',
  starts: 'Starts',
  what: 'Food, bags, household',
  bags: (numbers: string) => `Bags ${numbers}`,
  container: 'Container',
  tare: (empty: string, full: string) => `empty ${empty}, full ${full}`,
  tareEach: 'weigh each one empty first',
  target: 'Target',
  tolerance: (grams: string) => `± ${grams}`,
  units: 'Units',
  packets: 'Packets or dry ice in each',
  packet: (count: number, size: string) => `${count} × ${size} ml`,
  dryIce: (each: string, all: string, minutes: string) =>
    `dry ice, ${each} in each, ${all} in all; lid half open for ${minutes} minutes at least`,
  caution: (said: string, whose: string) => `${said} What comes first: ${whose}.`,
  noPackets: 'none',
  serials: 'Labels',
  minds: 'Allergens',
  noAllergens: 'none of the nine',
  fullClean: (minutes: number) => `Clean the line first, ${minutes} min`,
  wipeDown: (minutes: number) => `Wipe down first, ${minutes} min`,
  clash: 'Must not follow what runs before it: ask the lead',
  done: 'Done',
  ends: (hour: string) => `Ends at ${hour}`,
  lids: (hour: string) => `The last lid over dry ice may be closed at ${hour}.`,
  rest: (minutes: number) => `${minutes} minutes of rest for everybody, and a change of stations every 45.`,
  cleaning: 'Clean-down',
  cleanDown: (minutes: number) =>
    `${minutes} minutes. [\u00a0]\u00a0Unplugged  [\u00a0]\u00a0Swept, vacuumed, wiped  [\u00a0]\u00a0Sanitised where wet  [\u00a0]\u00a0Dried by air  [\u00a0]\u00a0Seamer oiled  [\u00a0]\u00a0Parts counted  [\u00a0]\u00a0Scale read again  [\u00a0]\u00a0Bins out  [\u00a0]\u00a0Photo taken`,
  totals: 'Totals',
  made: 'Made',
  scrapped: 'Scrapped, and why',
  left: 'Left in bags',
  nothing: 'Nobody has said yet what to pack on this line.',
  tooFew: 'Too few people to run this line: its times are not known.',
  sign: 'Lead of the day',
};

export const runEs: typeof runEn = {
  title: 'Hoja de la jornada',
  line: (no) => `Línea ${no}`,
  lead: 'A cargo',
  place: 'Lugar',
  crew: (stations, people) => `${stations} (${people})`,
  stations: {
    fill: 'llenar',
    weigh: 'pesar',
    absorber: 'absorbedor',
    seam: 'cerrar',
    label: 'limpiar y etiquetar',
    box: 'encajar',
  },
  machine: 'Máquina',
  scale: 'Balanza, y lo que marca su pesa',
  scales: {
    'never-checked': (scale) =>
      `${scale}: nadie la ha probado. Ponga antes una pesa conocida, y anote la prueba.`,
    off: (scale, grams, day) => `${scale}: erraba ${grams} en su prueba del ${day}. No pese en ella.`,
    'check-is-old': (scale, _grams, day) =>
      `${scale}: probada por última vez el ${day}. Ponga antes una pesa conocida, y anote la prueba.`,
    true: (scale, grams, day) => `${scale}: exacta en su prueba del ${day}, erraba ${grams}.`,
  },
  noScale: 'No hay balanza reservada para esta jornada. Pruebe con una pesa conocida la que esté aquí.',
  spoiling: {
    past: (name, pieces, day) =>
      `${name}: ${pieces} de los que hay valían solo hasta el ${day}. Apártelos; manda el papel del fabricante.`,
    passes: (name, pieces, day) =>
      `${name}: ${pieces} de los que hay valen solo hasta el ${day}. Apártelos; manda el papel del fabricante.`,
  },
  before: 'Antes de que corra la línea',
  setup: (minutes) =>
    `${minutes} minutos para preparar. [\u00a0]\u00a0Manos y mesa limpias  [\u00a0]\u00a0Balanza probada con una pesa  [\u00a0]\u00a0Primera lata cortada y medida  [\u00a0]\u00a0Paquetes de absorbedores cerrados y duros  [\u00a0]\u00a0Botiquín y salida a la vista`,
  cautions:
    'Cerradora: mangas y pelo recogidos, una persona formada de 16 años o más, desenchufar antes de quitar un atasco; manda el manual del fabricante. Hielo seco: guantes, protección para los ojos y aire fresco, nunca en un envase hermético; mandan OSHA y su proveedor de gas. Nada húmedo o graso se cierra sin oxígeno: mandan los CDC y su oficina de extensión.',
  no: 'N.º',
  starts: 'Empieza',
  what: 'Alimento, sacos, hogar',
  bags: (numbers) => `Sacos ${numbers}`,
  container: 'Envase',
  tare: (empty, full) => `vacío ${empty}, lleno ${full}`,
  tareEach: 'pese antes cada uno vacío',
  target: 'Peso',
  tolerance: (grams) => `± ${grams}`,
  units: 'Envases',
  packets: 'Sobres o hielo seco en cada uno',
  packet: (count, size) => `${count} × ${size} ml`,
  dryIce: (each, all, minutes) =>
    `hielo seco, ${each} en cada uno, ${all} en total; tapa medio abierta al menos ${minutes} minutos`,
  caution: (said, whose) => `${said} Lo que manda: ${whose}.`,
  noPackets: 'ninguno',
  serials: 'Etiquetas',
  minds: 'Alérgenos',
  noAllergens: 'ninguno de los nueve',
  fullClean: (minutes) => `Limpiar antes la línea, ${minutes} min`,
  wipeDown: (minutes) => `Pasar antes un paño, ${minutes} min`,
  clash: 'No debe seguir a lo anterior: pregunte a quien está a cargo',
  done: 'Hecho',
  ends: (hour) => `Termina a las ${hour}`,
  lids: (hour) => `La última tapa sobre hielo seco puede cerrarse a las ${hour}.`,
  rest: (minutes) => `${minutes} minutos de descanso para todos, y cambio de puesto cada 45.`,
  cleaning: 'Limpieza final',
  cleanDown: (minutes) =>
    `${minutes} minutos. [\u00a0]\u00a0Desenchufado  [\u00a0]\u00a0Barrido, aspirado, fregado  [\u00a0]\u00a0Desinfectado lo mojado  [\u00a0]\u00a0Secado al aire  [\u00a0]\u00a0Cerradora engrasada  [\u00a0]\u00a0Piezas contadas  [\u00a0]\u00a0Balanza leída otra vez  [\u00a0]\u00a0Basura fuera  [\u00a0]\u00a0Foto hecha`,
  totals: 'Totales',
  made: 'Hechos',
  scrapped: 'Desechados, y por qué',
  left: 'Queda en los sacos',
  nothing: 'Nadie ha dicho aún qué envasar en esta línea.',
  tooFew: 'Faltan personas para esta línea: no se saben sus horas.',
  sign: 'A cargo de la jornada',
};
