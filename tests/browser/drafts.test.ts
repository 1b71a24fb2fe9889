import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let desk: Visit;
beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  desk = await site.enter('coordinator@example.org');
}, 120_000);
afterAll(() => site.close());

/** A field by its label, what is typed or chosen in it, and what stands in it while nobody has typed. */
type Typed = {
  readonly label: string;
  readonly text: string;
  readonly before?: string;
  readonly isChoice?: true;
};
type FormOf = {
  readonly what: string;
  readonly at: string;
  /** What unfolds the form. */
  readonly unfold?: string;
  readonly fields: readonly Typed[];
  readonly send: string;
  /** What stands on the page when it was sent. */
  readonly sent: (page: Page) => Promise<unknown>;
  /** A form that changes a thing shows what was sent; all others stand empty again. */
  readonly isOfThing?: true;
};

const FORMS: readonly FormOf[] = [
  {
    what: 'a new place',
    at: 'places/new',
    fields: [
      { label: 'What you call it', text: 'Under the stairs' },
      { label: 'Is it damp?', text: 'yes', isChoice: true },
    ],
    send: 'Save',
    sent: (page) => page.getByRole('heading', { name: 'Under the stairs' }).waitFor(),
  },
  {
    what: 'an invitation',
    at: 'people/invitations',
    fields: [
      { label: 'Its name, if you know it', text: 'Fenwick' },
      { label: 'Good for days', text: '21', before: '14' },
    ],
    send: 'Make the link',
    sent: (page) => page.getByText('This is shown once.').waitFor(),
  },
  {
    what: 'a further supply',
    at: 'packing/supplies',
    unfold: 'Keep a further supply',
    fields: [
      { label: 'Name', text: 'Grease pencils' },
      { label: 'What it is', text: 'other', before: 'container', isChoice: true },
      { label: 'Pieces in a pack', text: '12' },
      { label: 'Price of a pack (USD)', text: '3.50' },
    ],
    send: 'Keep it',
    sent: (page) => page.getByText('3.50').first().waitFor(),
  },
  {
    what: 'a kind of container',
    at: 'containers',
    unfold: 'Add a kind of your own',
    fields: [
      { label: 'Name in English', text: 'Jar with a clip' },
      { label: 'Code, for labels', text: 'jar-clip' },
      { label: 'Holds, in litres', text: '2.1' },
      { label: 'Says who', text: 'filled level with water and weighed' },
    ],
    send: 'Add this kind',
    sent: (page) => page.getByText('Jar with a clip').first().waitFor(),
  },
  {
    what: 'a pantry and its card',
    at: 'giving/pantries/new',
    fields: [
      { label: 'Its name', text: 'Harbour pantry' },
      { label: 'Where its door is', text: '7 Quay Street' },
      { label: 'Whom to ask for there, by duty', text: 'intake desk' },
      { label: 'Way there, one way (mi)', text: '3.5' },
      { label: 'Who said so there, by duty', text: 'intake desk' },
      { label: 'Tuesday, opens', text: '09:00' },
      { label: 'Tuesday, closes', text: '12:00' },
      { label: 'Does it take what a maker sealed?', text: 'yes', isChoice: true },
    ],
    send: 'Add a pantry',
    sent: (page) => page.getByRole('heading', { name: 'Harbour pantry' }).waitFor(),
  },
  {
    what: 'how the household is reached',
    at: 'household/private',
    fields: [
      { label: 'Telephone', text: '555 0142' },
      { label: 'Address', text: '3 Alder Row' },
    ],
    send: 'Save',
    sent: (page) => page.getByText('Saved').waitFor(),
    isOfThing: true,
  },
  {
    what: 'the rules of the group',
    at: 'settings',
    fields: [
      { label: 'Deposit, in percent', text: '55', before: '40' },
      { label: 'Common stock takes at most', text: '45 kg' },
    ],
    send: 'Put in force',
    sent: (page) => page.getByText('goes by version 2 of its rules').waitFor(),
    isOfThing: true,
  },
];

const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });
const standing = (page: Page, form: FormOf) =>
  Promise.all(form.fields.map(async ({ label }) => [label, await field(page, label).inputValue()]));
const draftsOf = (page: Page): Promise<string[]> =>
  page.evaluate("Object.keys(localStorage).filter((key) => key.startsWith('sheafbook.draft.'))");

/** Another tab of the same browser, with the form unfolded. */
async function open(form: FormOf): Promise<Page> {
  const page = await desk.page.context().newPage();
  await page.goto(`/s/${storehouse.storehouseId}/${form.at}`);
  await settle(page);
  if (form.unfold) await page.getByText(form.unfold, { exact: true }).click();
  await field(page, form.fields[0]?.label ?? '').waitFor();
  return page;
}

test.for(FORMS)('what is typed of $what outlives its tab and is gone once it was sent', async (form) => {
  let page = await open(form);
  const before = await standing(page, form);
  for (const { label, before: first } of form.fields)
    if (first !== undefined) expect([label, await field(page, label).inputValue()]).toEqual([label, first]);
  for (const { label, text, isChoice } of form.fields)
    await (isChoice ? field(page, label).selectOption(text) : field(page, label).fill(text));
  await page.close();

  page = await open(form);
  expect(await standing(page, form)).toEqual(form.fields.map(({ label, text }) => [label, text]));
  await page.getByRole('button', { name: form.send, exact: true }).last().click();
  await form.sent(page);
  await page.close();

  page = await open(form);
  expect(await draftsOf(page)).toEqual([]);
  if (!form.isOfThing) expect(await standing(page, form)).toEqual(before);
  await page.close();
});

const contactForm = FORMS.find(({ at }) => at === 'household/private') as FormOf;

test('what was begun before somebody else saved is dropped, and what they saved stands there', async () => {
  let page = await open(contactForm);
  await field(page, 'Telephone').fill('555 0199');
  await page.close();
  const { households } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/households`));
  const path = `${storehouse.path}/households/${households[0].id}/contact`;
  const contact = bodyOf(await storehouse.coordinator.get(path));
  const { version, address, email, shownToMembers } = contact;
  bodyOf(
    await storehouse.coordinator.put(path, { version, address, email, shownToMembers, phone: '555 0177' }),
  );

  page = await open(contactForm);
  expect(await field(page, 'Telephone').inputValue()).toBe('555 0177');
  expect(await draftsOf(page)).toEqual([]);
  await page.close();
});

test('a draft of an older form, or one half written, is dropped and breaks nothing', async () => {
  const [place = FORMS[0] as FormOf] = FORMS;
  let page = await open(place);
  await field(page, 'What you call it').fill('Loft');
  const [name] = await draftsOf(page);
  for (const kept of ['{"version":0,"typed":{"name":["Loft"],"kind":7}}', '{"version":0,"typ']) {
    await page.evaluate(`localStorage.setItem(${JSON.stringify(name)}, ${JSON.stringify(kept)})`);
    await page.close();
    page = await open(place);
    expect(await field(page, 'What you call it').inputValue()).toBe('');
    expect(await draftsOf(page)).toEqual([]);
  }
  await page.close();
});

test('whoever signs out leaves nothing typed to the next person at the same screen', async () => {
  const [place = FORMS[0] as FormOf] = FORMS;
  const page = await open(place);
  await field(page, 'What you call it').fill('Loft');
  expect(await draftsOf(page)).toHaveLength(1);
  await page.goto(`/s/${storehouse.storehouseId}/household`);
  await page.getByRole('button', { name: 'Sign out here' }).click();
  await page.waitForURL(/sign-in/);
  expect(await draftsOf(page)).toEqual([]);
});
