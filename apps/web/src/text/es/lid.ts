import type { LidText } from '../en/lid.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: LidText = {
  title: 'Tapas de frascos',
  shelf: 'Estantes',
  whose: 'Frascos de quién',
  owners: { household: 'Los de nuestro hogar', common: 'Todos los que están en el almacén' },
  standing: ({ due, loose, early }) => {
    if (due > 0) return `${s(due, 'tapa', 'tapas')} por presionar`;
    if (loose > 0) return `${s(loose, 'tapa no aguantó', 'tapas no aguantaron')}`;
    return early > 0
      ? `${s(early, 'tapa no dice', 'tapas no dicen')} nada todavía`
      : 'Ninguna tapa espera que la presionen';
  },
  how: 'Presione con un dedo el centro de cada tapa, sin abrirla. Aguantó si está hundido y no se mueve ni hace clic.',
  means:
    'Una tapa hundida dice que el cierre aguanta. No dice si el alimento es seguro: un absorbedor o el vacío conservan solo alimento seco. Lo húmedo o graso se conserva según guías publicadas de conservas caseras (USDA, la oficina de extensión de su condado).',
  due: 'Por presionar ahora',
  loosePick: 'Marque las que no aguantaron:',
  looseCodes: 'O escriba sus códigos, con una coma entre dos',
  isNoCode: 'Uno de estos no es un código; mire otra vez la etiqueta.',
  note: 'Nota',
  allHeld: (count) => (count === 1 ? 'Aguantó' : `Las ${count} aguantaron`),
  someHeld: (held, loose) => `${held} aguantaron, ${loose} no`,
  noneHeld: (loose) => (loose === 1 ? 'No aguantó' : `Ninguna de ${loose} aguantó`),
  answerSays: (loose) =>
    loose === 0
      ? 'Anota que cada una estaba hundida; no se pide nada más de ellas hasta la revisión de medio año.'
      : 'Con lo que no aguantó se cuenta solo 30 días, hasta que se cierre otra vez y la tapa aguante.',
  written: ({ held, loose, already, leftAlone }) =>
    [
      `Anotado: ${held} aguantaron, ${loose.length} no${loose.length === 0 ? '' : ` (${loose.join(', ')})`}.`,
      already === 0 ? '' : `${s(already, 'ya estaba dicha', 'ya estaban dichas')}.`,
      leftAlone === 0
        ? ''
        : `${s(leftAlone, 'está abierto, vacío o revisado', 'están abiertos, vacíos o revisados')} desde entonces y queda igual.`,
    ]
      .filter(Boolean)
      .join(' '),
  loose: 'No aguantaron',
  todo: 'Si el alimento está seco y huele bien, ponga un absorbedor nuevo (o haga vacío otra vez), limpie el borde, cierre el frasco de nuevo y presione la tapa al día siguiente. O cómalo en 30 días. Si está húmedo, mohoso o huele mal, tírelo y no lo pruebe.',
  closeAgain: 'Cerrado otra vez ahora',
  closeAllAgain: (count) => `Los ${count} cerrados otra vez ahora`,
  closedAgain: (codes) => `Cerrado otra vez: ${codes}. Presione las tapas dentro de un día.`,
  early: 'Demasiado pronto',
  earlySays:
    'Un absorbedor tarda casi un día, así que antes ni una tapa hundida ni una levantada dicen nada. Una claramente suelta se cierra otra vez ahora, y su día empieza de nuevo.',
  from: (moment) => `desde ${moment}`,
  closedAt: (moment) => `cerrado ${moment}`,
  of: (household) => `de ${household}`,
  common: 'reserva común',
  howLong: 'Un día es práctica común, sin fuente; manda el fabricante de la tapa o del absorbedor.',
  ofJar: {
    due: 'Ya pasó un día desde que se cerró este frasco: presione la tapa.',
    early: (moment) => `Presione la tapa desde ${moment}: antes de un día no dice nada.`,
    loose: 'La tapa no aguantó.',
  },
  toLids: 'A las tapas',
};
