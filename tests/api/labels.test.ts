import jsqr from 'jsqr';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { pdfOf, printed, readPdf } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let codes: string[];
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
  shelves = await shelvesOf(app, storehouse);
  const wheat = await wheatOf(storehouse, buy, buy.households.Ashdown);
  const wish = { kind: 'can-no-2-5', count: 24, gramsEach: 714 };
  const treated = { treatment: 'oxygen-absorber', moistureTenths: 95 };
  const filled = bodyOf(await shelves.pour(ashdown(), wheat, { ...wish, ...treated }), 201);
  codes = filled.containers.map(({ code }: { code: string }) => code);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const ashdown = () => buy.households.Ashdown.caller;

describe('what a label says', () => {
  test('is told as data: code, food, lot, owner, day, treatment, grams, allergens, and no finer a date than a year', async () => {
    const { labels } = bodyOf(await ashdown().get(at(`/labels?codes=${codes[0]}`)));
    expect(labels).toHaveLength(1);
    expect(labels[0]).toMatchObject({
      code: codes[0],
      food: { nameEn: 'Hard red winter wheat' },
      owner: { name: 'Ashdown' },
      packedOn: '2026-09-01',
      treatment: { code: 'oxygen-absorber', names: { es: 'Absorbedor de oxígeno' } },
      grams: 714,
      allergens: ['wheat'],
      gluten: 'yes',
      // Thirty years in a can at 70 °F; nobody says where it stands, so it is taken as 25 °C (77 °F): 30 × 2^(−7/10) = 18.5.
      eatFirst: { year: 2045, isEstimate: true },
      offerYear: 2044, // 90 days before it
      inspectByOn: '2027-09-01', // a can within a year
    });
    expect(labels[0].lot).toBe('Autumn grain');
  });

  test('is of one’s own containers alone, by codes that fit their check', async () => {
    const foreign = () => buy.households.Birchall.caller.get(at(`/labels?codes=${codes[0]}`));
    expect(await refusalOf(app, foreign)).toEqual(refused(404, 'thing-not-found'));
    const [first = ''] = codes;
    const misread = () =>
      ashdown().get(at(`/labels?codes=${first.slice(0, -1)}${first.endsWith('A') ? 'B' : 'A'}`));
    expect((await misread()).body).toMatchObject({ code: 'invalid-input' });
    expect((await ashdown().get(at(`/labels?codes=${first},${first}`))).body.code).toBe('invalid-input');
  });

  test('an empty container wants no label unless it is named', async () => {
    const { labels } = bodyOf(await buy.households.Dell.caller.get(at('/labels')));
    expect(labels).toEqual([]);
    const call = () => buy.households.Dell.caller.get(at('/labels/paper?sheet=a4-21'));
    expect(await refusalOf(app, call)).toEqual(refused(409, 'nothing-to-label'));
  });
});

const SHEETS = [
  { sheet: 'letter-30', size: [612, 792], each: 30 },
  { sheet: 'letter-10', size: [612, 792], each: 10 },
  { sheet: 'a4-21', size: [595.28, 841.89], each: 21 },
  { sheet: 'a4-8', size: [595.28, 841.89], each: 8 },
] as const;

describe.for(SHEETS)('$sheet', ({ sheet, size, each }) => {
  test('prints every label with the figures of the API, and each mark reads as its code', async () => {
    const { labels } = bodyOf(await ashdown().get(at(`/labels?codes=${codes.join(',')}`)));
    const pdf = await printed(ashdown(), at(`/labels/paper?sheet=${sheet}&codes=${codes.join(',')}&start=3`));
    expect(pdf.pages.length).toBe(Math.ceil((codes.length + 2) / each));
    const read: string[] = [];
    for (const page of pdf.pages) {
      expect([page.width, page.height].map(Math.round)).toEqual(size.map(Math.round));
      for (const { data, width, height } of page.marks)
        read.push(jsqr(data, width, height)?.data ?? 'unread');
      expect(Math.max(...page.texts.map(({ right }) => right))).toBeLessThan(page.width - 8);
    }
    expect(read).toEqual(codes);
    const words = pdf.text.replaceAll(/\s+/g, ' ');
    for (const { spelled } of labels) expect(words).toContain(spelled);
    // 714 g are 1 lb 9.2 oz.
    expect(words.split('1 lb 9.2 oz · 714 g').length - 1).toBe(codes.length);
    expect(words.split('Contains wheat, gluten.').length - 1).toBe(codes.length);
    expect(words.split('Hard red winter wheat').length - 1).toBe(codes.length);
    expect(words).toContain('1 Sept 2026');
    expect(
      words.split('Eat by about 2045 (estimate) · offer in 2044 · inspect by 1 Sept 2027').length - 1,
    ).toBe(codes.length);
    expect(pdf.fonts.every((font) => font.isEmbedded)).toBe(true);
  });

  test('begins at the sticker that is still there', async () => {
    const first = await printed(ashdown(), at(`/labels/paper?sheet=${sheet}&codes=${codes[0]}`));
    const later = await printed(
      ashdown(),
      at(`/labels/paper?sheet=${sheet}&codes=${codes[0]}&start=${each}`),
    );
    const [a, b] = [first, later].map(({ pages }) => pages[0]?.texts[0]);
    expect(b?.y).toBeGreaterThan(a?.y ?? Number.POSITIVE_INFINITY);
    expect(b?.x).toBeGreaterThan(a?.x ?? Number.POSITIVE_INFINITY);
    const beyond = () => ashdown().get(at(`/labels/paper?sheet=${sheet}&start=${each + 1}`));
    expect(await refusalOf(app, beyond)).toEqual(refused(400, 'invalid-input', 'start'));
  });

  test('keeps every word inside its sticker, in Spanish too', async () => {
    const pdf = await printed(ashdown(), at(`/labels/paper?sheet=${sheet}&codes=${codes[0]}&language=es`));
    const [page] = pdf.pages;
    const heights = { 'letter-30': 25.4, 'letter-10': 50.8, 'a4-21': 38.1, 'a4-8': 67.7 };
    const ys = page?.texts.map(({ y }) => y) ?? [];
    expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan((heights[sheet] * 72) / 25.4);
    expect(pdf.text).toContain('Contiene trigo, gluten.');
    expect(pdf.language).toBe('es');
    // Where a sticker is tall enough 15 mm of it stay empty for the pen.
    if (heights[sheet] > 50)
      expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(((heights[sheet] - 15) * 72) / 25.4);
  });
});

test('the same labels are the same to the byte while book and clock stand still', async () => {
  const path = at(`/labels/paper?sheet=a4-21&codes=${codes.join(',')}`);
  const [first, second] = [pdfOf(await ashdown().get(path)), pdfOf(await ashdown().get(path))];
  expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  expect((await readPdf(first)).title).toBe('Container labels');
});
