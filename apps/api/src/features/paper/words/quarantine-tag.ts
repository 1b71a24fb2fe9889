/** The words of a quarantine tag, in both languages: the second has the type of the first. */
export const tagEn = {
  title: 'Quarantine tag',
  onHold: 'ON HOLD',
  ended: 'No longer on hold: take this tag off.',
  doNot: 'Do not eat, open, pour, pack, give or move it, except to where things on hold stand apart.',
  what: 'What',
  bag: (no: number) => `Bag ${no}`,
  count: (count: number) => `${count} ${count === 1 ? 'container' : 'containers'} on hold`,
  since: 'Since',
  why: 'Why',
  foundBy: 'Found by',
  codes: 'Serial and code of each',
  caution: 'Take care',
  canCaution:
    'Never taste to find out: food that can make you very ill may look, smell and taste good. A can that bulges, leaks or spurts is not opened at all. CDC and your county’s extension office come first, not this tag.',
  bagCaution:
    'Never taste to find out. Mould: N95, and no shaking of the bag. Treated or poisoned seed is coloured and is never food. Your county’s extension office or health department comes first, not this tag.',
  letGo: 'Who lets it go',
  byTwo: 'Two people, packing lead and coordinator, one each, with what they found in writing.',
  byPassing:
    'The packing lead, for each container by its code, once it was checked or put into a new one. What is thrown away is written down as well.',
  found: 'What was found',
  stands: 'Where it stands apart',
  lead: 'Packing lead',
  coordinator: 'Coordinator',
};

export const tagEs: typeof tagEn = {
  title: 'Etiqueta de cuarentena',
  onHold: 'RETENIDO',
  ended: 'Ya no está retenido: quite esta etiqueta.',
  doNot: 'No lo coma, abra, vierta, envase, dé ni mueva, salvo adonde se aparta lo retenido.',
  what: 'Qué',
  bag: (no) => `Saco ${no}`,
  count: (count) => `${count} ${count === 1 ? 'envase retenido' : 'envases retenidos'}`,
  since: 'Desde',
  why: 'Por qué',
  foundBy: 'Lo encontró',
  codes: 'Número y código de cada uno',
  caution: 'Cuidado',
  canCaution:
    'No lo pruebe nunca para saberlo: lo que enferma gravemente puede verse, oler y saber bien. Una lata hinchada, que gotea o que salpica no se abre. Mandan los CDC y la oficina de extensión de su condado, no esta etiqueta.',
  bagCaution:
    'No lo pruebe nunca para saberlo. Moho: mascarilla N95, y no sacuda el saco. La semilla tratada o con veneno lleva color y nunca es comida. Mandan la oficina de extensión de su condado o el departamento de salud, no esta etiqueta.',
  letGo: 'Quién lo da por bueno',
  byTwo: 'Dos personas, quien lleva el envasado y quien coordina, con lo hallado por escrito.',
  byPassing:
    'Quien lleva el envasado, cada envase por su código, cuando se revisó o pasó a otro nuevo. Lo que se tira también se anota.',
  found: 'Qué se encontró',
  stands: 'Dónde está apartado',
  lead: 'A cargo del envasado',
  coordinator: 'Coordinación',
};
