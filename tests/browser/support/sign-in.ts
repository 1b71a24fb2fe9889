import type { Page } from 'playwright-core';
import { A_PASSWORD } from '../../support/storehouse.ts';

/** Signs in at the front door, as people do. */
export async function signInAs(page: Page, email: string): Promise<void> {
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill(email);
  await page.locator('input[name=password]').fill(A_PASSWORD);
  await page.locator('button[type=submit]').click();
  await page.waitForURL(/\/s\//);
}

/** Tabs on until the wanted control has the focus, as somebody without a mouse does. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    if (await page.evaluate<boolean>(`document.activeElement?.matches(${JSON.stringify(selector)}) ?? false`))
      return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the keyboard did not reach ${selector}`);
}
