import type { Page } from 'playwright-core';

const DAY = 86_400_000;

/** So many days from now, as a date field takes it. */
export const dayFrom = (days: number): string => new Date(Date.now() + days * DAY).toISOString().slice(0, 10);

/** Plans a buy from the list of buys: its days, its place, and each food found by a word of its name. */
export async function planBuy(
  page: Page,
  { name, place, foods }: { name: string; place: string; foods: Readonly<Record<string, string>> },
): Promise<void> {
  await page.getByRole('link', { name: 'Plan a buy' }).click();
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByLabel('Pledges close on').fill(dayFrom(12));
  await page.getByLabel('Order on').fill(dayFrom(14));
  await page.getByLabel('Lands on').fill(dayFrom(20));
  await page.getByLabel('Where it lands').fill(place);
  for (const [word, food] of Object.entries(foods)) {
    await page.getByLabel('Find a food to add').fill(word);
    await page.getByRole('button', { name: `Add ${food.toLowerCase()}` }).click();
    await page.getByRole('heading', { name: food }).waitFor();
  }
  await page.getByRole('button', { name: 'Plan this buy' }).click();
  await page.getByRole('heading', { name: `${name} is being planned` }).waitFor();
}

type OfferTyped = { readonly food: string; readonly bag: string; readonly price: string };

/** Enters the quote of a supplier that is not in the list yet, on the page of the quotes. */
export async function enterQuote(
  page: Page,
  { supplier, freight, offers }: { supplier: string; freight: string; offers: readonly OfferTyped[] },
): Promise<void> {
  await page.getByLabel('Supplier', { exact: true }).selectOption('new');
  await page.getByLabel('Its name').fill(supplier);
  await page.getByLabel('Stands until').fill(dayFrom(60));
  await page.getByLabel('Freight costs').fill(freight);
  for (const [at, { food, bag, price }] of offers.entries()) {
    if (at > 0) await page.getByRole('button', { name: 'One more bag or food' }).click();
    await page.getByLabel('Food', { exact: true }).nth(at).selectOption({ label: food });
    await page
      .getByLabel(/^Bag of so many/)
      .nth(at)
      .fill(bag);
    await page.getByLabel('Price a bag').nth(at).fill(price);
  }
  await page.getByRole('button', { name: 'Enter this quote' }).click();
  await page.getByRole('heading', { name: '1 quote that stands' }).waitFor();
}

/** Opens one food of a buy from the buy's page, as a member does who looks what is offered. */
export async function openFood(page: Page, food: string): Promise<void> {
  await page.getByRole('link', { name: new RegExp(`^${food}`) }).click();
  await page.getByRole('heading', { name: 'Your pledge' }).waitFor();
}

/** Types what a household wants of the food whose page is open, and pledges it. */
export async function pledge(page: Page, typed: string): Promise<void> {
  await page.getByLabel('Wanted', { exact: true }).fill(typed);
  await pledgeAsItStands(page);
}

export async function pledgeAsItStands(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Pledge/ }).click();
  await page.getByRole('heading', { name: 'You are in' }).waitFor();
}
