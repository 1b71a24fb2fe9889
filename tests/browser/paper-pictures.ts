import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { drawPdf } from '../support/pdf.ts';
import { kindOf } from './support/crawl.ts';
import { papersOn } from './support/papers-on.ts';

// The papers that pages link to, printed and drawn as pictures: two of each kind in each language, as with pages.

const OF_ONE_KIND = 2;

/** What tells a paper's address from another of its kind, for the picture's name: `holds-papers-recall-notice`. */
function nameOf(address: string): string {
  const parts = kindOf(address).split('/');
  return parts
    .slice(parts.indexOf('storehouses') + 2)
    .filter((part) => part !== '*')
    .join('-');
}

export type PaperPictures = {
  /** Draws what the page links to, unless enough of its kind is drawn already. */
  takeFrom(page: Page, path: string): Promise<void>;
};

export function openPaperPictures(folder: string, language: string): PaperPictures {
  const counts = new Map<string, number>();
  const drawn = new Set<string>();

  async function takeOne(page: Page, address: string): Promise<void> {
    const name = nameOf(address);
    const count = (counts.get(name) ?? 0) + 1;
    const [bare = ''] = address.split('?');
    if (count > OF_ONE_KIND || drawn.has(bare)) return;
    counts.set(name, count);
    drawn.add(bare);
    const answer = await page.request.get(address);
    if (!answer.ok()) throw new Error(`${address}: ${await answer.text()}`);
    for (const [at, png] of (await drawPdf(await answer.body())).entries())
      writeFileSync(
        `${folder}/paper-${name}${count > 1 ? `-${count}` : ''}-${language}-page-${at + 1}.png`,
        png,
      );
  }

  return {
    async takeFrom(page, path) {
      for (const address of await papersOn(page, path)) await takeOne(page, address);
    },
  };
}
