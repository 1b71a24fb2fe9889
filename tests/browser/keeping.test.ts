import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

test('treatments are found from the kinds of container, with cautions, steps and what not to do', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/containers`);
  await settle(page);
  await page.getByText('bare plastic: lets air in slowly').first().waitFor();
  await page.getByRole('link', { name: 'Treatments, and what not to do' }).click();
  await page.getByRole('heading', { name: '7 ways to treat food as it is packed.' }).waitFor();
  await page.getByText(/Never close a lid on dry ice/).waitFor();
  await page.getByText(/First comes the word of: NIOSH and CDC/).waitFor();
  await page.getByText('Heat sacks in the oven').waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('a member asks what wheat can be kept in, and the way that is not safe is told with its reason', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'Ways to keep a food' }).click();
  await page.getByLabel('Find a food to add').fill('hard red winter');
  await page.getByRole('button', { name: /Hard red winter wheat/ }).click();
  await page.getByLabel('How much').fill('20 kg');
  await page.getByLabel('Moisture in per cent, if measured').fill('9.5');
  await page.getByRole('heading', { name: /other ways that may be used/ }).waitFor();
  await page.getByText(/combinations that should not be used/).click();
  await page
    .getByText(/Dry ice is never put in a metal can/)
    .first()
    .waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);

test('labels are ticked on the shelf, begin at a sticker that is left, and open as a PDF', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/shelf`);
  await settle(page);
  await page.getByRole('link', { name: 'Print labels' }).click();
  await page.getByText('Tick the containers first.').waitFor();
  await page.getByRole('button', { name: /^All \d+$/ }).click();
  await page.getByRole('button', { name: 'Sticker 4', exact: true }).click();
  await page.getByText('Begin at sticker 4').waitFor();
  const link = page.getByRole('link', { name: 'Open the labels to print' });
  const answer = await page.request.get(new URL((await link.getAttribute('href')) ?? '', page.url()).href);
  expect([answer.status(), answer.headers()['content-type']]).toEqual([200, 'application/pdf']);
  expect(await listViolations(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
}, 180_000);
