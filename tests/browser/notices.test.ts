import { afterAll, beforeAll, expect, test } from 'vitest';
import { aHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  await aHousehold(site.app, storehouse, 'Dell');
}, 120_000);
afterAll(() => site.close());

test('a coordinator tells everyone something; a member reads it, acknowledges it, and it is seen who did', async () => {
  const home = `/s/${storehouse.storehouseId}`;
  const coordinator = await site.enter('coordinator@example.org');
  const write = coordinator.page;
  await write.goto(`${home}/notices`);
  await write.getByRole('link', { name: 'Write a notice' }).click();
  await write.getByRole('button', { name: 'Tell them' }).click();
  await write.getByText('Say what is to be done').waitFor();
  await write.getByLabel('What it is about').fill('The hall');
  await write.getByLabel('What to do').fill('The stove smokes: do not light it.');
  await write.getByLabel('It is about safety').check();
  await write.getByLabel('For', { exact: true }).selectOption('household');
  await write.reload(); // a closed tab or a dead battery: what was typed is there again, and for whom
  expect(await write.getByLabel('For', { exact: true }).inputValue()).toBe('household');
  expect(await write.getByLabel('What to do').inputValue()).toBe('The stove smokes: do not light it.');
  expect(await write.getByLabel('It is about safety').isChecked()).toBe(true);
  await write.getByLabel('For', { exact: true }).selectOption('everyone');
  await write.getByRole('button', { name: 'Tell them' }).click();
  await write.getByText('They are told.').waitFor();
  expect(await listViolations(write)).toEqual([]);

  const member = await site.enter('dell@example.org');
  const read = member.page;
  await read.goto(home);
  const bell = read.getByRole('link', { name: /Notices.*1.*not read yet/ });
  await bell.click();
  await read.getByText('1 notice to read.').waitFor();
  await read.getByText('The stove smokes: do not light it.').waitFor();
  await read.getByText('About safety').waitFor();
  expect(await listViolations(read)).toEqual([]);
  expect(await smallTargets(read)).toEqual([]);
  await read.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(read)).toBe(0);
  await read.getByRole('button', { name: 'Understood' }).click();
  await read.getByText('You have read everything you were told.').waitFor();
  await read.getByText('You acknowledged it').waitFor();
  await read.getByLabel('Find in the notices').fill('chimney');
  await read.getByText('Nothing here.').waitFor();
  await read.getByLabel('Find in the notices').fill('STOVE');
  await read.getByText('The stove smokes: do not light it.').waitFor();

  await write.reload();
  await write.getByText('1 person has read it, 1 acknowledged it.').waitFor();
  await write.getByRole('button', { name: 'Which households' }).click();
  await write.getByText('acknowledged', { exact: false }).first().waitFor();
  await write.getByText('not yet: telephone them').waitFor();
  await settle(write);
  expect(await listViolations(write)).toEqual([]);
  expect([...member.complaints, ...coordinator.complaints]).toEqual([]);
}, 180_000);
