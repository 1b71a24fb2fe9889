import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readPdf } from '../support/pdf.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('a can is looked at on a phone question by question, with the caution at its finding and the reason at its end', async () => {
  const page = await site.visit('member');
  await page.setViewportSize({ width: 320, height: 844 });
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.locator('.run').first().click();
  await page.getByRole('link', { name: 'Look at it and write down what is found' }).click();
  await page.getByRole('button', { name: 'From outside, still shut' }).click();
  await page.getByRole('button', { name: 'Nothing wrong' }).waitFor();
  await page.getByRole('checkbox', { name: 'Bulged, hisses or spurts' }).check();
  await page.getByText(/^Do not open it, smell it or taste it. Put it into a bag/).waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('checkbox', { name: 'Bulged, hisses or spurts' }).uncheck();
  await page.getByRole('checkbox', { name: 'Webbing, clumps or droppings of insects' }).check();
  await page.getByRole('button', { name: 'Go on with 1 finding' }).click();
  await page.getByText('For animals only').first().waitFor();
  await page.getByText(/Insects lived in it for long/).waitFor();
  const outcomes = await page.getByLabel('What becomes of it').locator('option').allTextContents();
  expect(outcomes).toEqual(['For animals only', 'Compost', 'Throw it away']); // never laxer than what was found
  await page.getByLabel('What becomes of it').selectOption('compost');
  await page.getByRole('checkbox', { name: /^Book all .* out of it now$/ }).check();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText('Written down.').waitFor();
  await page.getByRole('button', { name: 'Put the grams back' }).click();
  await page.getByText('The grams are back in it. What was found stays written.').waitFor();
  await page.getByRole('link', { name: 'What else to look at' }).click();
  await page.getByRole('heading', { level: 1, name: /to look at$/ }).waitFor();
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
}, 120_000);

test('seeds that were laid are counted at the can, and what that tells stands beside it', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.locator('.run').first().click();
  await page.getByRole('link', { name: 'Look at it and write down what is found' }).click();
  await page.getByLabel('Seeds laid').fill('20');
  await page.getByLabel('Of these sprouted').fill('21');
  await page.getByRole('button', { name: 'Write the test down' }).click();
  await page.getByText('no more can sprout than were laid').waitFor();
  await page.getByLabel('Of these sprouted').fill('17');
  await page.getByRole('button', { name: 'Write the test down' }).click();
  await page.getByText(/17 of 20 sprouted, 85\s%/).waitFor();
  await page.getByText(/this tells of age, not of safety/).waitFor();
  expect(await listViolations(page)).toEqual([]);
}, 60_000);

test('a gift comes in after six questions on a phone: with care where nobody knows, and never from beside paint', async () => {
  const page = await site.visit('member');
  await page.setViewportSize({ width: 320, height: 844 });
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'Take in what somebody gives' }).click();
  await page.getByRole('heading', { level: 1, name: 'Nothing was taken in yet' }).waitFor();
  await page.getByRole('link', { name: 'Take in what somebody gives' }).click();
  const answer = async (question: number, name: string) => {
    await page.getByText(`Question ${question} of 6`).waitFor();
    await page.getByRole('button', { name, exact: true }).click();
  };
  await answer(1, 'Somebody remembers');
  await answer(2, 'Packed at home');
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await answer(3, 'In a garage, a shed or an attic');
  await answer(4, 'It stood near fuel, paint or poison');
  await page.reload(); // what was answered is kept
  await answer(5, 'No');
  await answer(6, 'No');
  await page.getByRole('heading', { name: 'It is not taken in' }).waitFor();
  expect(await page.getByRole('button', { name: 'Take it in' }).count()).toBe(0);
  for (let back = 0; back < 4; back += 1)
    await page.getByRole('button', { name: 'One question back' }).click();
  await answer(3, 'Nobody knows');
  await answer(4, 'Neither');
  await answer(5, 'No');
  await answer(6, 'No');
  await page.getByRole('heading', { name: 'It may come in, with its history unknown' }).waitFor();
  await page.getByText('so it is taken to have stood warm').waitFor();
  await page.getByRole('button', { name: 'Take it in' }).click();
  await page.getByText('Say who gave it, or “unknown”.').waitFor();
  await page.getByRole('searchbox').fill('pinto');
  await page.keyboard.press('Enter');
  await page.getByText('Food: ').waitFor();
  await page.getByLabel('In each').fill('3 lb');
  await page.getByLabel('Who gives it').fill('Old Mr Underhill');
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.getByRole('button', { name: 'Take it in' }).click();
  await page.getByText('3.0 lb are in the book, in 1 container.').waitFor();
  await page.getByRole('link', { name: 'Taken in' }).click();
  await page.getByRole('heading', { level: 1, name: '1 gift was taken in' }).waitFor();
  await settle(page);
  await page.getByText('history unknown', { exact: true }).waitFor();
  expect(await page.getByText('Underhill').count()).toBe(0);
  expect(await listViolations(page)).toEqual([]);
}, 90_000);

test('what is to be looked at is printed from its page, and the code on the sheet leads back to it, of whose stock it is', async () => {
  const narrow = { viewport: { width: 320, height: 844 } };
  const printedFrom = async (page: Page) => {
    await page.getByText('Paper', { exact: true }).click();
    const href = await page.getByRole('link', { name: 'Inspection sheet' }).getAttribute('href');
    expect(await overflowOf(page)).toBe(0);
    expect(await listViolations(page)).toEqual([]);
    const { pages, text } = await readPdf(new Uint8Array(await (await page.request.get(href ?? '')).body()));
    const waiting = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
    expect(text).toContain(waiting);
    await page.goto(`${site.root}/papers/${pages[0]?.qr.split('/').at(-1)}`);
    await page.getByRole('heading', { level: 1, name: /^Inspection sheet, paper no\. / }).waitFor();
    await page.getByRole('link', { name: 'Open what it is about' }).click();
    await page.getByRole('heading', { level: 1, name: waiting }).waitFor();
  };
  const member = await site.visit('member', narrow);
  await member.goto(`${site.root}/inspections`);
  await settle(member);
  await printedFrom(member);
  const coordinator = await site.visit('coordinator', narrow);
  await coordinator.goto(`${site.root}/inspections`);
  await coordinator.getByLabel('Whose stock').selectOption('common');
  await settle(coordinator);
  await printedFrom(coordinator);
  expect(await coordinator.getByLabel('Whose stock').inputValue()).toBe('common');
}, 120_000);
