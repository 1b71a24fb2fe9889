import type { Page, Request } from 'playwright-core';

const ID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g;

/** What kind of page an address is: ids and codes left out, and what follows the question mark. */
export const kindOf = (path: string): string =>
  path
    .replace(/[?#].*/, '')
    .replace(ID, '*')
    .replace(/\/[A-Z2-9]{5,}(?=\/|$)/g, '/*');

const QUIET_MS = 120;
const onTheWay = new WeakMap<Page, Set<Request>>();

/** What a page has asked for and not got yet, watched from the first time on. */
function requestsOf(page: Page): Set<Request> {
  const known = onTheWay.get(page);
  if (known) return known;
  const open = new Set<Request>();
  onTheWay.set(page, open);
  page.on('request', (request) => open.add(request));
  page.on('requestfinished', (request) => open.delete(request));
  page.on('requestfailed', (request) => open.delete(request));
  return open;
}

/** Waits until the page has said its first words and no part of it is still being fetched. */
export async function settle(page: Page): Promise<void> {
  await page.locator('h1').first().waitFor();
  await page.locator('.wait').first().waitFor({ state: 'detached' });
  const known = onTheWay.has(page);
  const open = requestsOf(page);
  if (!known) return page.waitForLoadState('networkidle');
  // Half a second without a word is what the browser calls idle, which hundreds of pages would pay for.
  for (let quietMs = 0; quietMs < QUIET_MS; quietMs = open.size === 0 ? quietMs + 20 : 0)
    await page.waitForTimeout(20);
}

type CrawlWish = {
  readonly from: string;
  readonly each: (path: string) => Promise<void>;
  readonly ofOneKind?: number;
  /** Kinds of pages that somebody else looks at. */
  readonly isLeftOut?: (kind: string) => boolean;
  /** Kinds of pages that are opened inside the app, as by a link; all others by their address. */
  readonly isFollowed?: (kind: string) => boolean;
};

/** Goes to another page as its link does, without loading the app anew, and waits until the app's router is there. */
async function follow(page: Page, path: string): Promise<void> {
  const there = JSON.stringify(path);
  await page.evaluate(`new Promise((arrived, failed) => {
    const latest = performance.now() + 90_000;
    const look = () => {
      const { status, resolvedLocation } = __TSR_ROUTER__.state;
      if (status === 'idle' && resolvedLocation.href === ${there}) return arrived();
      if (performance.now() > latest) return failed(new Error('the app never came to ' + ${there}));
      setTimeout(look, 10);
    };
    __TSR_ROUTER__.history.push(${there});
    look();
  })`);
}

/**
 * Opens every page that a person can reach by links alone, one after another, and does something on each. A page that
 * no link leads to does not exist for anybody. Of pages of one kind the first few are opened, since a buy that gathers
 * looks other than one that is closed.
 */
export async function crawl(
  page: Page,
  { from, each, ofOneKind = 2, isLeftOut = () => false, isFollowed = () => false }: CrawlWish,
): Promise<string[]> {
  const opened = new Map<string, number>();
  const seen = new Set([from]);
  const waiting = [from];
  const paths: string[] = [];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    const kind = kindOf(path);
    const before = opened.get(kind) ?? 0;
    if (before >= ofOneKind || isLeftOut(kind)) continue;
    opened.set(kind, before + 1);
    await (paths.length > 0 && isFollowed(kind) ? follow(page, path) : page.goto(path));
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
