import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { listViolations, overflowOf, smallTargets } from './checks.ts';
import { crawl, kindOf } from './crawl.ts';
import type { DemoSite, Looker } from './demo-site.ts';

const LOST = 'There is nothing at this address.';

/** The narrowest window that a page must fit; the long run looks at the wider ones. */
const PHONE = { width: 320, height: 844 };

/**
 * Pages that show a household what is its own, and nothing else to whoever holds a duty besides. The member's test opens
 * each; the long run opens them for everybody.
 */
export const HOUSEHOLDS_OWN = [
  'calendar',
  'coverage',
  'household',
  'password',
  'shelf',
  'statement',
  'treatments',
];
const isHouseholdsOwn = (kind: string) => HOUSEHOLDS_OWN.includes(kind.split('/')[3] ?? '');

export const listOwnAreas = (paths: readonly string[]) => {
  const areas = paths.filter((path) => isHouseholdsOwn(kindOf(path))).map((path) => path.split('/')[3] ?? '');
  return [...new Set(areas)].sort();
};

/** Goes through the pages of one duty after another, on one demo. */
export type Inspection = {
  findFaults(site: DemoSite, looker: Looker): Promise<{ faults: string[]; paths: string[] }>;
};

/**
 * What two duties see letter for letter alike is given to axe once; what stands around it is each duty's own, and is
 * given to axe on every page. Each kind of page is opened by its address once, and by its link for everybody else.
 */
export function openInspection(): Inspection {
  const lookedAt = new Set<string>();
  const addressed = new Set<string>();
  return {
    async findFaults(site, looker) {
      const page = await site.visit(looker, { viewport: PHONE });
      const faults = watch(page, site.url);
      const each = async (path: string) => {
        const found = await faultsOf(page, lookedAt);
        faults.push(...found.map((fault) => `${path}: ${fault}`));
      };
      const paths = await crawl(page, {
        from: site.root,
        each,
        ofOneKind: 1,
        isLeftOut: (kind) => looker !== 'member' && isHouseholdsOwn(kind),
        isFollowed: (kind) => {
          const isKnown = addressed.has(kind);
          addressed.add(kind);
          return isKnown;
        },
      });
      await page.context().close();
      return { faults, paths };
    },
  };
}

/** Faults that a page tells of by itself, as they come. */
function watch(page: Page, url: string): string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`${page.url()} threw ${error.message}`));
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) faults.push(`${page.url()}: ${message.text()}`);
  });
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) faults.push(`${page.url()} asked ${request.url()}`);
  });
  return faults;
}

async function faultsOf(page: Page, lookedAt: Set<string>): Promise<string[]> {
  const faults: string[] = [];
  if ((await page.locator('h1').first().textContent()) === LOST) faults.push('a link leads nowhere');
  for (const said of await page.locator('[role=alert] .said').allTextContents())
    faults.push(`says “${said}”`);
  const print = await printOf(page);
  faults.push(...(await listViolations(page, lookedAt.has(print) ? 'around main' : 'whole')));
  lookedAt.add(print);
  for (const small of await smallTargets(page)) faults.push(`too small for a thumb: ${small}`);
  const over = await overflowOf(page);
  if (over > 0) faults.push(`${over} px wider than a window of ${PHONE.width} px`);
  return faults;
}

/** What stands in the page's middle, with the ids left out that differ with what was drawn before it. */
async function printOf(page: Page): Promise<string> {
  const main = await page.evaluate<string>(`document.querySelector('main').outerHTML`);
  return createHash('sha256')
    .update(main.replace(/_r_\w+_/g, '*'))
    .digest('hex');
}
