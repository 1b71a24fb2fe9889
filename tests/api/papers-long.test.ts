import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { en } from '../../apps/api/src/features/paper/words/en.ts';
import { es } from '../../apps/api/src/features/paper/words/es.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { anOrderedBuy, changeRules, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import { type PdfPage, pdfOf, printed } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const HOUSEHOLDS = 60;
const LONG_NAME =
  'The household of the very long name that a family of four surnames writes on every single form';

let app: TestApp;
let storehouse: TestStorehouse;
let shared: TestSharedBuy;
let ordered: TestGrainBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  shared = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
  ordered = await anOrderedBuy(app, storehouse, { households: shared.households, name: 'Early grain' });
}, 60_000);
afterAll(() => app.close());

/** Whether two texts of a page lie over one another. */
function overlaps({ texts }: PdfPage): string[] {
  return texts.flatMap((one, at) =>
    texts.slice(at + 1).flatMap((other) => {
      const isBeside = one.right <= other.x + 1 || other.right <= one.x + 1;
      const isApart = Math.abs(one.y - other.y) > Math.min(one.points, other.points) * 0.8;
      return isBeside || isApart ? [] : [`${one.text} / ${other.text}`];
    }),
  );
}

test.for(['', '&large=true&size=letter', '&language=es&size=letter', '&language=es&large=true'])(
  'nothing on a paper lies over anything else (%s)',
  { timeout: 60_000 },
  async (choice) => {
    const paths = [
      ...['buy-sheet', 'pledge-slip', 'order', 'landing-sheet'].map(
        (paper) => `${ordered.path}/papers/${paper}`,
      ),
      ...['quote-comparison', 'landing-sheet'].map((paper) => `${shared.path}/papers/${paper}`),
      `${storehouse.path}/splits/${shared.splitIds.wheat}/paper`,
      `${storehouse.path}/claims/${shared.claims?.torn}/paper`,
      `${storehouse.path}/households/${shared.households.Ashdown.householdId}/statement/paper`,
    ];
    for (const path of paths) {
      const { pages } = await printed(storehouse.coordinator, `${path}?unit=lb${choice}`);
      expect(pages.flatMap(overlaps), path).toEqual([]);
    }
  },
);

/** So many households that pledge 5 lb each, and one bag of 50 lb too few for them. */
async function aShortBuyOfMany(): Promise<{ buy: TestBuy; splitId: string }> {
  const { coordinator } = storehouse;
  await changeRules(storehouse, { depositPercent: 0 });
  const buy = await aBuy(app, storehouse, { name: 'Many' });
  const { persons } = bodyOf(await coordinator.get(`${storehouse.path}/persons?limit=200`));
  const ada = persons.find((person: { name: string }) => person.name === 'Ada Ashdown');
  const grams = gramsOfPhysicalUnit(5, 'lb');
  for (let at = 0; at < HOUSEHOLDS; at += 1) {
    const name = at === 0 ? LONG_NAME : `House ${at}`;
    const { id } = bodyOf(
      await coordinator.post(`${storehouse.path}/households`, { name, personName: `Person ${at}` }),
      201,
    );
    const grant = { personId: ada.id, days: 3, reason: 'They have no telephone.' };
    bodyOf(await coordinator.post(`${storehouse.path}/households/${id}/helpers`, grant), 201);
    const pledge = { buyLineId: buy.lines['wheat-hard-red-winter'], wholeBags: false };
    const masses = { leastGrams: grams, wantedGrams: grams, mostGrams: grams };
    const header = { 'Sheafbook-For-Household': id };
    bodyOf(await coordinator.post(`${buy.path}/pledges`, { ...pledge, ...masses }, header), 201);
  }
  bodyOf(await coordinator.post(`${buy.path}/fixing`, {}), 201);
  bodyOf(await coordinator.post(`${buy.path}/order-consents`, { duty: 'coordinator' }), 201);
  bodyOf(await shared.treasurer.post(`${buy.path}/order-consents`, { duty: 'treasurer' }), 201);
  const facts = { supplierId: buy.supplierId, arrivedOn: '2026-09-01' };
  const delivery = bodyOf(await coordinator.post(`${buy.path}/deliveries`, facts), 201);
  const [line] = bodyOf(await coordinator.get(`${buy.path}/landing`)).lines;
  const came = line.orderedBags - 1;
  const at = `${storehouse.path}/deliveries/${delivery.id}`;
  const counts = [{ bagOfferId: line.bagOfferId, countedBags: came }];
  bodyOf(await coordinator.put(`${at}/counts`, { version: delivery.version, counts }));
  const bag = { bagOfferId: line.bagOfferId, isExemptFromWeighing: true };
  bodyOf(await coordinator.post(`${at}/bags`, { bags: Array.from({ length: came }, () => bag) }), 201);
  bodyOf(await coordinator.post(`${buy.path}/landing`));
  const split = `${buy.path}/lines/${line.buyLineId}/splits`;
  return { buy, splitId: bodyOf(await coordinator.post(split, { rule: 'proportional' }), 201).id };
}

test('a split of 60 households goes over pages with its head repeated, and still adds up', {
  timeout: 120_000,
}, async () => {
  const { splitId } = await aShortBuyOfMany();
  const path = `${storehouse.path}/splits/${splitId}`;
  const split = bodyOf(await storehouse.coordinator.get(path));
  expect(split.shares).toHaveLength(HOUSEHOLDS);
  for (const choice of ['', '&large=true']) {
    const pdf = await printed(storehouse.coordinator, `${path}/paper?language=en${choice}`);
    expect(pdf.pages.length).toBeGreaterThan(3);
    const listing = pdf.pages.filter((page) => /Seat \d+/.test(page.text));
    expect(listing.length).toBeGreaterThan(3);
    for (const page of listing) expect(page.text).toMatch(/Household (Claim|Goods)/);
    const seats = pdf.pages.flatMap((page) =>
      [...page.text.matchAll(/Seat (\d+)/g)].map(([, seat]) => Number(seat)),
    );
    expect(new Set(seats).size).toBe(HOUSEHOLDS);
    expect(seats).toEqual([...seats].toSorted((a, b) => a - b));
    expect(pdf.text).toContain(split.awardedGrams.toLocaleString('en'));
    expect(pdf.pages.flatMap(overlaps)).toEqual([]);
  }
  const awards = split.shares.map((share: { awardGrams: number }) => share.awardGrams);
  expect(awards.reduce((sum: number, grams: number) => sum + grams, 0)).toBe(split.landedGrams);
});

test('a long name wraps and never runs over the edge', async () => {
  const named = await aHousehold(app, storehouse, `${'Ánimas'.repeat(10)} ${'W'.repeat(25)}`, {
    email: 'long@example.org',
  });
  const statement = `${storehouse.path}/households/${named.householdId}/statement/paper`;
  for (const choice of ['', '?large=true', '?size=letter&language=es']) {
    const { pages } = await printed(named.caller, `${statement}${choice}`);
    for (const page of pages) {
      expect(Math.max(...page.texts.map(({ right }) => right))).toBeLessThanOrEqual(page.width - 41);
      expect(overlaps(page)).toEqual([]);
    }
  }
});

test.for([
  ['polish', 'Łukasz Żółć'],
  ['japanese', 'Ōyama'],
  ['vietnamese', 'Nguyễn Thị Hồng'],
  ['two-part', 'Nguye\u0302\u0303n'],
  ['ukrainian', 'Ольга Їжакевич'],
  ['greek', 'Γεώργιος Ἀθηναῖος'],
  ['hindi', 'राम'],
  ['many', 'Dvořák Şahin Ķirsis'],
] as const)('%s letters are printed as they are typed', async ([kind, name]) => {
  const household = await aHousehold(app, storehouse, name, { email: `${kind}@example.org` });
  const path = `${storehouse.path}/households/${household.householdId}/statement/paper`;
  const pdf = await printed(household.caller, path);
  expect(pdf.text).toContain(name.normalize('NFC'));
  expect(pdf.text).not.toContain('?');
  expect(pdf.text).not.toContain('Latin letters');
  expect(pdf.fonts.every(({ isEmbedded }) => isEmbedded)).toBe(true);
});

test.for([
  ['chinese', '王小明', 'WangXiaoMing'],
  ['arabic', 'محمد Haddad', 'mhmd Haddad'],
  ['georgian', 'გიორგი', 'giorgi'],
  ['mixed', 'Ольга 王', 'Ольга Wang'],
  ['unnamed', 'Dell \uE000', 'Dell U+E000'],
] as const)(
  'a name in %s letters is printed in Latin ones, and the paper says so',
  async ([kind, name, latin]) => {
    const household = await aHousehold(app, storehouse, name, { email: `${kind}@example.org` });
    const path = `${storehouse.path}/households/${household.householdId}/statement/paper`;
    const pdf = await printed(household.caller, path);
    expect(pdf.text.replaceAll(/\s+/g, ' ')).toContain(latin);
    expect(pdf.text).not.toContain('?');
    expect(pdf.text).toMatch(/written in\s+Latin letters/);
  },
);

test('a paper with letters of its own stays small, since it brings only those', async () => {
  const household = await aHousehold(app, storehouse, 'Đặng Ольга', { email: 'small@example.org' });
  const path = `${storehouse.path}/households/${household.householdId}/statement/paper`;
  expect(pdfOf(await household.caller.get(path)).length).toBeLessThan(60_000);
});

test('both languages say everything', () => {
  const listKeys = (words: object, at = ''): string[] =>
    Object.entries(words).flatMap(([key, value]) =>
      typeof value === 'object' ? listKeys(value, `${at}${key}.`) : [`${at}${key}`],
    );
  expect(listKeys(es)).toEqual(expect.arrayContaining(listKeys(en)));
  expect(listKeys(en)).toEqual(expect.arrayContaining(listKeys(es)));
  const silent = (words: object): string[] =>
    Object.entries(words).flatMap(([key, value]) =>
      typeof value === 'object' ? silent(value) : value === '' ? [key] : [],
    );
  expect([...silent(en), ...silent(es)]).toEqual([]);
});
