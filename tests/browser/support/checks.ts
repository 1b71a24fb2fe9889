import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

type Violation = {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
};

/** What axe finds wrong on the page, each as one line; where the page's middle is known, in what stands around it. */
export async function listViolations(page: Page, part: 'whole' | 'around main' = 'whole'): Promise<string[]> {
  if (!(await page.evaluate<boolean>("'axe' in window"))) await page.evaluate(axeSource);
  const context = part === 'whole' ? 'document' : "{ exclude: ['main'] }";
  // Every rule runs; only what is wrong is written down, since describing all that is right takes most of the time.
  const found = await page.evaluate<{ violations: Violation[] }>(
    `axe.run(${context}, { reporter: 'no-passes' })`,
  );
  return found.violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
  );
}

/** How many pixels the page is wider than its window. */
export function overflowOf(page: Page): Promise<number> {
  return page.evaluate<number>('document.documentElement.scrollWidth - document.documentElement.clientWidth');
}

/** Controls smaller than a thumb needs: 48 px high, links inside a sentence left out. */
export function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate<
    string[]
  >(`[...document.querySelectorAll('button, a.btn, nav a, .list a, summary, select, .field input:not([type=checkbox]), .check')]
    .filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().height < 47.5)
    .map((one) => one.outerHTML.slice(0, 120))`);
}

/** What is wrong with a page as a phone shows it, which goes back to its usual width: see `NO_FAULTS`. */
export async function findFaults(page: Page) {
  const found = { axe: await listViolations(page), small: await smallTargets(page) };
  await page.setViewportSize({ width: 320, height: 844 });
  const over = await overflowOf(page);
  await page.setViewportSize({ width: 390, height: 844 });
  return { ...found, over };
}
export const NO_FAULTS = { axe: [], small: [], over: 0 };
