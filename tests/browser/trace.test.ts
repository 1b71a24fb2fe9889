import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();
const NARROW = { viewport: { width: 320, height: 800 } };

test('any code leads to where it came from and where every gram is, by keyboard alone, and a slip of the finger is told', async () => {
  const page = await site.visit('coordinator', NARROW);
  const [bag] = await site.database.admin`select g.bag_code as code, l.supplier_mark as mark from book.bag g
    join book.lot l using (storehouse_id, lot_id) where l.supplier_mark <> '' and exists (select from book.account a
      join book.movement m on m.source_id = a.account_id where a.vessel_id = g.bag_id) order by g.bag_code limit 1`;
  const code = String(bag?.code);
  await page.goto(`${site.root}/trace`);
  await page.getByLabel('Code').fill(`${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
  await page.keyboard.press('Enter');
  await page.getByText(/One character is wrong: the last one does not fit the others/).waitFor();
  await settle(page);
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);

  await page.getByLabel('Code').fill(code.toLowerCase());
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: /Bag .*(is found|known by name)/ }).waitFor();
  await settle(page);
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
  await page.getByText('What households did with theirs is their own').waitFor();
  await page.getByRole('img', { name: /^The way of Bag/ }).waitFor();
  await page.getByRole('link', { name: 'Trace it for a recall' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText(/^You see what became of every gram/).waitFor();
  await settle(page);
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);

  await page.getByLabel('Code').fill(String(bag?.mark));
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: String(bag?.mark) }).waitFor();
});
