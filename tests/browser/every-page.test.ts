import { expect, test } from 'vitest';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';
import { LOOKERS, type Looker } from './support/demo-site.ts';
import { HOUSEHOLDS_OWN, listOwnAreas, openInspection } from './support/every-page.ts';

const site = demoOfFile();
const inspection = openInspection();

test.each(Object.keys(LOOKERS) as Looker[])(
  'every page that the %s can reach is free of what axe finds, fits 320 px, and leads somewhere',
  async (looker) => {
    const { faults, paths } = await inspection.findFaults(site, looker);
    expect(faults).toEqual([]);
    expect(paths.length).toBeGreaterThan(5);
    if (looker === 'member') expect(listOwnAreas(paths)).toEqual(HOUSEHOLDS_OWN);
  },
  600_000,
); // some sixty visits, which a busy machine takes its time for

test('the pages before the door are free of what axe finds and fit 320 px', async () => {
  const page = await site.visit(null);
  for (const path of ['/sign-in', '/set-up', '/nowhere']) {
    await page.goto(path);
    await settle(page);
    expect({ path, found: await listViolations(page) }).toEqual({ path, found: [] });
    await page.setViewportSize({ width: 320, height: 844 });
    expect({ path, over: await overflowOf(page) }).toEqual({ path, over: 0 });
  }
}, 180_000);

test('what is wrong with a page is found', async () => {
  const page = await site.visit(null);
  await page.goto('/sign-in');
  await settle(page);
  await page.evaluate(`{
    const wrong = document.createElement('div');
    wrong.innerHTML = '<img src="/icon.svg"><p>faint</p><button></button>';
    const [, faint, small] = wrong.children; // styled one by one: the page takes no style from a text
    Object.assign(faint.style, { color: '#888', background: '#999' });
    Object.assign(small.style, { blockSize: '20px', minBlockSize: '0' });
    document.querySelector('main').append(wrong);
  }`);
  const rules = (await listViolations(page)).map((line) => line.replace(/:.*/s, ''));
  expect(rules).toEqual(expect.arrayContaining(['button-name', 'color-contrast', 'image-alt']));
  expect(await smallTargets(page)).toHaveLength(1);
}, 180_000);
