import type { Page } from 'playwright-core';

/** Types a number on the pad, key by key, as a thumb does. */
export async function typeOnPad(page: Page, keys: string): Promise<void> {
  for (const key of keys)
    await page.getByRole('button', { name: key === '.' ? 'Point' : key, exact: true }).click();
}

/** Until nothing waits on the phone any more. */
export const allSent = (page: Page) => page.locator('.waiting').first().waitFor({ state: 'detached' });

type BagOnScale = { readonly shows: string; readonly condition?: string };

/** Weighs the bags of one size in their order, what the scale shows in kilograms; one that is torn is kept with a note. */
export async function weighBags(page: Page, bags: readonly BagOnScale[]): Promise<void> {
  for (const [at, { shows, condition }] of bags.entries()) {
    await page.getByRole('heading', { name: `Bag ${at + 1} of ${bags.length}` }).waitFor();
    const toKilograms = page.getByRole('button', { name: 'The scale shows kg' });
    if (at === 0 && (await toKilograms.isVisible())) await toKilograms.click();
    await typeOnPad(page, shows);
    if (condition !== undefined) await page.getByRole('button', { name: condition }).click();
    await page.getByRole('button', { name: new RegExp(`^Keep bag ${at + 1}`) }).click();
  }
  await page.getByRole('heading', { name: 'written down' }).waitFor();
  await allSent(page);
}
