import type { Locator, Page } from 'playwright-core';

/** Opens a page of the books by its name in their row. */
export async function openBook(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Books', exact: true }).first().click();
  await page.getByRole('navigation', { name: 'Books' }).getByRole('link', { name, exact: true }).click();
}

/** Takes a household's deposit in, of the amount that the page has reckoned. */
export async function takeDeposit(page: Page, household: string): Promise<void> {
  const row = page.locator('li.claim').filter({ hasText: household });
  await row.getByText('A deposit came in').click();
  await row.getByRole('button', { name: 'Post', exact: true }).first().click();
  await row.getByText('settled', { exact: true }).waitFor();
}

/** The form of one posting, opened by what it is called. */
export async function openPosting(page: Page, summary: string): Promise<Locator> {
  const form = page.locator('details').filter({ has: page.getByText(summary, { exact: true }) });
  await form.getByText(summary, { exact: true }).click();
  return form;
}

/** Enters what a supplier billed: amounts by the words of their fields. */
export async function enterBill(
  page: Page,
  { number, amounts }: { number: string; amounts: Readonly<Record<string, string>> },
): Promise<void> {
  const form = await openPosting(page, 'A bill came in');
  await form.getByLabel('Number on the bill').fill(number);
  for (const [field, amount] of Object.entries(amounts)) await form.getByLabel(field).fill(amount);
  await form.getByRole('button', { name: 'Post', exact: true }).click();
  await page.getByRole('cell', { name: number }).waitFor();
}

/** A payment in two taps: the household, then the till that it came into. */
export async function takePayment(
  page: Page,
  { household, owes, by }: { household: string; owes: string; by: 'By bank' | 'In cash' },
): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${household}`) }).click();
  await page.getByRole('button', { name: by }).click();
  await page.getByText(`${owes} from ${household} is posted.`).waitFor();
}
