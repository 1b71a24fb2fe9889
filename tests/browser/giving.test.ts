import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a coordinator writes a pantry’s card in plain questions and sees what it takes', async () => {
  const page = await site.visit('coordinator', { viewport: { width: 320, height: 800 } });
  await page.goto(`${site.root}/giving`);
  await settle(page);
  await page
    .getByRole('heading', { name: 'Nothing of common stock has to go to a pantry now.', level: 1 })
    .waitFor();
  await page.getByText('4 containers, 21.4 lb, can’t go to a pantry any more').waitFor();
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
  await page.getByRole('link', { name: 'Pantries and their cards' }).click();
  await page.getByRole('link', { name: 'Add a pantry' }).click();
  await page.getByLabel('Its name').fill('Harbour pantry');
  await page.getByLabel('Where its door is').fill('7 Quay Street');
  await page.getByLabel('Whom to ask for there, by duty').fill('intake desk');
  await page.getByLabel('Way there, one way (mi)').fill('3.5');
  await page.getByLabel('Who said so there, by duty').fill('intake desk');
  await page.getByRole('button', { name: 'Add a pantry' }).click();
  await page.getByText('Say on which days its door is open.').first().waitFor();
  await page.getByLabel('Tuesday, opens').fill('09:00');
  await page.getByLabel('Tuesday, closes').fill('12:00');
  await page.getByRole('button', { name: 'Add a pantry' }).click();
  await page.getByText('It takes nothing as this stands').first().waitFor();
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
  await page.getByLabel('Does it take what a maker sealed?').selectOption('yes');
  await page.getByRole('button', { name: 'Add a pantry' }).click();
  await page.getByRole('heading', { name: 'Harbour pantry' }).waitFor();
  await page.getByText('Takes what a maker sealed.').waitFor();
  await page.getByText('Tuesday 09:00–12:00').waitFor();
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);

  await page.goto(`${site.root}/giving/match`);
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText('No trip saves any of it.').waitFor();
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
}, 180_000);
