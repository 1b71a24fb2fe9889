import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a member finds a food and reads what is in it and who says so', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/buys`);
  await settle(page);
  await page.getByRole('link', { name: 'The foods that the storehouse knows' }).click();
  await page.getByLabel('Find a food by its name').fill('pasta');
  await page.getByText('1 food, by code.').waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.locator('.list a').click();
  await page.getByRole('heading', { name: 'Dry pasta: contains wheat; contains gluten.' }).waitFor();
  await page.getByText(/Published figures are kept as published/).waitFor();
  expect(await page.getByRole('button', { name: 'Take it off the lists' }).count()).toBe(0);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('a food of the group’s own is added once its allergens are answered, changed, and taken off the lists', async () => {
  const page = await site.visit('coordinator');
  await page.goto(`${site.root}/foods`);
  await settle(page);
  await page.getByRole('link', { name: 'Add a food of your own' }).click();
  await page.getByLabel('Name in English').fill('Amaranth');
  await page.getByLabel('Name in Spanish').fill('Amaranto');
  await page.getByLabel('Protein').fill('13,56');
  await page.reload(); // what was typed is kept on this phone
  expect(await page.getByLabel('Name in English').inputValue()).toBe('Amaranth');
  expect(await page.getByLabel('Protein').inputValue()).toBe('13,56');
  await page.getByLabel('Energy in 100 g').fill('much');
  await page.getByRole('button', { name: 'Add this food' }).click();
  await page.getByText('Tick what is in it, or say that none of the nine is.').waitFor();
  await page.getByText('Say whether it contains gluten.').waitFor();
  await page.getByText('Write a number, such as 10 or 10.3, or nothing.').waitFor();
  await page.getByLabel('Energy in 100 g').fill('371');
  await page.getByLabel('None of the nine').check();
  await page.getByLabel('Gluten', { exact: true }).selectOption('no');
  await page.getByLabel('Where the figures come from').fill('The label of the sack');
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Add this food' }).click();
  await page.getByRole('heading', { name: 'Amaranth: none of the nine allergens; no gluten.' }).waitFor();
  expect(await page.getByRole('row', { name: /Protein/ }).textContent()).toBe('Protein13.56 g');
  await page.getByText('Change it', { exact: true }).click();
  await page.getByLabel('Sesame').check();
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('heading', { name: 'Amaranth: contains sesame; no gluten.' }).waitFor();
  await page.getByRole('button', { name: 'Take it off the lists' }).click();
  await page.getByText('off the lists', { exact: true }).waitFor();
  await page.getByRole('link', { name: 'Foods' }).first().click();
  await page.getByLabel('Find a food by its name').fill('amaranth');
  await page.getByText('No food here has that name.').waitFor();
  await page.getByLabel('Those taken off the lists too').check();
  await page.getByText('1 food, by code.').waitFor();
}, 180_000);

test('container kinds show their true capacity; tare and price are set, and an own kind is added', async () => {
  const page = await site.visit('packing-lead');
  await page.goto(`${site.root}/foods`);
  await settle(page);
  await page.getByRole('link', { name: 'Container kinds' }).click();
  await page.getByText('Add a kind of your own').click();
  await page.getByRole('button', { name: 'Add this kind' }).click();
  await page.getByText('Write what it holds in litres, such as 3.1.').waitFor();
  await page.getByLabel('Name in English').fill('Pint jar');
  await page.getByLabel('Code, for labels').fill('jar-pint');
  await page.getByLabel('Holds, in litres').fill('0.473');
  await page.getByLabel('Says who').fill('Filled level with water and weighed');
  expect(await listViolations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Add this kind' }).click();
  const row = page.getByRole('row', { name: /Pint jar/ });
  await row.waitFor();
  expect(await row.textContent()).toContain('0.473');
  await page.getByText('Set tare and price').click();
  await page.getByLabel('Which kind?').selectOption({ label: 'Pint jar' });
  const form = page.getByRole('form', { name: 'Tare and price of Pint jar' });
  await form.getByLabel('Weighs empty, in grams').fill('250');
  await form.getByLabel('Costs, USD').fill('1.25');
  await form.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('row', { name: /Pint jar.*250.*1\.25/ }).waitFor();
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);
