import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { offersOf } from '../support/offer.ts';
import { type PdfPart, partsOf, pdfOf, printed, readStructure } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let eames: TestHousehold;
let moss: TestHousehold;
let offerId: string;
let manifest: { id: string; number: number; onDay: string; lines: Line[] };
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  eames = await aHousehold(app, storehouse, 'Eames');
  moss = await aHousehold(app, storehouse, 'Moss');
  const text =
    'Owner,Food,Container,Count,Mass each,Stored,Origin\nEames,rice-white-long,can-no-10,3,2400 g,2020-01,\ncommon,wheat-hard-white,can-no-10,2,2200 g,2020-01,\n';
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'stock.csv', text }]);
  bodyOf(posted, 201);
});
afterAll(() => app.close());

type Line = Readonly<Record<string, string>> & { readonly grams: number };
const offers = () => offersOf(app, storehouse);
const at = (rest: string) => `${storehouse.path}${rest}`;
const post = async (rest: string, body: unknown, status = 201) =>
  bodyOf(await storehouse.coordinator.post(at(rest), body), status);
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);
const codeOf = (pages: readonly { qr: string }[]) => pages[0]?.qr.split('/').at(-1) ?? '';
const spelled = (code: string) => `${code.slice(0, 3)} ${code.slice(3)}`;
const pounds = (grams: number) => `${(grams / 453.59237).toFixed(1)} lb`;
const kilograms = (grams: number) => `${(grams / 1000).toFixed(grams < 10_000 ? 2 : 1)} kg`;
/** What is alike shares a row, each with its code: the containers of one food, here. */
const alikeOf = (food: string | undefined) => manifest.lines.filter(({ foodEn }) => foodEn === food);
/** What stands in one row of a paper's table, found by a text that no other row has. */
const rowWith = (pages: readonly PdfPart[], text: string): string[] => {
  const rows = pages.flatMap((page) => partsOf(page, 'TR')).filter((row) => row.text.includes(text));
  expect(rows).toHaveLength(1);
  return rows.flatMap((row) => partsOf(row, 'TD')).map((cell) => cell.text.trim());
};

test('the notice of an offer says what, until when and at what price, and not whose it is', async () => {
  const { containers } = bodyOf(await eames.caller.get(at('/containers')));
  const ids = containers.map(({ id }: { id: string }) => id);
  const price = { kind: 'named', minorUnitsEach: 450 } as const;
  offerId = bodyOf(await offers().offer(eames.caller, ids, { price, goesToPantry: true }), 201).id;
  const { text, pages } = await printed(eames.caller, at(`/offers/${offerId}/papers/notice?language=en`));
  for (const wanted of [
    ...['Offered until 22 Sept 2026 10:00 CDT', 'from a member household', 'may go to a pantry'],
    ...containers.map(({ code }: { code: string }) => spelled(code)),
    ...[money(450), money(1350), pounds(7_200), kilograms(7_200), 'None of the nine allergens'],
  ])
    expect(text).toContain(wanted);
  expect(text).toContain('Everybody’s from');
  expect(text).not.toContain('Eames');
  // Whoever is not asked yet is told of no offer, and the code on a lost notice tells it none.
  const asked = await moss.caller.get(at(`/offers/${offerId}`));
  const paper = await moss.caller.get(at(`/papers/${codeOf(pages)}`));
  expect(paper.status).toBe(asked.status);
  expect(bodyOf(await eames.caller.get(at(`/papers/${codeOf(pages)}`)))).toMatchObject({
    ...{ kind: 'offer-notice', subjectId: offerId, householdId: null },
  });
});

test('the notice of an offer whose turns take all its time is never everybody’s, and says no hour of that', async () => {
  const rye =
    'Owner,Food,Container,Count,Mass each,Stored,Origin\nEames,barley-hulled,can-no-10,1,2000 g,2024-01,\n';
  const file = { name: 'rye.csv', text: rye };
  bodyOf((await bringOver(storehouse.coordinator, storehouse.path, [file])).posted, 201);
  const { containers } = bodyOf(await eames.caller.get(at('/containers')));
  const own = containers.find(({ food }: { food: { code: string } }) => food.code === 'barley-hulled');
  const wish = { closesAt: '2026-09-02T15:00:00Z', windowHours: 96 };
  const offer = bodyOf(await offers().offer(eames.caller, [own.id], wish), 201);
  expect(offer.openAt).toBe(offer.closesAt);
  const { text } = await printed(eames.caller, at(`/offers/${offer.id}/papers/notice?language=en`));
  expect(text).toContain('Offered until 2 Sept 2026');
  expect(text).not.toContain('Everybody’s from');
  bodyOf(await offers().takeBack(eames.caller, offer.id));
});

test('a transfer slip has both names, what went over and the price of the book; a third learns nothing by it', async () => {
  offers().after(15 * 24); // it is everybody’s by now
  const { containers } = bodyOf(await offers().look(moss.caller, offerId));
  const [first, second] = containers;
  bodyOf(await offers().claim(moss.caller, offerId, [first.id], 450), 201);
  bodyOf(await offers().claim(moss.caller, offerId, [second.id], 450), 201);
  const seen = bodyOf(await offers().look(moss.caller, offerId)).containers;
  const entryOf = (id: string) => seen.find((part: { id: string }) => part.id === id).takenInEntry;
  const slip = at(`/offers/${offerId}/papers/transfer-slip`);
  expect(await refusalOf(app, () => moss.caller.get(slip))).toEqual(refused(400, 'invalid-input', 'entry'));
  const path = `${slip}?entry=${entryOf(first.id)}&language=en`;
  for (const { caller } of [moss, eames]) {
    const { text } = await printed(caller, path);
    for (const wanted of ['Eames', 'Moss', spelled(first.code), money(450), 'Pay nothing at the door'])
      expect(text).toContain(wanted);
    expect(text).not.toContain(spelled(second.code));
  }
  const third = await aHousehold(app, storehouse, 'Ruiz');
  expect(await third.caller.get(path)).toMatchObject({ status: 404 });
  expect(
    (await printed(moss.caller, `${path.replace('language=en', 'language=es')}&large=true`)).text,
  ).toContain('Hoja de entrega');
});

test('a manifest says of each container what follows a gift, names no household, and leaves its receipt to the pen', async () => {
  offers().after(22 * 24);
  const late = { mostDaysPastBest: 3650, leastLifeDays: 0 };
  const { id: pantryId } = await post('/pantries', aPantryWish('Mill Lane', late));
  const trips = [{ pantryId, onDay: '2026-09-29', capacityGrams: 50_000 }];
  const { id: matchingId } = await post('/gift-matchings', { trips });
  manifest = await post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' });
  expect(manifest.lines).toHaveLength(3);
  const paper = at(`/gift-manifests/${manifest.id}/paper?language=en`);
  const { text, pages } = await printed(moss.caller, paper);
  for (const wanted of [
    ...[`Manifest ${manifest.number}`, 'Side door, 4 Mill Lane', '29 Sept 2026', 'Ruth', 'version 1'],
    ...[
      '42 U.S.C. 1791',
      'P.L. 117-362',
      'qualified direct donor',
      'Gross negligence',
      'Packed at home: take care',
    ],
    'telephone ____________', // the coordinator shows none, and a name alone can't be called
    ...['Nothing on this sheet was on hold', 'Received on', '3 containers', pounds(6_800), kilograms(6_800)],
  ])
    expect(text).toContain(wanted);
  expect(text).not.toMatch(/Eames|Moss/);
  const told = await readStructure(pdfOf(await moss.caller.get(paper)));
  for (const { code = '', grams, ...line } of manifest.lines) {
    const cells = rowWith(told, spelled(code));
    const allergens = line.foodEn?.includes('wheat') ? 'Contains wheat.' : 'None of the nine';
    expect(cells[1]).toContain(line.foodEn);
    expect(cells[1]).toContain(allergens);
    const mates = alikeOf(line.foodEn);
    const both = `${pounds(mates.length * grams)} ${kilograms(mates.length * grams)}`;
    const each = `${mates.length} of ${pounds(grams)} · ${kilograms(grams)}`;
    expect(cells[2]).toBe(mates.length === 1 ? both : `${each} ${both}`);
    expect(cells[3]).toBe('1 Jan 2020 at home');
    expect(cells[5]).toBe('unknown'); // nobody ever said where it stood
    expect(cells[6]).toBe(mates.map(() => '[ ]').join(' '));
  }
  expect(manifest.lines.map(({ foodEn }) => alikeOf(foodEn).length).toSorted()).toEqual([1, 2, 2]);
  const found = bodyOf(await moss.caller.get(at(`/papers/${codeOf(pages)}`)));
  expect(found).toMatchObject({ kind: 'gift-manifest', subjectId: manifest.id });
});

test('with its receipt it says of each what was taken and why what came back did, and the sums are those of the book', async () => {
  app.clock.now = new Date('2026-09-29T20:00:00Z');
  const [back, ...taken] = manifest.lines;
  const receipt = {
    version: 1,
    receivedOn: '2026-09-29',
    receiverDuty: 'intake desk',
    note: 'Ring the bell.',
  };
  const refusedOne = [{ containerId: back?.containerId, reason: 'a dent on the seam' }];
  const received = await post(
    `/gift-manifests/${manifest.id}/receipt`,
    { ...receipt, refused: refusedOne },
    200,
  );
  const path = at(`/gift-manifests/${manifest.id}/paper?language=en`);
  const { text } = await printed(storehouse.coordinator, path);
  for (const wanted of [
    'intake desk',
    'Ring the bell.',
    pounds(received.acceptedGrams),
    pounds(received.refusedGrams),
  ])
    expect(text).toContain(wanted);
  const told = await readStructure(pdfOf(await storehouse.coordinator.get(path)));
  const row = rowWith(told, spelled(back?.code ?? ''));
  const isAlone = alikeOf(back?.foodEn).length === 1;
  const why = 'a dent on the seam';
  expect(row.at(-1)).toBe(isAlone ? why : `${spelled(back?.code ?? '')}: ${why}`);
  expect(row.at(-2)?.split(' ')[0]).toBe('none');
  for (const { code = '', grams } of taken)
    expect(rowWith(told, spelled(code)).at(-2)).toContain(pounds(grams));
});

test('a giver’s year on paper is its own alone, with the estimates beside their source', async () => {
  const year = async ({ caller }: TestHousehold) => bodyOf(await caller.get(at('/gift-year?year=2026')));
  const { own } = await year(eames);
  expect(own.grams).toBeGreaterThan(0);
  const paper = (query: string) => at(`/gift-year/paper?year=2026&${query}`);
  const { text, pages } = await printed(eames.caller, paper('language=en'));
  for (const wanted of [
    ...[
      pounds(own.grams),
      kilograms(own.grams),
      `about ${own.meals} meals`,
      'Mill Lane',
      money(own.valueMinorUnits),
    ],
    ...['USDA What We Eat in America', 'FY2024', 'no figure for taxes'],
  ])
    expect(text).toContain(wanted);
  expect((await year(moss)).own.grams).toBe(0);
  expect((await printed(moss.caller, paper('language=es'))).text).toContain('Ninguna despensa recibió nada');
  expect(await moss.caller.get(at(`/papers/${codeOf(pages)}`))).toMatchObject({ status: 403 });
});

test('on A4 and Letter, plain and large, in both languages, nothing runs over the edge', async () => {
  const sizes = { a4: [595.28, 841.89], letter: [612, 792] } as const;
  const paths = [`/gift-manifests/${manifest.id}/paper`, '/gift-year/paper'];
  for (const [size, sides] of Object.entries(sizes))
    for (const query of [`size=${size}&language=en`, `size=${size}&language=es&large=true`])
      for (const path of paths) {
        const { pages } = await printed(eames.caller, at(`${path}?${query}`));
        for (const { width, height, texts } of pages) {
          expect([width, height].toSorted((a, b) => a - b)).toEqual(sides);
          expect(Math.max(...texts.map(({ right }) => right))).toBeLessThanOrEqual(width - 41);
          const least = query.includes('large') ? 16 : 11;
          expect(Math.min(...texts.map(({ points }) => points))).toBeGreaterThanOrEqual(least);
        }
      }
});
