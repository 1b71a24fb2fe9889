import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();
const NARROW = { viewport: { width: 320, height: 800 } };

async function looksWell(page: Page): Promise<void> {
  await settle(page);
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
}

test('the coordinator says until when a duty is held, and finds it among what needs her and in the hand-over', async () => {
  const page = await site.visit('coordinator', NARROW);
  await page.goto(`${site.root}/people`);
  await settle(page);
  await page.getByLabel('Find by household').fill('treasurer');
  await page.locator('.list a').click();
  await page.getByText('When these duties are meant to end').click();
  const today = await page.evaluate(() => new Date().toISOString().slice(0, 10));
  const endsOn = new Date(Date.parse(today) + 30 * 86_400_000).toISOString().slice(0, 10);
  await page.getByLabel('Meant to end: treasurer').fill('2020-01-01');
  await page.getByRole('button', { name: 'Save the day: treasurer' }).click();
  await page.getByText('This day is past; a duty that ended is taken back.').waitFor();
  await page.getByLabel('Meant to end: treasurer').fill(endsOn);
  await page.getByRole('button', { name: 'Save the day: treasurer' }).click();
  await page
    .getByRole('button', { name: 'Save the day: treasurer' })
    .and(page.locator(':disabled'))
    .waitFor();
  await looksWell(page);
  await page.goto(`${site.root}/buys`);
  await page.getByText(/^The duty of .* as treasurer ends soon: find who takes it over\./).waitFor();
  await looksWell(page);
  await page.goto(`${site.root}/people/duties`);
  await page.getByText(/today; meant to end/).waitFor();
  await looksWell(page);
  await page.goto(`${site.root}/handover`);
  await page.getByText(/; meant to end/).waitFor();
  await page.getByRole('heading', { name: 'Who may act for which household' }).waitFor();
  await looksWell(page);
}, 180_000);

test('common stock is offered on a page of its own, which says what became of it', async () => {
  const page = await site.visit('coordinator', NARROW);
  await page.goto(`${site.root}/giving`);
  await page.getByRole('link', { name: 'Offers of common stock' }).click();
  await page.getByRole('heading', { level: 1 }).waitFor();
  await looksWell(page);
  const stands = await page.getByRole('heading', { level: 1 }).textContent();
  await page.getByText('Offer common stock to members').click();
  await looksWell(page);
  await page.getByRole('button', { name: 'Offer it', exact: true }).click();
  await page.getByText(/^One still offered until/).waitFor();
  await page.goto(`${site.root}/giving/offers`);
  await page.getByRole('heading', { name: 'Open', exact: true }).waitFor();
  expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toBe(stands);
  await looksWell(page);
  const member = await site.visit('member', NARROW);
  await member.goto(`${site.root}/giving/offers`);
  await member.getByRole('heading', { name: 'Common stock is offered by the coordinator.' }).waitFor();
}, 180_000);

test('each paper of the year opens from its page, and a noted shelf price says what was saved', async () => {
  const page = await site.visit('coordinator', NARROW);
  await page.goto(`${site.root}/books/year`);
  await settle(page);
  const papers = await page.locator('a[href*="year-review/paper"]').all();
  expect(papers.length).toBeGreaterThan(0);
  for (const paper of papers) {
    const answer = await page.request.get((await paper.getAttribute('href')) ?? '');
    expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf']);
  }
  await page.getByRole('link', { name: 'What was saved against shelf price' }).click();
  await page.getByRole('heading', { name: /^This year the group saved about 1,013\.44/ }).waitFor();
  await looksWell(page);
  const takesBack = page.getByRole('button', { name: /^Take back the price of / });
  await takesBack.nth(1).click();
  await takesBack.nth(1).waitFor({ state: 'detached' });
  await takesBack.click();
  await page.getByRole('heading', { name: /^Nobody knows what was saved/ }).waitFor();
  await page.getByText('Note a shelf price').click();
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.getByText('Type an amount, such as 4.50.').waitFor();
  const id = site.root.split('/').at(-1);
  const { foods } = await (await page.request.get(`/api/storehouses/${id}/savings`)).json();
  await page.getByLabel('Food', { exact: true }).selectOption({ label: foods[0].food.nameEn });
  await page.getByLabel(/^Price, /).fill('3.20');
  await page.getByLabel('For how much').fill('1 lb');
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.getByText('The price is noted.').waitFor();
  await page.getByRole('heading', { name: /^This year (the group saved about|a shop would)/ }).waitFor();
  // Some 945 lb at 3.20 a pound, the ounces above them too: a pound rounded to the gram would say 3,021.34.
  await page.getByRole('cell', { name: /^3,024\.0\d$/ }).waitFor();
  await looksWell(page);
  await takesBack.click();
  await page.getByRole('heading', { name: /^Nobody knows what was saved/ }).waitFor();
}, 180_000);
