import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { partsOf, pdfOf, readPdf, readStructure } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
});
afterAll(() => app.close());

const statement = async (query: string) => {
  const { householdId, caller } = buy.households.Ashdown;
  return pdfOf(await caller.get(`${storehouse.path}/households/${householdId}/statement/paper?${query}`));
};
const texts = (parts: readonly { text: string }[]) => parts.map(({ text }) => text);

test.for([
  ['en', 'Statement'],
  ['es', 'Extracto'],
] as const)('a paper in %s says its language, its title and what is a heading', async ([language, title]) => {
  const bytes = await statement(`language=${language}`);
  const [first] = await readStructure(bytes);
  const pdf = await readPdf(bytes);
  expect([pdf.language, pdf.title.startsWith(`${title} `)]).toEqual([language, true]);
  if (!first) throw new Error('no page');
  expect(texts(partsOf(first, 'H1'))).toEqual([title]);
  expect(partsOf(first, 'P').length).toBeGreaterThan(2);
});

test('a table has its rows, and each cell of its head is a head', async () => {
  const [first] = await readStructure(await statement('language=en'));
  const [table] = first ? partsOf(first, 'Table') : [];
  if (!table) throw new Error('no table');
  const [head, ...rows] = partsOf(table, 'TR');
  const names = texts(head ? partsOf(head, 'TH') : []);
  expect(names.length).toBeGreaterThan(2);
  expect(names.every((name) => name !== '')).toBe(true);
  expect(rows.length).toBeGreaterThan(0);
  for (const row of rows) expect(partsOf(row, 'TD')).toHaveLength(names.length);
  expect(partsOf(table, 'TH')).toHaveLength(names.length);
});

test('what stands on every page is told on none but the first', async () => {
  const path = `${buy.path}/papers/landing-sheet?language=en&large=true`;
  const bytes = pdfOf(await storehouse.coordinator.get(path));
  const pages = await readStructure(bytes);
  const { pages: seen } = await readPdf(bytes);
  expect(pages.length).toBeGreaterThan(1);
  for (const [at, page] of pages.entries()) {
    expect(seen[at]?.text).toContain(`Page ${at + 1} of ${pages.length}`);
    expect(page.text).not.toContain(`Page ${at + 1} of`);
    expect(seen[at]?.text).toContain('Alder Row Storehouse');
    expect(page.text.includes('Alder Row Storehouse')).toBe(at === 0);
  }
});

/** Room of the footer, which is not told. */
const FOOT_POINTS = 85;
const close = (text: string): string => text.replaceAll(/\s/g, '');

test('every paper of a buy tells all of its words but those of the frame', async () => {
  for (const kind of ['buy-sheet', 'pledge-slip', 'quote-comparison', 'order', 'landing-sheet']) {
    const bytes = pdfOf(await storehouse.coordinator.get(`${buy.path}/papers/${kind}?language=en&size=a4`));
    const [first] = await readStructure(bytes);
    const told = close(first?.text ?? '');
    const [seen] = (await readPdf(bytes)).pages;
    const foot = (seen?.height ?? 0) - FOOT_POINTS;
    const bodies = seen?.texts.filter(({ y }) => y < foot).map(({ text }) => text) ?? [];
    expect(bodies.length, kind).toBeGreaterThan(10);
    for (const text of bodies) expect(told, kind).toContain(close(text));
  }
});
