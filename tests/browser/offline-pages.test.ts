import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';
import type { Looker } from './support/demo-site.ts';

const demo = demoOfFile();
const ID = '00000000-0000-7000-8000-000000000000';

/** The ways that stand open on the page, each once. */
const linksOn = (page: Page): Promise<string[]> =>
  page.evaluate<string[]>(
    `[...new Set([...document.querySelectorAll('a[href^="/s/"]:not([download])')]
      .filter((a) => a.checkVisibility()).map((a) => a.getAttribute('href')))]`,
  );

/** What a reader is left with: words and a heading, or the way to try again; and that there is no signal. */
async function lacksOf(page: Page): Promise<string[]> {
  await page.locator('.wait').first().waitFor({ state: 'detached' });
  await page.locator('h1, main button:text-is("Try again"), .empty button').first().waitFor();
  const said = (await page.locator('#app').textContent()) ?? '';
  return [
    ...(/No signal/.test(said) ? [] : ['does not say that there is no signal']),
    ...(/Failed to fetch|ERR_|TypeError|stumbled/i.test(said) ? ['speaks as a browser does'] : []),
  ];
}

async function lookWithoutSignal(looker: Looker): Promise<Record<string, string[]>> {
  const page = await demo.visit(looker, { viewport: { width: 1280, height: 900 } });
  const broken: Record<string, string[]> = {};
  page.on('pageerror', (error) => {
    broken[page.url()] = [error.message];
  });
  await page.goto(demo.root);
  await settle(page);
  const links = (await linksOn(page)).filter((link) => link !== demo.root);
  expect(links.length).toBeGreaterThan(5);
  await page.context().setOffline(true);
  for (const link of links) {
    await page.locator(`a[href="${link}"]:visible`).first().click();
    const lacks = await lacksOf(page);
    if (lacks.length > 0) broken[link] = lacks;
    await page.goBack();
    await page.locator(`a[href="${link}"]:visible`).first().waitFor();
  }
  await page.context().setOffline(false);
  const [first = ''] = links;
  await page.locator(`a[href="${first}"]:visible`).first().click();
  await settle(page);
  await page.getByText('No signal').first().waitFor({ state: 'detached' });
  await page.context().close();
  return broken;
}

test.each(['member', 'coordinator', 'treasurer'] as const)(
  'each page that the home of a %s leads to says so when there is no signal, and comes back with it',
  async (looker) => {
    expect(await lookWithoutSignal(looker)).toEqual({});
  },
  90_000,
);

test('an address that leads to nothing says so in a heading, and leads home', async () => {
  const page = await demo.visit('coordinator');
  for (const path of [
    `/s/${ID}`,
    ...['shelf', 'buys', 'holds', 'equipment', 'giving/pantries', `buys/${ID}/lines`].map(
      (place) => `${demo.root}/${place}/${ID}`,
    ),
  ]) {
    await page.goto(path);
    await page.getByRole('heading', { level: 1, name: 'There is nothing at this address.' }).waitFor();
    expect(await page.locator('h1').count()).toBe(1);
    await page.getByRole('link', { name: 'Go to your home page' }).click();
    await page.waitForURL((url) => url.pathname === demo.root);
  }
  await page.context().close();
}, 90_000);

test('a page whose script does not come says so, and is there once it is tried again', async () => {
  const page = await demo.visit('member', {
    ...{ viewport: { width: 1280, height: 900 }, serviceWorkers: 'block' }, // which keeps scripts
  });
  const came = new Set<string>();
  page.on('response', (response) => came.add(response.url()));
  await page.goto(demo.root);
  await settle(page);
  const scripts = /\/assets\/.*\.js/;
  await page.route(scripts, (route) => (came.has(route.request().url()) ? route.continue() : route.abort()));
  await page.getByRole('link', { name: 'Statement', exact: true }).click();
  await page.getByRole('button', { name: 'Try again' }).waitFor();
  expect(await page.locator('h1').textContent()).toBe(
    'No signal, and this page was never opened here before.',
  );
  await page.unroute(scripts);
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('heading', { level: 1, name: /47\.92/ }).waitFor();
  expect(new URL(page.url()).pathname).toBe(`${demo.root}/statement`);
  await page.context().close();
}, 90_000);
