import { expect, test } from 'vitest';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { crawl, settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';
import { LOOKERS, type Looker } from './support/demo-site.ts';

const site = demoOfFile();

const LOST = 'There is nothing at this address.';

async function findFaults(looker: Looker): Promise<{ faults: string[]; paths: string[] }> {
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
    for (const violation of await listViolations(page)) fault(violation);
    for (const small of await smallTargets(page)) fault(`too small for a thumb: ${small}`);
    await page.setViewportSize({ width: 320, height: 844 });
    const over = await overflowOf(page);
    if (over > 0) fault(`${over} px wider than a window of 320 px`);
    await page.setViewportSize({ width: 390, height: 844 });
  };
  const paths = await crawl(page, { from: site.root, each, ofOneKind: 2 });
  await page.context().close();
  return { faults, paths };
}

test('every page that a duty can reach is free of what axe finds, fits 320 px, and leads somewhere', async () => {
  const found = await Promise.all(
    (Object.keys(LOOKERS) as Looker[]).map(async (looker) => ({ looker, ...(await findFaults(looker)) })),
  );
  for (const { looker, paths } of found) console.log(`${looker}: ${paths.length} pages.`);
  expect(found.flatMap(({ looker, faults }) => faults.map((fault) => `${looker} ${fault}`))).toEqual([]);
  expect(Math.min(...found.map(({ paths }) => paths.length))).toBeGreaterThan(5);
}, 1_200_000); // some three hundred visits, which a busy machine takes its time for

test('the pages before the door are free of what axe finds and fit 320 px', async () => {
  const page = await site.visit(null);
  for (const path of ['/sign-in', '/set-up', '/nowhere']) {
    await page.goto(path);
    await settle(page);
    expect({ path, found: await listViolations(page) }).toEqual({ path, found: [] });
    await page.setViewportSize({ width: 320, height: 844 });
    expect({ path, over: await overflowOf(page) }).toEqual({ path, over: 0 });
  }
}, 60_000);
