import type { en } from '../en/seam.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: typeof en = {
  seals: 'Cierres y sellos',
  machines: 'Máquinas y límites',
  packing: 'Envasado',
  toLog: 'Registro de llenado',
  toMachines: 'Máquinas y límites de los fabricantes',
  inDoubt: (count) => `${s(count, 'envase está', 'envases están')} en duda.`,
  isOut: (name) => `${name} está parada.`,
  checkNow: 'Hay que revisar un cierre ahora.',
  allGood: 'Todas las máquinas pasaron su última revisión.',
  dayOver: 'El día terminó: ya no toca ninguna revisión.',
  nothingDue: 'ya no toca ninguna revisión.',
  noMachines: 'Aún no hay ninguna máquina anotada. Añada primero la que cierra sus envases.',
  lineOf: (line, name) => `Línea ${line}, ${name}:`,
  outSays: (name, since) =>
    `${name} parada desde ${since}. No cierre nada con ella: ajústela, cierre después tres envases de prueba, abra cada uno y anote cada revisión. Con tres buenas seguidas vuelve a funcionar.`,
  nextIn: (containers, minutes) =>
    `próxima revisión tras ${s(containers, 'envase', 'envases')} o ${s(minutes, 'minuto', 'minutos')}, tras un atasco, un ajuste u otro tamaño, y del último.`,
  nextOne: 'revise el próximo que cierre: pasó la hora desde la última revisión buena.',
  dueBecause: {
    first: 'revise el primero antes de cerrar más.',
    changeover: 'revise ahora: cambió el tamaño del envase.',
    count: 'revise ahora: ya se cerraron tantos desde la última revisión buena.',
    time: 'revise ahora: pasó la hora desde la última revisión buena.',
  },
  sinceGood: (count, serial, at) =>
    `${s(count, 'envase cerrado', 'envases cerrados')} desde la última revisión buena, ${serial === null ? 'de una prueba' : `del número ${serial}`}, ${at}.`,
  neverGood: 'Todavía ninguna revisión buena.',
  checks: (count) => s(count, 'revisión hasta ahora', 'revisiones hasta ahora'),
  passed: 'Pasó:',
  failed: 'Falló:',
  placeOf: (line, serial) =>
    serial === null ? `línea ${line}, una prueba` : `línea ${line}, número ${serial}`,
  writeCheck: 'Revisar un cierre',
  openSerial: (serial) => `Abra el número ${serial} y revíselo`,
  machine: 'Máquina',
  container: 'Envase',
  line: 'Línea',
  serial: 'Número del envase',
  serialHint: 'Vacío si se cerró solo para probar la máquina.',
  how: 'Cómo',
  hows: { teardown: 'Desmontado y medido', visual: 'A simple vista', squeeze: 'Apretado y estirado' },
  occasion: 'Por qué ahora',
  occasions: {
    first: 'El primero',
    due: 'Tocaba',
    jam: 'Tras un atasco',
    adjustment: 'Tras un ajuste',
    changeover: 'Otro tamaño de envase',
    last: 'El último',
    suspect: 'Uno en duda',
    clearing: 'Prueba de una máquina parada',
  },
  cautions: {
    teardown:
      'Una lata rota tiene filos como cuchillos: guantes anticorte, y desenchufe la máquina antes de acercar la mano (manual del fabricante; OSHA 29 CFR 1910.212 como modelo).',
    visual:
      'Pase el dedo junto al cierre, nunca por un filo. Una lata abollada en el cierre o hinchada no se abre ni se come; pregunte en la oficina de extensión de su condado o en el departamento de salud.',
    squeeze:
      'La barra de sellado quema: deje que se enfríe y aparte los dedos y las mangas sueltas (manual del fabricante).',
  },
  looks: {
    teardown: 'Se ve bien: sin arrugas, sin filos, sin falso cierre, sin abolladuras',
    visual: 'Se ve bien: la tapa no gira, sin filos, sin falso cierre, sin abolladuras en el cierre',
    squeeze: 'Aguanta: ni burbujas bajo el agua, ni cede al estirar, ni arrugas que crucen el sello',
  },
  noLimits: 'Nadie ha anotado lo que permite el fabricante de esta lata, y un cierre se juzga solo por eso.',
  writeLimits: 'Anotar los límites',
  measured: 'Lo que marca el calibre',
  limitsFrom: (source) => `Límites: ${source}`,
  unit: 'Unidad',
  units: { mil: 'milésimas de pulgada', mm: 'milímetros' },
  gauge: 'Número del calibre',
  measures: {
    widthMils: 'Ancho del cierre',
    thicknessMils: 'Espesor',
    countersinkMils: 'Profundidad de la tapa',
    coverHookMils: 'Gancho de la tapa',
    bodyHookMils: 'Gancho del cuerpo',
  },
  allowed: (least, most) => `${least} a ${most}`,
  overlapFrom: (percent) => `De él se calcula el traslape: al menos ${percent} %.`,
  measureProblem: 'Escriba una medida, como 58 o 1.47.',
  tooNarrow: 'Un cierre es más ancho que sus chapas; mídalo otra vez.',
  note: 'Nota',
  faults: {
    width: 'ancho',
    thickness: 'espesor',
    countersink: 'profundidad de la tapa',
    overlap: 'traslape',
  },
  outOfLimits: (what) =>
    `Fuera de lo que admite el fabricante: ${what}. Este cierre falla, se vea como se vea: pare la máquina.`,
  writeIt: 'Anotar la revisión',
  writeFailed: 'Anotarla como fallida',
  notThis: 'Este no',
  fromTo: (from, to) => `${from} a ${to}`,
  windowOf: (line, from, to) => `Línea ${line}, los números ${from} a ${to} están en duda`,
  answered: (from, to) => `Los números ${from} a ${to} estaban en duda, y todos tienen respuesta.`,
  states: { suspect: 'en duda', cleared: 'pasó', opened: 'abierto, bueno', bad: 'falló' },
  stripLabel: (all, doubt, good, bad) =>
    `${all} envases en el orden en que se cerraron: ${doubt} en duda, ${good} buenos, ${bad} fallidos.`,
  random:
    'Uno bueno después de uno malo: el fallo va y viene, así que partir por la mitad ya no sirve. Lo que está en duda se prueba uno a uno o pasa a latas nuevas.',
  next: (serial, code, name) =>
    `Abra ahora el número ${serial} (${code}, ${name}). Si es bueno, lo son todos los anteriores; si no, el fallo ya estaba.`,
  openNext: (serial) => `Abrir el número ${serial}`,
  whoHas: (count) => `Quién los tiene: ${s(count, 'hogar', 'hogares')}, todos avisados`,
  answer: 'Qué se hace con ellos',
  which: 'Cuáles',
  thatPassed: (count) => `${count} que pasaron`,
  theRest: (count) => `${count} que no`,
  ofOwner: (name, count) => `${name}: ${count}`,
  whatToDo: 'Respuesta',
  dispositions: {
    're-can': 'Lata nueva, absorbedor nuevo',
    'eat-now': 'Comer ya, no guardar más',
    discard: 'Tirar',
  },
  found: 'Qué se encontró',
  foundHint: 'Su dueño lo lee.',
  ownDoubts: 'En duda',
  ownDoubtsTitle: (count) =>
    count === 0
      ? 'Ninguno de sus envases está en duda.'
      : count === 1
        ? 'Un cierre pone en duda 1 de sus envases.'
        : `Un cierre pone en duda ${count} de sus envases.`,
  advice: {
    wait: 'Espere',
    're-can': 'Devuélvalos',
    'eat-now': 'Cómalos ya',
    discard: 'Tírelos',
    moved: 'En envases nuevos',
  },
  adviceSays: {
    wait: 'No los abra, no coma de ellos ni los regale. Se le dirá lo que se encuentre.',
    're-can': 'Lo que hay en ellos pasa a envases nuevos con absorbedores nuevos. Devuélvalos cerrados.',
    'eat-now': 'Ábralos pronto y no guarde más lo que hay en ellos.',
    discard: 'No coma lo que hay en ellos ni lo regale.',
    moved: 'Los códigos viejos terminaron. No le queda nada por hacer.',
  },
  ownCode: 'Código',
  ownFood: 'Alimento',
  whyDoubted: 'Lo que se encontró',
  movedTo: (code, newCode) => `${code}, ahora ${newCode}`,
  numberAt: (serial, day) => `El número ${serial} de ${day} espera su respuesta`,
  toShelf: 'A la despensa',
  reCan: 'Pasarlos a latas nuevas',
  reCanSays:
    'Cada uno pasa gramo por gramo a una lata nueva del mismo dueño y del mismo lote. El código viejo termina; se avisa al dueño del nuevo. Imprima su etiqueta y revise luego el cierre nuevo.',
  allToReCan: (count) => (count === 1 ? 'El que espera' : `Los ${count} que esperan`),
  oneToReCan: (serial, code, whose) => `Número ${serial}, ${code}, ${whose}`,
  newKind: 'Envase nuevo',
  newTreatment: 'Tratamiento',
  reCanIt: (count) => (count === 1 ? '1 está en una lata nueva' : `${count} están en latas nuevas`),
  inNewCans: 'En latas nuevas',
  oldCode: 'Código viejo, dueño',
  newCode: 'Código nuevo',
  grams: 'Gramos',
  notMoved: 'Uno se anotó por error',
  why: 'Por qué',
  takeBack: 'Sigue en la lata vieja',
  foodCaution:
    'La comida hinchada, mojada, mohosa o que huele mal no se come ni se regala. Decide la oficina de extensión de su condado o el departamento de salud, no esta página.',
  answerIt: {
    release: (count) => `Dar ${count} por buenos`,
    're-can': (count) => `Pasar ${count} a latas nuevas`,
    'eat-now': (count) => `Que se coman ya ${count}`,
    discard: (count) => `Tirar ${count}`,
  },
  machinesStand: (count, out) =>
    count === 0
      ? 'Aún no hay ninguna máquina anotada.'
      : `${s(count, 'máquina', 'máquinas')}, ${out === 0 ? 'ninguna parada' : `${out} de ellas parada`}.`,
  machineKinds: {
    'can-seamer': 'Cerradora de latas',
    'heat-sealer': 'Selladora térmica',
    'vacuum-sealer': 'Selladora al vacío',
  },
  machineCaution:
    'La maneja una persona instruida, con el resguardo puesto y sin mangas sueltas (manual del fabricante; OSHA 29 CFR 1910.212 como modelo).',
  addMachine: 'Añadir una máquina',
  machineKind: 'Clase',
  name: 'Nombre',
  add: 'Añadirla',
  limits: 'Lo que permiten los fabricantes',
  limitsSay:
    'Tómelo de la hoja del fabricante de la lata, de la tapa o de la máquina. No tenemos límites propios, y sin ellos no se acepta un cierre desmontado.',
  limitSaid: (of) =>
    `ancho ${of.width}, espesor ${of.thickness}, profundidad ${of.countersink} ${of.unit}, traslape al menos ${of.overlap} %. ${of.source}`,
  figures: {
    widthLeast: 'Ancho, mínimo',
    widthMost: 'Ancho, máximo',
    thicknessLeast: 'Espesor, mínimo',
    thicknessMost: 'Espesor, máximo',
    countersinkLeast: 'Profundidad, mínima',
    countersinkMost: 'Profundidad, máxima',
    lidPlate: 'Chapa de la tapa',
    bodyPlate: 'Chapa del cuerpo',
  },
  overlapPercent: 'Traslape, mínimo (%)',
  source: 'La hoja de qué fabricante',
  sourceHint: 'Su nombre y fecha, para que otra persona la encuentre.',
  keepLimits: 'Guardar estos límites',
};
