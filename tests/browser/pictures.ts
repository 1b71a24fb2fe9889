import { mkdirSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { build } from 'vite';
import { tellStory } from '../../db/src/demo/story.ts';
import { openTeller } from '../../db/src/demo/teller.ts';
import { withThrowawayDatabase } from '../../db/src/demo/throwaway.ts';
import { openPaperPictures, type PaperPictures } from './paper-pictures.ts';
import { takeForReadme } from './readme-pictures.ts';
import { stopChromium } from './support/chromium.ts';
import { crawl, kindOf, settle } from './support/crawl.ts';
import { type DemoSite, LOOKERS, type Looker, openDemoSite } from './support/demo-site.ts';

// `npm run pictures`: every page of the demo storehouse that each duty can reach, at a phone's and at a desk's width, and
// in Spanish and dark, into pictures/. Words after it pick pages: `npm run pictures -- books buys` takes those whose name
// holds one of the words, `npm run pictures -- papers` every paper that they link to. The README's own go into
// apps/web/pictures; `npm run pictures -- readme` takes them alone.

const folder = fileURLToPath(new URL('../../pictures', import.meta.url));
const words = process.argv.slice(2);
const isReadmeAlone = words.join() === 'readme';

const KINDS: Readonly<Record<string, BrowserContextOptions>> = {
  phone: { viewport: { width: 390, height: 844 } },
  desk: { viewport: { width: 1280, height: 860 } },
  'dark-es': { viewport: { width: 390, height: 844 }, colorScheme: 'dark', locale: 'es-MX' },
};

/** Which pictures of pages are joined by those of the papers that they link to. */
const LANGUAGE_OF_PAPERS: Readonly<Record<string, string>> = { phone: 'en', 'dark-es': 'es' };

async function take(page: Page, name: string): Promise<void> {
  await page.waitForTimeout(150); // the last of the pictures on the page are drawn
  const { width = 390, height = 844 } = page.viewportSize() ?? {};
  // As tall as the page, so that the bar stands at its foot and hides nothing.
  const whole = await page.evaluate<number>('document.documentElement.scrollHeight');
  await page.setViewportSize({ width, height: Math.max(whole, height) });
  await page.screenshot({ path: `${folder}/${name}.png` });
  await page.setViewportSize({ width, height });
}

/** The words of the address name the picture; a second page of one kind gets its number. */
function namer(looker: string, kind: string): (path: string) => string {
  const counts = new Map<string, number>();
  return (path) => {
    const said = kindOf(path)
      .split('/')
      .slice(3)
      .filter((part) => part !== '*');
    const base = said.join('-') || 'home';
    const name = kindOf(path).endsWith('/*') && said.length > 0 ? `${base}-one` : base;
    const count = (counts.get(name) ?? 0) + 1;
    counts.set(name, count);
    return `${name}${count > 1 ? `-${count}` : ''}-${looker}-${kind}`;
  };
}

type Kind = { readonly kind: string; readonly papers: PaperPictures | null };

async function takeAll(site: DemoSite, looker: Looker, { kind, papers }: Kind): Promise<void> {
  const page = await site.visit(looker, { ...KINDS[kind], deviceScaleFactor: 1.5 });
  const nameOf = namer(looker, kind);
  const each = async (path: string) => {
    const name = nameOf(path);
    if (words.length === 0 || words.some((word) => name.includes(word))) await take(page, name);
    if (words.length === 0 || words.includes('papers')) await papers?.takeFrom(page, path);
  };
  await crawl(page, { from: site.root, each });
  await page.context().close();
}

async function takeDoor(site: DemoSite, kind: string): Promise<void> {
  const page = await site.visit(null, { ...KINDS[kind], deviceScaleFactor: 1.5 });
  for (const name of ['sign-in', 'set-up']) {
    await page.goto(`/${name}`);
    await settle(page);
    await take(page, `${name}-${kind}`);
  }
  await page.context().close();
}

await build({ root: fileURLToPath(new URL('../../apps/web', import.meta.url)), logLevel: 'warn' });
if (!isReadmeAlone) rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
await withThrowawayDatabase(async (database) => {
  const { cast } = await tellStory(openTeller(database, () => undefined));
  const site = await openDemoSite(database, cast.storehouseId);
  if (words.length === 0 || words.includes('readme')) await takeForReadme(site);
  for (const kind of isReadmeAlone ? [] : Object.keys(KINDS)) {
    const language = LANGUAGE_OF_PAPERS[kind];
    const papers = language ? openPaperPictures(folder, language) : null;
    await takeDoor(site, kind);
    for (const looker of Object.keys(LOOKERS) as Looker[]) await takeAll(site, looker, { kind, papers });
  }
  await site.close();
  await stopChromium();
});
console.log(isReadmeAlone ? "The README's pictures are new." : `Pictures of every page lie in ${folder}.`);
