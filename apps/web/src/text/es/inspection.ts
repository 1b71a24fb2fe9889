import type { en } from '../en/inspection.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: typeof en = {
  title: 'Por revisar',
  shelf: 'Despensa',
  whose: 'De quién son',
  owners: { household: 'De nuestro hogar', common: 'Existencias comunes del almacén' },
  waiting: (count) =>
    count === 0 ? 'No hay nada que revisar' : `${s(count, 'envase', 'envases')} por revisar`,
  outsideFirst:
    'Mire primero por fuera. Lo que está hinchado, gotea o silba queda cerrado: no lo abra, no lo huela ni lo pruebe.',
  onWatch: 'En observación',
  onWatchSays:
    'Se encontró algo al lado de estos o en su mismo lote. Mírelos antes de que alguien coma de ellos.',
  because: (finding, day) => `${finding}, visto el ${day}.`,
  sameWindow: 'Envasado en la misma tanda.',
  due: 'Toca revisar',
  dueSince: (why, day) => `${why}; toca desde el ${day}`,
  whys: {
    open: 'Abierto hace 30 días desde la última revisión',
    'pouch-or-jar': 'Bolsa, frasco o cubeta: cada 180 días',
    sample: 'De la muestra de su lote, una vez al año',
  },
  howOften:
    'Lo abierto se revisa cada 30 días; bolsas, frascos y cubetas cada 180; de latas cerradas, la raíz cuadrada de cada lote una vez al año (práctica común, sin fuente).',
  lookAt: (food) => `Revisar ${food}`,
  packed: (day) => `envasado el ${day}`,
  howAsked: '¿Cómo lo revisa?',
  hows: { outside: 'Por fuera, todavía cerrado', opened: 'Lo tengo abierto delante' },
  opensIt: 'Al anotar una revisión por dentro queda como abierto hoy.',
  foundAsked: '¿Qué ve?',
  groups: {
    ends: 'Extremos y tapa',
    damp: 'Humedad y olor por fuera',
    animals: 'Insectos y roedores',
    wall: 'Óxido y abolladuras',
    seal: 'Cierre y forro',
    smell: 'Olor y sabor, solo si todo lo de arriba está limpio',
    inside: 'En el alimento',
  },
  kernels: 'Granos picados por insectos, si los contó',
  damaged: 'Granos picados',
  sample: 'En cuántos gramos',
  kernelsProblem: 'Dé los dos en números enteros, o ninguno.',
  nothingWrong: 'Nada malo',
  judge: (count) => `Seguir con ${s(count, 'hallazgo', 'hallazgos')}`,
  back: 'Atrás',
  comesTo: 'En qué queda',
  outcome: 'Qué se hace con él (puede ser más estricto)',
  moveOut: (mass) => `Sacar ahora los ${mass}`,
  note: 'Nota',
  write: 'Anotarlo',
  written: 'Anotado.',
  nowOnWatch: (count) =>
    `${s(count, 'envase más queda', 'envases más quedan')} en observación. Se avisó a quien los tiene, sin nombres.`,
  toList: 'Qué más revisar',
  toContainer: 'Al envase',
  undo: 'Devolver los gramos',
  undoReason: 'Sacado por error',
  undone: 'Los gramos están de vuelta. Lo encontrado queda anotado.',
  earlier: 'Revisiones anteriores',
  foundBeforeYours: 'Se halló antes de que llegara aquí',
  smallTests: 'Pequeñas pruebas de este lote',
  smallTestsWords:
    'Semillas que brotan, un pan o una olla de frijoles hablan de la edad y la calidad, nunca de la seguridad.',
  tests: { sprout: 'Brote', bake: 'Horneado', cook: 'Cocción' },
  whichTest: 'Qué prueba',
  laid: 'Semillas puestas',
  sproutedCount: 'De ellas brotaron',
  sprouted: (sprouted: number, laid: number, percent: number) =>
    `brotaron ${sprouted} de ${laid}, ${percent} %`,
  seedsProblem: 'Cuente ambas en semillas enteras; no brotan más de las que se pusieron.',
  howItTurnedOut: 'Cómo resultó',
  turnedOutNeeded: 'Diga cómo resultó.',
  writeTest: 'Apuntar la prueba',
  planningAid:
    'Una ayuda para planear, no un laboratorio. Si duda, tírelo; la oficina de extensión de su condado sabe más.',
};
