/** The words of the lists of a shelf, in both languages: the second has the type of the first. */
export const shelfListEn = {
  title: 'Shelf list',
  ours: 'Our household’s stock at home',
  common: 'Common stock',
  stands: (count: number) => `${count === 1 ? '1 container holds' : `${count} containers hold`} `,
  asOf: (day: string) => `as of ${day}.`,
  nowhere: 'Nobody said where',
  code: 'Code',
  what: 'What it is',
  packed: (day: string) => `packed ${day}`,
  opened: 'opened',
  held: 'ON HOLD: do not eat',
  unfit: 'FOUND UNFIT: do not eat',
  net: 'Net',
  eatFirst: 'Eat first',
  about: (year: number) => `about ${year}`,
  between: (soonest: number, latest: number) => `${soonest} to ${latest}`,
  untold: 'not told',
  counted: 'Counted',
  estimate:
    'Eat-first years are estimates from pack, place and warmth, and no finer than these are known. Whether food is good a look tells, not a date.',
  nothing: 'Nothing stands here.',
  sign: ['Counted by', 'Seen by'],
};

export const shelfListEs: typeof shelfListEn = {
  title: 'Lista de la despensa',
  ours: 'Las existencias de nuestro hogar en casa',
  common: 'Existencias comunes',
  stands: (count) => `${count === 1 ? '1 envase contiene' : `${count} envases contienen`} `,
  asOf: (day) => `a fecha de ${day}.`,
  nowhere: 'Nadie dijo dónde',
  code: 'Código',
  what: 'Qué es',
  packed: (day) => `envasado ${day}`,
  opened: 'abierto',
  held: 'RETENIDO: no comer',
  unfit: 'HALLADO NO APTO: no comer',
  net: 'Neto',
  eatFirst: 'Comer primero',
  about: (year) => `hacia ${year}`,
  between: (soonest, latest) => `de ${soonest} a ${latest}`,
  untold: 'no se sabe',
  counted: 'Contado',
  estimate:
    'Los años son estimaciones según envase, lugar y calor, y no más finos de lo que se sabe. Si el alimento es bueno lo dice una mirada, no una fecha.',
  nothing: 'Aquí no hay nada.',
  sign: ['Contado por', 'Visto por'],
};

export const eatFirstListEn = {
  title: 'Eat first',
  lead: 'Open these in this order, from the top: ',
  leadCommon: 'Of common stock these come first, from the top: ',
  order: 'No.',
  place: 'Where',
  left: 'Keeps about',
  spans: {
    day: (count: number) => (count === 1 ? '1 day' : `${count} days`),
    month: (count: number) => `${count} months`,
    year: (count: number) => `${count} years`,
  },
  past: (span: string) => `past its day by about ${span}: look first`,
  atDay: 'its day is today: look first',
  done: 'Eaten',
  more: (count: number) => `${count} more come after these.`,
  leftOut: (codes: readonly string[]) =>
    `Left out, since the last look found them unfit to eat: ${codes.length} (${codes.join(', ')}). Do not taste them; what to do stands on their own page.`,
};

export const eatFirstListEs: typeof eatFirstListEn = {
  title: 'Comer primero',
  lead: 'Abra estos en este orden, desde arriba: ',
  leadCommon: 'De las existencias comunes estos van primero, desde arriba: ',
  order: 'N.º',
  place: 'Dónde',
  left: 'Dura unos',
  spans: {
    day: (count) => (count === 1 ? '1 día' : `${count} días`),
    month: (count) => `${count} meses`,
    year: (count) => `${count} años`,
  },
  past: (span) => `pasó su día hace unos ${span}: mire antes`,
  atDay: 'hoy es su día: mire antes',
  done: 'Comido',
  more: (count) => `${count} más vienen después de estos.`,
  leftOut: (codes) =>
    `No están aquí, porque la última revisión los halló no aptos: ${codes.length} (${codes.join(', ')}). No los pruebe; qué hacer está en la página de cada uno.`,
};
