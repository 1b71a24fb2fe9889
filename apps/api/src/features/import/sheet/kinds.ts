/** The kinds of sheet, in the order in which they are brought over: what others lean on comes first. */
export const SHEET_KINDS = ['households', 'foods', 'equipment', 'eaters', 'balances', 'stock'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

/** The names that a heading may have, English ones first; the first of each language stands in the templates. */
export type ColumnNames = {
  readonly en: readonly string[];
  readonly es: readonly string[];
  readonly isNeeded: boolean;
};

const needed = (en: string, es: string): ColumnNames => ({ ...names(en, es), isNeeded: true });
const free = (en: string, es: string): ColumnNames => ({ ...names(en, es), isNeeded: false });
const names = (en: string, es: string) => ({ en: en.split('|'), es: es.split('|') });

/** What each kind of sheet may tell, by the key of the column. */
export const COLUMNS: Readonly<Record<SheetKind, Readonly<Record<string, ColumnNames>>>> = {
  households: {
    name: needed('Household|Household name|Family|Name', 'Hogar|Nombre del hogar|Familia|Nombre'),
    person: free('Person|Contact person|Contact', 'Persona|Persona de contacto|Contacto'),
    email: free('E-mail|Email|Mail|E-mail address|Email address', 'Correo|Correo electrónico'),
    phone: free('Phone|Telephone|Telephone number|Mobile', 'Teléfono|Número de teléfono|Móvil'),
    address: free('Address|Door', 'Dirección|Domicilio'),
  },
  eaters: {
    household: needed('Household|Family|Seat', 'Hogar|Familia|Puesto'),
    name: needed('Eater|Name|Person', 'Comensal|Nombre|Persona'),
    birth: needed('Born|Birth date|Birthday|Birth year', 'Nacimiento|Fecha de nacimiento|Año de nacimiento'),
    sex: free('Sex|Gender', 'Sexo|Género'),
    activity: free('Activity', 'Actividad'),
    present: free('Present percent|Present %|Percent of year', 'Presencia %|Porcentaje del año'),
    allergens: free('Allergies|Allergens', 'Alergias|Alérgenos'),
    gluten: free('Avoids gluten|Gluten free', 'Evita gluten|Sin gluten'),
  },
  foods: {
    name: needed('Food|Food name|Name', 'Alimento|Nombre del alimento|Nombre'),
    spanish: free('Spanish name|Name in Spanish', 'Nombre en español'),
    code: free('Code|Food code', 'Código|Código del alimento'),
    group: needed('Group|Food group', 'Grupo|Grupo de alimentos'),
    allergens: needed('Allergens|Allergies', 'Alérgenos|Alergias'),
    gluten: needed('Gluten', 'Gluten'),
    energy: free('kcal per 100 g|Kilocalories', 'kcal por 100 g|Kilocalorías'),
    source: needed('Source|Source of figures', 'Fuente|Fuente de los datos'),
  },
  balances: {
    account: needed('Account|Who|Household', 'Cuenta|Quién|Hogar'),
    what: free('Kind|Type', 'Tipo|Clase'),
    owes: free('Owes|Owed to us|Debt', 'Debe|Nos debe|Deuda'),
    isOwed: free('In credit|Credit|We owe', 'A favor|Saldo a favor|Le debemos'),
    holds: free('Holds|Money held', 'Hay|Dinero guardado'),
    note: free('Note|Notes', 'Nota|Notas'),
  },
  stock: {
    owner: needed('Owner|Household|Whose', 'Dueño|Hogar|De quién'),
    food: needed('Food|Contents', 'Alimento|Contenido'),
    container: needed('Container|Container kind', 'Envase|Tipo de envase|Recipiente'),
    count: free('Count|How many|Number', 'Cantidad|Cuántos|Número'),
    mass: needed('Mass each|Weight each|Net weight|Mass', 'Peso de cada uno|Peso neto|Peso'),
    stored: needed('Stored|Packed|Packed on|Date', 'Guardado|Envasado|Fecha'),
    origin: free('Origin|Came from|Where from', 'Origen|De dónde viene'),
    harvest: free('Harvest year|Harvest', 'Año de cosecha|Cosecha'),
    note: free('Note|Notes', 'Nota|Notas'),
  },
  equipment: {
    name: needed('Equipment|Item|Name', 'Equipo|Artículo|Nombre'),
    kind: free('Kind|Type|Model', 'Tipo|Clase|Modelo'),
    parts: free('Parts|Parts list', 'Piezas|Lista de piezas'),
    value: free('Value|Worth', 'Valor'),
    where: free('Kept at|Kept where|Place', 'Lugar|Dónde está'),
  },
};

/** Invented rows that the templates show, in the order of the columns above. */
const EXAMPLES: Readonly<Record<SheetKind, readonly { readonly en: string; readonly es: string }[]>> = {
  households: cells(
    'Dell|Dora Dell|dora@example.org|555 0142|12 Alder Row',
    'Dell|Dora Dell|dora@example.org|555 0142|Alder Row 12',
  ),
  eaters: cells(
    'Dell|Ida|2015-04|female|active|100|milk, egg|no',
    'Dell|Ida|2015-04|mujer|activa|100|leche, huevo|no',
  ),
  foods: cells(
    'Emmer|Farro|emmer|grains|wheat|yes|362|label of the sack',
    'Emmer|Farro|emmer|cereales|trigo|sí|362|etiqueta del saco',
  ),
  balances: cells('Dell||41.20|||old notebook', 'Dell||41,20|||cuaderno anterior'),
  stock: cells(
    'Dell|wheat-hard-red-winter|5-gallon pail with foil liner|2|15 kg|2024-03|Quarry Mill|2023|cellar',
    'Dell|wheat-hard-red-winter|Balde de 5 galones con bolsa de aluminio|2|15 kg|2024-03|Molino Quarry|2023|sótano',
  ),
  equipment: cells(
    'Can sealer|hand crank|chuck, two rollers|640.00|hall cupboard',
    'Selladora|manual|plato, dos rodillos|640,00|armario',
  ),
};

function cells(en: string, es: string) {
  const [left, right] = [en.split('|'), es.split('|')];
  return left.map((cell, at) => ({ en: cell, es: right[at] ?? '' }));
}

/** The headings of a kind and one invented row, to start a sheet from. */
export function templateOf(kind: SheetKind, language: 'en' | 'es'): Record<string, string> {
  return Object.fromEntries(
    Object.values(COLUMNS[kind]).map((column, at) => [
      column[language][0],
      EXAMPLES[kind][at]?.[language] ?? '',
    ]),
  );
}

/** Two texts that people take for the same: capitals, accents, hyphens and blanks make no difference. */
export const foldText = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

const KEY_OF_NAME = new Map(
  SHEET_KINDS.map((kind) => [
    kind,
    new Map(
      Object.entries(COLUMNS[kind]).flatMap(([key, { en, es }]) =>
        [...en, ...es].map((name) => [foldText(name), key] as const),
      ),
    ),
  ]),
);

/** The column that a heading names; undefined when this kind of sheet has none of that name. */
export const columnOf = (kind: SheetKind, heading: string): string | undefined =>
  KEY_OF_NAME.get(kind)?.get(foldText(heading));

/** The kind of sheet that has every needed column among these headings, and most of them; undefined when none has. */
export function kindOf(headings: readonly string[]): SheetKind | undefined {
  const fits = SHEET_KINDS.map((kind) => {
    const keys = new Set(headings.map((heading) => columnOf(kind, heading)));
    const hasNeeded = Object.entries(COLUMNS[kind]).every(
      ([key, { isNeeded }]) => !isNeeded || keys.has(key),
    );
    const hasAmount = kind !== 'balances' || ['owes', 'isOwed', 'holds'].some((key) => keys.has(key));
    const known = headings.filter((heading) => columnOf(kind, heading) !== undefined).length;
    return { kind, known: hasNeeded && hasAmount ? known : 0 };
  });
  const most = Math.max(...fits.map(({ known }) => known));
  const best = fits.filter(({ known }) => known === most);
  return most > 0 && best.length === 1 ? best[0]?.kind : undefined;
}
