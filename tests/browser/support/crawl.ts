import type { Page } from 'playwright-core';

const ID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

/** What kind of page an address is: ids and codes left out, and what follows the question mark. */
export const kindOf = (path: string): string =>
  path
    .replace(/[?#].*/, '')
    .replace(ID, '*')
    .replace(/\/[A-Z2-9]{5,}(?=\/|$)/g, '/*');

/** Waits until the page has said its first words and no part of it is still being fetched. */
export async function settle(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor();
  await page.locator('.wait').first().waitFor({ state: 'detached' });
  await page.waitForLoadState('networkidle');
}

/**
 * Opens every page that a person can reach by links alone, one after another, and does something on each. A page that
 * no link leads to does not exist for anybody. Of pages of one kind the first few are opened, since a buy that gathers
 * looks other than one that is closed.
 */
export async function crawl(
  page: Page,
  { from, each, ofOneKind = 3 }: { from: string; each: (path: string) => Promise<void>; ofOneKind?: number },
): Promise<string[]> {
  const opened = new Map<string, number>();
  const seen = new Set([from]);
  const waiting = [from];
  const paths: string[] = [];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    const kind = kindOf(path);
    const before = opened.get(kind) ?? 0;
    if (before >= ofOneKind) continue;
    opened.set(kind, before + 1);
    await page.goto(path);
    await settle(page);
    paths.push(path);
    await each(path);
    const links = await page.evaluate<string[]>(
      `[...document.querySelectorAll('a[href^="/s/"]')].filter((a) => !a.hasAttribute('download')).map((a) => a.getAttribute('href'))`,
    );
    for (const link of links) {
      if (seen.has(link)) continue;
      seen.add(link);
      waiting.push(link);
    }
  }
  return paths;
}
