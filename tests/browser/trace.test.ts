import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { HOUSEHOLDS } from '../../db/src/demo/people.ts';
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

const isFine = async (page: Page) => {
  await settle(page);
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
};

/** The lot that most households have a part of, the member among them, with nothing of it on hold. */
async function lotOf(household: string): Promise<string> {
  const [lot] = await site.database.admin`select a.unit_id as id from book.account a
    join book.household h on h.household_id = a.owner_id
    where h.name = ${household} and a.vessel_kind in ('bag', 'container') and a.inflow > a.outflow
      and not exists (select from book.account o join book.held v on v.vessel_id = o.vessel_id
        where o.unit_id = a.unit_id) 
    order by (select count(distinct o.owner_id) from book.account o join book.household x on x.household_id = o.owner_id
      where o.unit_id = a.unit_id and o.vessel_kind in ('bag', 'container') and o.inflow > o.outflow) desc, a.unit_id limit 1`;
  return String(lot?.id);
}

/** A household that was told reads the notice in its own browser and acknowledges it. */
async function acknowledge(page: Page, reason: string): Promise<void> {
  await page.goto(`${site.root}/notices`);
  const notice = page.getByRole('listitem').filter({ hasText: reason });
  await notice.getByRole('button', { name: 'Understood' }).click();
  await notice.getByRole('button', { name: 'Understood' }).waitFor({ state: 'detached' });
}

/** Everybody else who was told of a hold acknowledges it, each in a browser of its own. */
async function acknowledgeAll(holdId: string, reason: string): Promise<number> {
  const told = await site.database.admin`select h.name from book.notice n
    join book.household h using (storehouse_id, household_id)
    where n.kind = 'held' and n.path like ${`%/holds/${holdId}`} and h.name <> 'Hollis'`;
  for (const { name } of told) {
    const [firstName = ''] = HOUSEHOLDS.find((one) => one.name === name)?.personName.split(' ') ?? [];
    const page = await site.visit({ firstName }, NARROW);
    await acknowledge(page, reason);
    await page.context().close();
  }
  return told.length;
}

test('a food is held by its days alone, from the list of holds', async () => {
  const lead = await site.visit('packing-lead', NARROW);
  await lead.goto(`${site.root}/holds`);
  await lead.locator('summary', { hasText: 'Hold a food by its days' }).click();
  await lead.getByLabel('Food', { exact: true }).selectOption({ label: 'Pinto beans' });
  await lead.getByLabel('From the day').fill('2001-01-01');
  await lead.getByLabel('To the day').fill('2001-01-31');
  const byDays = lead.locator('details', { hasText: 'Hold a food by its days' });
  await byDays.getByLabel('Why it is put on hold').fill('A notice of the food authority.');
  await isFine(lead);
  await lead.keyboard.press('Enter');
  await lead.getByText('Nothing that is or was here falls under this.').waitFor();
  await lead.getByLabel('To the day').fill('2026-12-31');
  await lead.keyboard.press('Enter');
  await lead
    .getByRole('heading', { level: 1, name: /^Food of some days Pinto beans is on hold\.$/ })
    .waitFor();
  await lead.getByText('A notice of the food authority.').waitFor();
});

test('all that stands in one place is held from the list of holds, and its way is looked at from there', async () => {
  const lead = await site.visit('packing-lead', NARROW);
  await lead.goto(`${site.root}/holds`);
  await site.database
    .admin`insert into book.container_move (storehouse_id, container_id, moved_on, place_id, moved_by,
      moved_at)
    select c.storehouse_id, c.container_id, current_date, p.place_id, r.person_id, now()
    from book.place p join book.container c using (storehouse_id)
    join lateral (select x.person_id from book.person x where x.storehouse_id = p.storehouse_id limit 1) r on true
    where p.name = 'Back room of the hall' and c.household_id is null and exists (select from book.account a
      where a.vessel_id = c.container_id and a.inflow > a.outflow) limit 1`;
  const form = lead.locator('details', { hasText: 'Hold all that stands in one place' });
  await form.locator('summary').focus();
  await lead.keyboard.press('Enter');
  await form.getByLabel('Place').selectOption({ label: 'Back room of the hall' });
  await form.getByLabel('Why it is put on hold').fill('Mouse droppings on the floor.');
  await isFine(lead);
  await lead.keyboard.press('Enter');
  await lead.getByRole('heading', { level: 1, name: 'Place Back room of the hall is on hold.' }).waitFor();
  await lead.getByText(/^(one bag or container|\d+ bags and containers), .* still there/).waitFor();
  await lead.getByRole('link', { name: 'Its way, gram by gram' }).click();
  await lead.getByRole('heading', { level: 1, name: /Place Back room of the hall/ }).waitFor();
  await lead.getByText('Mouse droppings on the floor.').waitFor(); // among the holds that stand on it
});

test('a recall goes from the hold to the last household’s word, and two people let it go', async () => {
  const lead = await site.visit('packing-lead', NARROW);
  await lead.goto(`${site.root}/trace?kind=lot&id=${await lotOf('Hollis')}&task=recall`);
  await lead.getByRole('heading', { level: 1, name: /^(Every gram of )?Lot/ }).waitFor();
  await lead.locator('summary', { hasText: 'Put it on hold' }).focus();
  await lead.keyboard.press('Enter');
  await lead.getByLabel('Why it is put on hold').fill('The mill found stones.');
  await lead.keyboard.press('Enter');
  await lead.getByRole('heading', { level: 1, name: /is on hold\.$/ }).waitFor();
  await lead.getByText(/^0 of \d+ households have acknowledged it\./).waitFor();
  await isFine(lead);
  const holdPage = new URL(lead.url()).pathname;

  const member = await site.visit('member', NARROW);
  await acknowledge(member, 'The mill found stones.');
  await member.goto(holdPage);
  await member.getByRole('heading', { name: 'Say what became of it' }).waitFor();
  await isFine(member);
  await member.getByLabel('We have some of it, set aside').check();
  await member.getByLabel('We ate some, last on').fill('2026-11-15');
  await member.getByRole('button', { name: 'Say so' }).click();
  await member.getByText(/^You said so on/).waitFor();

  // Whoever no screen has reached gets it on paper; the member is reached by now.
  await lead.reload();
  await lead.getByRole('heading', { name: 'On paper, for whoever is not reached' }).waitFor();
  const papers = lead.locator('a', { hasText: /^Recall notice / });
  expect(await papers.filter({ hasText: 'Hollis' }).count()).toBe(0);
  const paper = await lead.request.get((await papers.first().getAttribute('href')) ?? '');
  expect([paper.status(), paper.headers()['content-type']]).toEqual([200, 'application/pdf']);

  // A slip comes back on paper and is keyed in: its household is reached without a screen.
  const slip = lead.locator('details', { hasText: 'Key in a slip that came back' });
  await slip.locator('summary').focus();
  await lead.keyboard.press('Enter');
  const notReached = (await papers.first().textContent()) ?? '';
  const names = await slip.getByLabel('Whose slip').locator('option').allTextContents();
  const whose = names.find((name) => notReached.includes(name)) ?? '';
  await slip.getByLabel('Whose slip').selectOption({ label: whose });
  await slip.getByLabel('Who signed it').fill('Ruth');
  const [day] = await site.database.admin<{ day: string }[]>`
    select (held_at at time zone 'America/Chicago')::date::text as day from book.hold order by held_at desc limit 1`;
  await slip.getByLabel('The day on the slip').fill(day?.day ?? '');
  await slip
    .getByLabel(/^What became of/)
    .first()
    .selectOption({ label: 'We have it aside' });
  await isFine(lead);
  await slip.getByRole('button', { name: 'Key the slip in' }).click();
  await lead.getByText(/Slip of .*, signed by Ruth; keyed in by/).waitFor();
  await lead.getByText(/^2 of \d+ households have acknowledged it\./).waitFor();

  const others = await acknowledgeAll(holdPage.split('/').at(-1) ?? '', 'The mill found stones.');
  expect(others).toBeGreaterThan(0);
  await lead.reload();
  await lead.getByText(`${others + 1} of ${others + 1} households have acknowledged it.`).waitFor();
  await lead.getByText(/^has some; ate some, last on/).waitFor();
  await lead.getByLabel('What was found').fill('Sieved, and no stone in any of it.');
  await lead.keyboard.press('Enter');
  await lead.getByText('Somebody else must agree to it now.').waitFor();

  const coordinator = await site.visit('coordinator', { ...NARROW, colorScheme: 'dark', locale: 'es-MX' });
  await coordinator.goto(holdPage);
  await coordinator.getByRole('button', { name: 'Aprobar y liberar' }).waitFor();
  await isFine(coordinator);
  await coordinator.getByRole('button', { name: 'Aprobar y liberar' }).click();
  await coordinator.getByRole('heading', { level: 1, name: /ya no está retenido\.$/ }).waitFor();
  await coordinator.goto(`${site.root}/holds`);
  await coordinator.getByRole('heading', { name: 'Terminadas' }).waitFor();
  await isFine(coordinator);
});
