import { spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, cansOf, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { aFakeCamera } from './support/fake-camera.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

const camera = aFakeCamera();
let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let session: string;
let codes: string[];
let member: Visit;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z', camera.browserArgs);
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  session = await aPackingSession(storehouse, hall);
  const { Dell } = hall.buy.households;
  await Dell.caller.put(`${session}/wishes`, { wishes: [cansOf(hall, { containers: 2 })] });
  bodyOf(await hall.lead.caller.post(`${session}/start`, {}));
  await bringWheat(hall, session, 'Dell');
  const poured = await hall.lead.caller.post(
    `${session}/pours`,
    aPourBody(hall, { name: 'Dell', grams: [2000, 2010] }),
  );
  codes = bodyOf(poured, 201).containers.map(({ code }: { code: string }) => code);
  member = await site.enter('dell@example.org');
});
afterAll(async () => {
  await site.close();
  camera.close();
});

const [first, second] = [() => codes[0] ?? '', () => codes[1] ?? ''];
const shelf = () => `/s/${storehouse.storehouseId}/shelf`;

/** The mark of a container's label, from the sheet that a household prints. */
async function labelOf(code: string) {
  const { caller } = hall.buy.households.Dell;
  const path = `${storehouse.path}/labels/paper?sheet=a4-8&codes=${code}`;
  const [mark] = (await printed(caller, path)).pages.flatMap(({ marks }) => marks);
  if (!mark) throw new Error('the label has no mark');
  return mark;
}

test('the camera belongs to our own pages alone, and nothing else of a phone to anybody', async () => {
  const answer = await site.app.as().get('/api/health');
  expect(answer.headers.get('Permissions-Policy')).toMatch(
    /camera=\(self\), microphone=\(\), geolocation=\(\)/,
  );
});

test('where there is no camera a plain word says so, and the code can be typed', async () => {
  const { page } = member;
  await page.goto(shelf());
  await page.getByRole('button', { name: 'Scan a label' }).click();
  await page.getByRole('alert').getByText('The camera was not allowed, or there is none.').waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page.getByLabel('Find by food, kind or code').fill(spellCode(second()).toLowerCase());
  await page.getByRole('link', { name: new RegExp(spellCode(second())) }).click();
  await page.getByText(spellCode(second()), { exact: true }).waitFor();
});

test('a printed label held before the camera opens its container', async () => {
  const { page, strays, complaints } = member;
  camera.show(await labelOf(first()));
  await page.goto(shelf());
  await page.getByRole('button', { name: 'Scan a label' }).click();
  await page.waitForURL(/\/shelf\/[0-9a-f-]{36}$/);
  await page.getByText(spellCode(first()), { exact: true }).waitFor();
  expect(strays).toEqual([]);
  expect(complaints).toEqual([]);
});

test('a mark that is no label is told, and the camera looks on until it is closed', async () => {
  const { page } = member;
  const [paper] = (await printed(hall.lead.caller, `${session}/papers/run-sheet`)).pages;
  const [mark] = paper?.marks ?? [];
  if (!mark) throw new Error('the run sheet has no mark');
  camera.show(mark);
  await page.goto(shelf());
  await page.getByRole('button', { name: 'Scan a label' }).click();
  await page.getByText('That mark is not the label of a container.').waitFor();
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Close the camera' }).click();
  await page.getByRole('button', { name: 'Scan a label' }).waitFor();
});

test('at the line a can is told by its label or its code, and a slip is told before anybody is asked', async () => {
  const { page } = await site.enter('pat-corran@example.org');
  await page.goto(`${session.replace('/api/storehouses', '/s').replace('packing-sessions', 'packing')}/log`);
  camera.show(await labelOf(second()));
  await page.getByRole('button', { name: 'Scan a label' }).click();
  await page.getByText('Container 2 of line 1.').waitFor();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  const code = page.getByLabel('Code on the label');
  const right = first();
  const wrong = `${right.slice(0, 3)}${right[3] === 'A' ? 'B' : 'A'}${right.slice(4)}`;
  const at = [...right].findIndex((sign, index) => index > 0 && sign !== right[index - 1]);
  const swapped = `${right.slice(0, at - 1)}${right[at]}${right[at - 1]}${right.slice(at + 1)}`;
  for (const slip of [wrong, swapped]) {
    await code.fill(slip);
    await page.getByText(/a sign was misread, or two were swapped/).waitFor();
    expect(await page.getByRole('button', { name: 'Find it' }).isDisabled()).toBe(true);
  }
  expect(await listViolations(page)).toEqual([]);
  await code.fill(right);
  await page.getByRole('button', { name: 'Find it' }).click();
  await page.getByText('Container 1 of line 1.').waitFor();
  expect(asked).toEqual([]);
});

test('a label leads to the whole way of its container, from the trace and from the holds, by camera or by code', async () => {
  const { page } = await site.enter('pat-corran@example.org');
  const root = `/s/${storehouse.storehouseId}`;
  camera.show(await labelOf(second()));
  await page.goto(`${root}/trace`);
  await page.getByRole('button', { name: 'Scan a label' }).click();
  await page.waitForURL(new RegExp(`code=${second()}`));
  await page.getByRole('heading', { level: 1, name: new RegExp(spellCode(second())) }).waitFor();
  expect(await listViolations(page)).toEqual([]);

  await page.goto(`${root}/holds`);
  await page.getByText('Find it by its label').click();
  const code = page.getByLabel('Code on the label');
  const right = first();
  await code.fill(`${right.slice(0, -1)}${right.endsWith('A') ? 'B' : 'A'}`);
  await page.getByText(/a sign was misread, or two were swapped/).waitFor();
  expect(await page.getByRole('button', { name: 'Find it' }).isDisabled()).toBe(true);
  await page.setViewportSize({ width: 320, height: 844 });
  expect([await listViolations(page), await overflowOf(page)]).toEqual([[], 0]);
  await code.fill(right);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: new RegExp(spellCode(right)) }).waitFor();
});

test('a label made ahead stands on its can: scanned at the pour, the can is logged under its code', async () => {
  const { page } = await site.enter('pat-corran@example.org');
  const at = session.replace('/api/storehouses', '/s').replace('packing-sessions', 'packing');
  await page.goto(at);
  await page.getByRole('link', { name: 'Labels ahead' }).click();
  await page.getByRole('heading', { name: 'No label is made ahead.' }).waitFor();
  await page.getByLabel('How many labels').fill('2');
  await page.getByRole('button', { name: 'Make the labels' }).click();
  await page.getByRole('heading', { name: '2 labels wait for their containers.' }).waitFor();
  expect(await listViolations(page)).toEqual([]);
  const href = await page.getByRole('link', { name: 'Open the labels to print' }).getAttribute('href');
  const [first, second] = (await printed(hall.lead.caller, href ?? '')).pages.flatMap(({ marks }) => marks);
  if (!first || !second) throw new Error('two labels have two marks');
  camera.show(second);
  await page.goto(`${at}/log`);
  await page.getByText('It has a label already').click();
  await page.getByRole('button', { name: 'Scan a label' }).first().click();
  await expect.poll(() => page.getByLabel('Code on its label').inputValue()).not.toBe('');
  const code = (await page.getByLabel('Code on its label').inputValue()).replaceAll(' ', '');
  await page.getByLabel('Code on its label').fill(`${code.slice(0, -1)}${code.endsWith('A') ? 'B' : 'A'}`);
  await page.getByText(/a sign was misread, or two were swapped/).waitFor();
  expect(await page.getByRole('button', { name: /^Container 3: log/ }).isDisabled()).toBe(true);
  await page.getByLabel('Code on its label').fill(code);
  await page.getByText('Labels made ahead say 5 Dec 2026.').waitFor();
  await page.clock.setFixedTime('2026-12-05T18:00:00Z'); // noon of the planned day in Chicago: they say the truth
  await page.getByLabel('Code on its label').fill(`${code} `);
  await page.getByText('Labels made ahead say').waitFor({ state: 'detached' });
  await page.clock.setFixedTime(site.app.clock.now);
  await page.getByLabel('Code on its label').fill(code);
  await page.getByRole('button', { name: /^Container 3: log/ }).click();
  await page.getByRole('heading', { name: '3 containers are closed.' }).waitFor();
  const { pours } = bodyOf(await hall.lead.caller.get(`${session}/log`));
  expect(pours.at(-1).code).toBe(code);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
});
