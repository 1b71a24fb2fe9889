import { spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { type PdfPart, partsOf, pdfOf, printed, readStructure } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

type Can = { id: string; code: string };
let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let elder: TestHousehold;
let lead: TestHousehold;
let dells: Can[];
let elders: Can[];
let given: GivenCan[];
let pantryId: string;
let farPantryId: string;
let manifest: { id: string; number: number; lines: { containerId: string }[] };
let elderStock: TestStock;
let holdId: string;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  elder = await aHousehold(app, storehouse, 'Elder');
  lead = await aHousehold(app, storehouse, 'Lorne', { duties: ['packing_lead'] });
  const wish = { food: 'wheat-hard-white', packedOn: '2026-08-01', gramsEach: 2_000 };
  dells = await (await stockOf(storehouse, dell)).bringIn({ ...wish, count: 2 });
  elderStock = await stockOf(storehouse, elder);
  elders = await elderStock.bringIn({ ...wish, count: 3 });
  bodyOf(await elderStock.take(elders[0] as Can, 500), 201);
  const [, eaten] = dells;
  bodyOf(await dell.caller.post(at(`/containers/${eaten?.id}/uses`), { grams: 2_000, to: 'eaten' }), 201);
  given = await commonCans(storehouse, [
    { food: 'wheat-hard-white', grams: 2_200, count: 2, stored: '2020-01' },
  ]);
  pantryId = (await post('/pantries', aPantryWish('Mill Lane', { mostDaysPastBest: 3650, leastLifeDays: 0 })))
    .id;
  const trips = [{ pantryId, onDay: '2026-09-08', capacityGrams: 50_000 }];
  const { id: matchingId } = await post('/gift-matchings', { trips });
  manifest = await post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' });
  expect(manifest.lines).toHaveLength(2);
  await commonCans(storehouse, [{ food: 'wheat-hard-white', grams: 1_000, count: 1, stored: '2020-01' }]);
  const far = aPantryWish('Far End', { mostDaysPastBest: 3650, leastLifeDays: 0 });
  farPantryId = (await post('/pantries', far)).id;
  const farTrips = [{ pantryId: farPantryId, onDay: '2026-09-08', capacityGrams: 50_000 }];
  const { id: farId } = await post('/gift-matchings', { trips: farTrips });
  await post('/gift-manifests', { matchingId: farId, trip: 0, driver: 'Ruth' });
  const foodId = (await foodIdsOf(storehouse))['wheat-hard-white'];
  const of = { scope: 'food', foodId, fromOn: '2020-01-01', toOn: '2026-08-31' };
  const hold = { of, reason: 'The mill found stones.' };
  holdId = bodyOf(await lead.caller.post(at('/holds'), hold), 201).id;
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const post = async (rest: string, body: unknown) =>
  bodyOf(await storehouse.coordinator.post(at(rest), body), 201);
const notice = (query = '') => at(`/holds/${holdId}/papers/recall-notice?language=en${query}`);
/** The cells of the row that names a code. */
const rowOf = (pages: readonly PdfPart[], code: string): string[] => {
  const rows = pages
    .flatMap((page) => partsOf(page, 'TR'))
    .filter(({ text }) => text.includes(spellCode(code)));
  expect(rows).toHaveLength(1);
  return rows.flatMap((row) => partsOf(row, 'TD')).map(({ text }) => text.trim());
};

test('a household’s notice says what is on hold and why, its own codes and nobody else’s, and has a slip to give back', async () => {
  const { text } = await printed(dell.caller, notice());
  for (const said of [
    'telephone ____________', // of whoever knows more, to be written in where the book has none
    ...['For Dell', 'Do not eat it.', 'The mill found stones.', 'bags that came and containers packed'],
    ...['Never taste to find out', 'health department', 'Cut here and give this part back'],
    ...['We have it aside', 'We ate it', 'We gave it on', 'We threw it away', 'Signature'],
  ])
    expect(text).toContain(said);
  for (const { code } of [...elders, ...given]) expect(text).not.toContain(spellCode(code));
  expect(text).not.toContain('Elder');
  const pages = await readStructure(pdfOf(await dell.caller.get(notice())));
  const [kept, eaten] = dells;
  expect(rowOf(pages, kept?.code ?? '').at(-1)).toBe('4.4 lb 2.00 kg');
  expect(rowOf(pages, eaten?.code ?? '').at(-1)).toBe('none');
});

test('its code and its mark lead the household and whoever handles holds to the hold, and a neighbour nowhere', async () => {
  const { pages } = await printed(dell.caller, notice());
  const code = pages[0]?.qr.split('/').at(-1) ?? '';
  for (const { caller } of [dell, lead])
    expect(bodyOf(await caller.get(at(`/papers/${code}`)))).toMatchObject({
      ...{ kind: 'recall-notice', subjectId: holdId, householdId: dell.householdId },
    });
  expect(await refusalOf(app, () => elder.caller.get(at(`/papers/${code}`)))).toEqual(
    refused(403, 'not-your-household'),
  );
});

test('a pantry’s notice has each container with the manifest that it went by, and no household', async () => {
  const { text } = await printed(storehouse.coordinator, notice(`&pantry=${pantryId}`));
  expect(text).toContain('For Mill Lane');
  expect(text).toContain('intake desk: intake@pantry.example');
  expect(text).not.toMatch(/Dell|Elder/);
  for (const { code } of dells) expect(text).not.toContain(spellCode(code));
  const pages = await readStructure(pdfOf(await storehouse.coordinator.get(notice(`&pantry=${pantryId}`))));
  for (const { code } of given)
    expect(rowOf(pages, code).slice(2)).toEqual([
      `Manifest ${manifest.number}, 8 Sept 2026`,
      '4.9 lb 2.20 kg',
    ]);
});

test('each pantry’s has a number of its own, and keeps it when it is printed again', async () => {
  const numberOf = async (id: string) => {
    const { pages } = await printed(storehouse.coordinator, notice(`&pantry=${id}`));
    return pages[0]?.qr.split('/').at(-1);
  };
  const first = await numberOf(pantryId);
  expect(await numberOf(farPantryId)).not.toBe(first);
  expect(await numberOf(pantryId)).toBe(first);
});

test('what the book tells a household of the hold is named in both of its languages', async () => {
  const { notices } = bodyOf(await dell.caller.get(at('/notices?state=all')));
  expect(notices[0]).toMatchObject({ kind: 'held', about: 'Hard white wheat', aboutEs: 'Trigo duro blanco' });
  const { notices: found } = bodyOf(await dell.caller.get(at('/notices?state=all&q=trigo%20duro')));
  expect(found.map(({ id }: { id: string }) => id)).toEqual([notices[0].id]);
});

test('another household’s is printed by who handles holds, and it finds that it was looked at', async () => {
  const other = `&household=${elder.householdId}`;
  expect((await printed(lead.caller, notice(other))).text).toContain('For Elder');
  const { privateReads } = bodyOf(
    await elder.caller.get(at(`/households/${elder.householdId}/private-reads`)),
  );
  expect(privateReads).toContainEqual(expect.objectContaining({ what: 'notices', purpose: 'recall' }));
  const get = (caller: TestHousehold['caller'], query: string) => () => caller.get(notice(query));
  expect(await refusalOf(app, get(dell.caller, other))).toEqual(refused(403, 'not-your-household'));
  expect(await refusalOf(app, get(dell.caller, `&pantry=${pantryId}`))).toEqual(refused(403, 'duty-missing'));
  // Lorne never had any of it.
  const lorne = get(storehouse.coordinator, `&household=${lead.householdId}`);
  expect(await refusalOf(app, lorne)).toEqual(refused(404, 'thing-not-found'));
  expect(await refusalOf(app, get(lead.caller, `${other}&pantry=${pantryId}`))).toEqual(
    refused(400, 'invalid-input', 'pantry'),
  );
});

test('it is read in Spanish and large on both sheets, the slip whole on one page, each table with its heads', async () => {
  for (const query of ['', '&size=letter&large=true']) {
    const path = notice(query).replace('language=en', 'language=es');
    const { pages } = await printed(dell.caller, path);
    const slip = pages.filter(({ text }) => text.includes('Corte aquí'));
    expect(slip).toHaveLength(1);
    for (const said of ['Nunca lo tuvimos', 'Firma']) expect(slip[0]?.text).toContain(said);
    const told = await readStructure(pdfOf(await dell.caller.get(path)));
    for (const table of told.flatMap((page) => partsOf(page, 'Table'))) {
      const [head, ...rows] = partsOf(table, 'TR');
      for (const row of rows) expect(partsOf(row, 'TD')).toHaveLength(partsOf(head as PdfPart, 'TH').length);
    }
  }
});

test('what came on hold after the trip left is on its receipt as given, and can be taken off it again', async () => {
  app.clock.now = new Date('2026-09-08T20:00:00Z');
  const receipt = { receivedOn: '2026-09-08', receiverDuty: 'intake desk', note: '', refused: [] };
  const write = (version: number) =>
    storehouse.coordinator.post(at(`/gift-manifests/${manifest.id}/receipt`), { version, ...receipt });
  const { version, lines } = bodyOf(await write(1));
  expect(lines.map(({ isAccepted }: { isAccepted: boolean }) => isAccepted)).toEqual([true, true]);
  const undoing = { version, reason: 'the wrong slip' };
  const back = bodyOf(
    await storehouse.coordinator.post(at(`/gift-manifests/${manifest.id}/receipt-undoing`), undoing),
  );
  bodyOf(await write(back.version));
  const { pantries } = bodyOf(await lead.caller.get(at(`/holds/${holdId}/standing`)));
  expect(pantries).toContainEqual(expect.objectContaining({ pantry: 'Mill Lane', grams: 4_400 }));
});

test('what is in a kitchen already is held there: it is not eaten nor counted, and goes with the rest', async () => {
  const [lot] = (await elderStock.kitchen()).lots;
  expect(lot).toMatchObject({ grams: 500, holdId });
  for (const to of ['eaten', 'given', 'animals', 'composted'])
    expect(await refusalOf(app, () => elderStock.eat(lot.lotId, 10, to))).toEqual(refused(409, 'on-hold'));
  bodyOf(await elderStock.eat(lot.lotId, 100, 'discarded'), 201);
  const { onHold } = bodyOf(await elder.caller.get(at('/coverage')));
  expect(onHold.reduce((sum: number, { grams }: { grams: number }) => sum + grams, 0)).toBe(5_900);
  const { held } = bodyOf(await elder.caller.get(at(`/holds/${holdId}/own-part`)));
  expect(held).toContainEqual(expect.objectContaining({ kind: 'kitchen', code: '', grams: 400 }));
  const { households } = bodyOf(await lead.caller.get(at(`/holds/${holdId}/standing`)));
  expect(households.find(({ name }: { name: string }) => name === 'Elder').grams).toBe(5_900);
  const gone = { of: 'household', reason: 'The mill said so.' };
  expect(bodyOf(await elder.caller.post(at(`/holds/${holdId}/destruction`), gone), 201).grams).toBe(5_900);
  expect((await elderStock.kitchen()).lots).toEqual([]);
});

test('what was thrown away under a hold and comes back into the book is on hold again', async () => {
  const can = await elderStock.bringCan({ food: 'rice-white-long', packedOn: '2026-08-20', gramsEach: 900 });
  const of = { scope: 'containers', containerIds: [can.id] };
  const hold = bodyOf(await lead.caller.post(at('/holds'), { of, reason: 'A dent.' }), 201);
  const gone = { of: 'household', reason: 'It leaked.' };
  bodyOf(await elder.caller.post(at(`/holds/${hold.id}/destruction`), gone), 201);
  const endedOf = async () => bodyOf(await lead.caller.get(at(`/holds/${hold.id}`))).ended;
  expect(await endedOf()).toBe('nothing-left');
  const [entry] = await app.admin`select entry_id from book.entry where what = 'container-discarded'
    and subject_id = ${can.id}`;
  const reversal = { reason: 'It was another can.' };
  const tarn = await aHousehold(app, storehouse, 'Tarn', { duties: ['treasurer'] });
  bodyOf(await tarn.caller.post(at(`/entries/${entry?.entry_id}/reversal`), reversal), 201);
  expect(await endedOf()).toBeNull();
  expect(await refusalOf(app, () => elderStock.take(can))).toEqual(refused(409, 'on-hold'));
});

test('of a released hold none is printed', async () => {
  const finding = { finding: 'Sieved, and no stone in any of it.' };
  bodyOf(await lead.caller.post(at(`/holds/${holdId}/release-request`), finding));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${holdId}/release`)));
  expect(await refusalOf(app, () => dell.caller.get(notice()))).toEqual(refused(409, 'hold-ended'));
});
