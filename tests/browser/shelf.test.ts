import { expect, test } from 'vitest';
import { en } from '../../apps/web/src/text/en/books.ts';
import { es } from '../../apps/web/src/text/es/books.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a share is packed at home, refused past the brim at its field, undone, and packed again by keyboard', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'Pack it into containers' }).click();
  const each = page.getByLabel('In each');
  await each.fill('lots');
  await page.getByRole('button', { name: 'Write it in the book' }).click();
  await page.getByText('Write a weight, such as 5 lb').waitFor();
  await page.reload(); // what was typed is kept
  expect(await each.inputValue()).toBe('lots');
  await each.fill('30 lb');
  await page.getByRole('button', { name: 'Write it in the book' }).click();
  await page.getByText(/holds \d+ g of .* at the most/).waitFor();
  await each.fill('2 lb');
  await page.getByText(/^Fills 1 × .* with 2\.0 lb each: 2\.0 lb in all/).waitFor();
  await page.keyboard.press('Enter');
  await page.getByText('1 container is in the book').waitFor();
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByText('It is back in the bag.').waitFor();
  await page.getByRole('button', { name: 'Pack more' }).click();
  await each.fill('2 lb');
  await page.keyboard.press('Enter');
  const code = (await page.locator('.codes .code').first().textContent()) ?? '';
  await page.getByRole('link', { name: 'To the shelf' }).click();
  const find = page.getByLabel('Find by food, kind or code');
  await find.fill(code.toLowerCase()); // as somebody reads it from a label
  expect(await page.locator('.list li').count()).toBe(1);
  const wrong = `${code.startsWith('A') ? 'B' : 'A'}${code.slice(1)}`;
  await find.fill(/\d/.test(wrong) ? wrong : 'AAAAAA9');
  await page.getByText('This is no code of ours').waitFor();
}, 180_000);

test('what is eaten leaves its container, never more than is in it', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.locator('.run').first().click();
  const howMuch = page.getByLabel('How much');
  await howMuch.waitFor();
  await howMuch.fill('400 lb');
  await page.getByText('There are only').waitFor();
  await howMuch.fill('1 lb');
  const says = (await page.getByText(/^Takes 1\.0 lb out for good \(eaten\)/).textContent()) ?? '';
  const left = /([\d.]+ lb) stay in it/.exec(says)?.[1] ?? '';
  await page.keyboard.press('Enter');
  await page.getByText(new RegExp(`^${left} \\(`)).waitFor();
}, 180_000);

test('a container on the plank of its place opens its sheet, and goes to the kitchen and back with one tap each', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  const planks = page.locator('section', { has: page.getByRole('heading', { name: 'Where it stands' }) });
  expect(await planks.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(0);
  await planks.locator('.run').first().click();
  await page.getByText(/^All .* of it go to your kitchen/).waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Take it to the kitchen' }).click();
  await page.getByText('It is empty.').waitFor();
  await page.getByRole('button', { name: 'Put it back' }).click();
  await page.getByText(/\(.* g\) are in it\.$/).waitFor();
}, 60_000);

test('what a household has at home is recorded, and the pages are free of what axe finds', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf/record`);
  await settle(page);
  await page.getByRole('button', { name: 'Write it in the book' }).click();
  await page.getByText('Choose a food first.').waitFor();
  await page.getByText('Say where it came from').waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.getByRole('searchbox').fill('pinto');
  await page.keyboard.press('Enter');
  await page.getByText('Food: ').waitFor();
  await page.getByLabel('In each').fill('1.5 kg');
  await page.getByLabel('Where it came from').fill('a shop in town');
  await page.getByRole('button', { name: 'Write it in the book' }).click();
  await page.getByText('1 container is in the book').waitFor();
  await page.getByRole('link', { name: 'To the shelf' }).click();
  await settle(page);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('every kind of entry that the story wrote has its name in both languages', async () => {
  const rows = await site.database.admin<
    { what: string }[]
  >`select distinct what from book.entry order by what`;
  expect(rows.length).toBeGreaterThan(15);
  expect(rows.map(({ what }) => what).filter((what) => !(en.whats[what] && es.whats[what]))).toEqual([]);
});
