import type { Page } from 'playwright-core';
import { A_PASSWORD } from '../../support/storehouse.ts';

/** Somebody of a storehouse as the first scene names them: `Ada Ashdown` of the household Ashdown. */
export type Neighbour = { readonly name: string; readonly household: string; readonly email: string };

export const neighbour = (name: string): Neighbour => {
  const [first = '', household = ''] = name.split(' ');
  return { name, household, email: `${first.toLowerCase()}@example.org` };
};

/** Answers the five questions of the first run; whoever does becomes the coordinator. */
export async function foundStorehouse(page: Page, storehouse: string, founder: Neighbour): Promise<void> {
  await page.getByLabel('1. What').fill(storehouse);
  await page.getByLabel('4. What').fill(founder.household);
  await fillLogin(page, founder);
  await page.getByRole('button', { name: 'Open the storehouse' }).click();
  await page.getByRole('heading', { name: `Welcome to ${storehouse}` }).waitFor();
}

async function fillLogin(page: Page, { name, email }: Neighbour): Promise<void> {
  await page.getByLabel('Your name').fill(name);
  await page.getByLabel('E-mail').fill(email);
  await page.getByLabel('Choose a password').fill(A_PASSWORD);
}

/** Makes a link on the page of the invitations, and reads its path from there: tests serve on a port of their own. */
export async function makeInvitation(page: Page, household: string): Promise<string> {
  await page.getByLabel('Its name, if you know it').fill(household);
  await page.getByRole('button', { name: 'Make the link' }).click();
  const link = page.getByLabel('The link');
  await page.locator('.list li').filter({ hasText: household }).waitFor();
  return new URL(await link.inputValue()).pathname;
}

/** Opens the link, makes a login and names the household, which the coordinator has written in already. */
export async function joinBy(page: Page, link: string, who: Neighbour): Promise<void> {
  await page.goto(link);
  await page.getByText('You come with a household of your own.').waitFor();
  await page.getByLabel('What is your household called?').fill(who.household);
  await fillLogin(page, who);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.getByRole('heading', { name: 'Welcome to' }).waitFor();
}

/** Says who eats, one after another, each with a year of birth. */
export async function addEaters(page: Page, eaters: Readonly<Record<string, number>>): Promise<void> {
  for (const [name, born] of Object.entries(eaters)) {
    await page.getByLabel('Name', { exact: true }).fill(name);
    await page.getByLabel('Born').fill(String(born));
    await page.getByRole('button', { name: 'Add this eater' }).click();
    await page
      .getByRole('button', { name: `Change ${name}` })
      .or(page.getByText(name, { exact: true }))
      .first()
      .waitFor();
  }
}

/** The coordinator gives a duty on the household's page among the people. */
export async function giveDuty(page: Page, who: Neighbour, duty: string): Promise<void> {
  await page.getByRole('link', { name: 'People' }).first().click();
  await page.getByRole('link', { name: new RegExp(`^${who.household}`) }).click();
  await page.getByText(`Give ${who.name} a duty`).click();
  await page.getByLabel('Duty').selectOption({ label: duty });
  await page.getByRole('button', { name: 'Give it' }).click();
  await page.getByRole('button', { name: `End: ${duty}` }).waitFor();
}
