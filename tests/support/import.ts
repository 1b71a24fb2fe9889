import type { Answer, Caller } from './app.ts';

export type SheetText = { name: string; text: string; kind?: string; leftOut?: string[] };

/** Files as a browser sends them: their very bytes. */
export const sheetFiles = (sheets: readonly SheetText[]) =>
  sheets.map(({ text, ...file }) => ({ ...file, base64: Buffer.from(text, 'utf8').toString('base64') }));

/** Tries some sheets, and brings them over as they were seen. */
export async function bringOver(
  caller: Caller,
  path: string,
  sheets: readonly SheetText[],
  more: Record<string, unknown> = {},
): Promise<{ tried: Answer; posted: Answer }> {
  const wish = { files: sheetFiles(sheets), ...more };
  const tried = await caller.post(`${path}/import-trials`, wish);
  const posted = await caller.post(`${path}/imports`, { ...wish, seen: tried.body.seen ?? '0'.repeat(64) });
  return { tried, posted };
}

/** A whole small group in six sheets, some of them as a Spanish spreadsheet writes them. Invented. */
export const WHOLE_GROUP: readonly SheetText[] = [
  { name: 'households.csv', text: 'Household,Person\nDell,Dora Dell\nEames,Ed Eames\n' },
  {
    name: 'comensales.csv',
    text: '\uFEFFNombre;Hogar;Nacimiento;Sexo;Alergias\r\n"Ida";Dell;abril de 2015;mujer;leche, huevo\r\nEmil;3;1980;hombre;ninguna\r\n',
  },
  {
    name: 'foods.csv',
    text: 'Food\tGroup\tAllergens\tGluten\tSource\nEmmer\tgrains\twheat\tyes\tlabel of the sack\n',
  },
  {
    name: 'balances.csv',
    text: 'Account,Kind,Owes,In credit,Holds\nDell,,41.20,,\nEames,,,10.00,\nbank,,,,"1,512.30"\nQuarry Mill,supplier,,120.00,\n',
  },
  {
    name: 'stock.csv',
    text: 'Owner,Food,Container,Count,Mass each,Stored,Origin\nDell,Emmer,pail-5-gallon-lined,2,15 kg,2024-03,a farm shop\ncommon,rice-white-long,pail-6-gallon-lined,1,33 lb,12 Oct 2025,\n',
  },
  {
    name: 'equipment.csv',
    text: 'Equipment,Kind,Parts,Value,Kept at\nCan sealer,hand crank,"chuck, two rollers",640.00,hall cupboard\n',
  },
];
