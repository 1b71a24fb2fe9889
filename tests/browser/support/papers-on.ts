import type { Page } from 'playwright-core';

/** The addresses of the papers that a page links to, with the sheet, language and unit that it offers first. */
export async function papersOn(page: Page, path: string): Promise<string[]> {
  // A sheet of labels is offered once it is said which containers get one.
  const all = page.locator('fieldset button').first();
  if (path.endsWith('/labels') && (await all.count()) > 0) await all.click();
  const links = await page.evaluate<string[]>(
    `[...document.querySelectorAll('a[href^="/api/"]:not([download])')].map((a) => a.getAttribute('href'))`,
  );
  return links.filter((link) => /\/(papers?|tag)\b/.test(link));
}
