import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy, bodyOf } from '../support/buy.ts';
import { anInvitation } from '../support/household.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { tabTo } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

const DAY = 86_400_000;
const WHEAT = 'wheat-hard-red-winter';

let site: Site;
let storehouse: TestStorehouse;

beforeAll(async () => {
  site = await openSite();
});
afterAll(() => site.close());

test('a new storehouse is set up in five questions', async () => {
  const { page } = await site.visit();
  await page.goto('/'); // nobody has a login yet, so the front door leads to the first run
  await page.getByLabel('1. What').fill('Alder Row Storehouse');
  await page.getByLabel('4. What').fill('Ashdown');
  await page.getByLabel('Your name').fill('Ada Ashdown');
  await page.getByLabel('E-mail').fill('no address');
  await page.getByLabel('Choose a password').fill('short');
  await page.reload(); // a closed tab loses nothing but the password
  expect(await page.getByLabel('1. What').inputValue()).toBe('Alder Row Storehouse');
  await page.getByRole('button', { name: 'Open the storehouse' }).click();
  await page.getByText('Write an e-mail address').waitFor();
  await page.getByLabel('E-mail').fill('first@example.org');
  await page.getByLabel('Choose a password').fill(A_PASSWORD);
  await page.getByRole('button', { name: 'Open the storehouse' }).click();
  await page.waitForURL(/\/welcome$/);
  await page.getByText('Welcome to Alder Row Storehouse').waitFor();
  const later = await site.visit();
  await later.page.goto('/'); // whoever comes after that signs in
  await later.page.getByRole('heading', { name: 'Sign in to your storehouse.' }).waitFor();
}, 180_000);

test('a newcomer comes from the invitation to a home page that counts, and pledges, all by keyboard', async () => {
  const own = await openSite();
  try {
    storehouse = await aStorehouse(own.app);
    const now = Date.now();
    const buy = await aBuy(own.app, storehouse, {
      name: 'Autumn grain',
      foods: [WHEAT],
      gatheringClosesAt: new Date(now + 12 * DAY).toISOString(),
      orderOn: new Date(now + 14 * DAY).toISOString().slice(0, 10),
      quote: { validUntil: new Date(now + 40 * DAY).toISOString().slice(0, 10) },
    });
    const invitation = await anInvitation(storehouse);
    const { page } = await own.visit();
    await page.goto(invitation.replace('/api', ''));
    await page.getByText('invites you').waitFor();
    for (const text of ['Birchall', 'Ben Birchall', 'ben@example.org', A_PASSWORD]) {
      await tabTo(page, 'input:placeholder-shown, input[value=""]');
      await page.keyboard.type(text);
    }
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/welcome$/);
    await page.getByRole('heading', { name: 'Who eats' }).waitFor();
    await tabTo(page, 'form input');
    await page.keyboard.type('Ana');
    await page.keyboard.press('Tab');
    await page.keyboard.type('1984');
    await page.keyboard.press('Enter');
    // One adult's year by the guideline: 400 + 60 + 16 + 60 + 8 lb and 8,720 g of oil (19.2 lb) make 563.2 lb.
    await page.getByRole('heading', { name: 'weighs 563.2 lb' }).waitFor();
    await tabTo(page, '.next a');
    await page.keyboard.press('Enter');
    await page.getByText('Autumn grain closes').waitFor();
    await tabTo(page, '.next a');
    await page.keyboard.press('Enter');
    await page.getByText('You have none in it yet').waitFor();
    await tabTo(page, '.list a');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'Nobody has pledged' }).waitFor();
    await tabTo(page, 'input[type=range][aria-label^="Wanted"]');
    for (let steps = 0; steps < 4; steps += 1) await page.keyboard.press('ArrowRight');
    expect(await page.getByLabel('Wanted', { exact: true }).inputValue()).toBe('70');
    await tabTo(page, 'button[type=submit]');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'You are in' }).waitFor();
    const path = `${storehouse.path}/buys/${buy.buyId}/pledges`;
    const cookie = (await page.context().cookies()).map(({ name, value }) => `${name}=${value}`).join('; ');
    const { own: pledges } = bodyOf(await own.app.as(cookie).get(path));
    // 70 lb are 31,751.47 g, rounded once.
    expect(pledges).toMatchObject([
      { leastGrams: 0, wantedGrams: 31_751, mostGrams: 45_359, isWithdrawn: false },
    ]);
    await page.getByLabel('Wanted', { exact: true }).fill('72 lb');
    await page.getByRole('button', { name: 'Change to 72.0 lb' }).click();
    await page.getByText('The nearest masses are 70 lb (31751 g) and 75 lb (34019 g).').waitFor();
    await page.getByLabel('Wanted', { exact: true }).fill('1/2 ton');
    await page.getByText('Write a weight').waitFor();
    await page.getByRole('button', { name: 'Leave it as it was' }).click();
    await page.getByRole('button', { name: 'Withdraw the 70.0 lb' }).click();
    await page.getByRole('button', { name: /^Pledge/ }).waitFor();
    expect(bodyOf(await own.app.as(cookie).get(path)).own).toEqual([]);
  } finally {
    await own.close();
  }
}, 120_000);
