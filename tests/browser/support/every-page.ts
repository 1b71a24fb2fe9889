import { expect, test } from 'vitest';
import { listViolations, overflowOf, smallTargets } from './checks.ts';
import { crawl, kindOf } from './crawl.ts';
import { demoOfFile } from './demo-of-file.ts';
import type { DemoSite, Looker } from './demo-site.ts';

const LOST = 'There is nothing at this address.';

/**
 * Pages that show a household what is its own, and nothing else to whoever holds a duty besides. The member's test opens
 * each; the long run opens them for everybody.
 */
const HOUSEHOLDS_OWN = ['calendar', 'coverage', 'household', 'password', 'shelf', 'statement', 'treatments'];
const isHouseholdsOwn = (kind: string) => HOUSEHOLDS_OWN.includes(kind.split('/')[3] ?? '');

/** The test of one duty's pages. Each duty has a file of its own, so that they are gone through beside each other. */
export function checkEveryPageOf(looker: Looker): void {
  const site = demoOfFile();
  test('every page that the duty can reach is free of what axe finds, fits 320 px, and leads somewhere', async () => {
    const { faults, paths } = await findFaults(site, looker);
    console.log(`${looker}: ${paths.length} pages.`);
    expect(faults).toEqual([]);
    expect(paths.length).toBeGreaterThan(5);
    if (looker === 'member') expect(listOwnAreas(paths)).toEqual(HOUSEHOLDS_OWN);
  }, 600_000); // some sixty visits, which a busy machine takes its time for
}

const listOwnAreas = (paths: readonly string[]) => {
  const areas = paths.filter((path) => isHouseholdsOwn(kindOf(path))).map((path) => path.split('/')[3] ?? '');
  return [...new Set(areas)].sort();
};

async function findFaults(site: DemoSite, looker: Looker): Promise<{ faults: string[]; paths: string[] }> {
  const page = await site.visit(looker);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`${page.url()} threw ${error.message}`));
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) faults.push(`${page.url()}: ${message.text()}`);
  });
  page.on('request', (request) => {
    if (!request.url().startsWith(site.url)) faults.push(`${page.url()} asked ${request.url()}`);
  });
  const each = async (path: string) => {
    const fault = (what: string) => faults.push(`${path}: ${what}`);
    if ((await page.locator('h1').first().textContent()) === LOST) fault('a link leads nowhere');
    for (const said of await page.locator('[role=alert] .said').allTextContents()) fault(`says “${said}”`);
    for (const violation of await listViolations(page)) fault(violation);
    for (const small of await smallTargets(page)) fault(`too small for a thumb: ${small}`);
    await page.setViewportSize({ width: 320, height: 844 });
    const over = await overflowOf(page);
    if (over > 0) fault(`${over} px wider than a window of 320 px`);
    await page.setViewportSize({ width: 390, height: 844 });
  };
  const isLeftOut = (kind: string) => looker !== 'member' && isHouseholdsOwn(kind);
  const paths = await crawl(page, { from: site.root, each, ofOneKind: 1, isLeftOut });
  await page.context().close();
  return { faults, paths };
}
