import { saidFinish } from '@sheafbook/packing';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, cansOf, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let lead: Page;
let member: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  lead = (await site.enter('pat-corran@example.org')).page;
  member = (await site.enter('dell@example.org')).page;
});
afterAll(() => site.close());

const at = (path = '') => `/s/${storehouse.storehouseId}/packing${path}`;
const sessionPath = async () => {
  const { sessions } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/packing-sessions`));
  const { id } = sessions.find(({ name }: { name: string }) => name === 'Autumn canning');
  return `${storehouse.path}/packing-sessions/${id}`;
};
const logNow = async () => bodyOf(await hall.lead.caller.get(`${await sessionPath()}/log`));

test('the lead opens a day; what is missing is said at its field, and the typing is kept', async () => {
  await lead.goto(at());
  await lead.getByRole('heading', { name: 'No packing day is open.' }).waitFor();
  await lead.getByRole('link', { name: 'Open a packing day' }).click();
  await lead.getByLabel('Name').fill('Autumn canning');
  await lead.getByRole('button', { name: 'Open it' }).click();
  await lead.getByText('Choose a day.').waitFor();
  await lead.reload();
  expect(await lead.getByLabel('Name').inputValue()).toBe('Autumn canning');
  await lead.getByLabel('Day').fill('2026-09-19');
  await lead.getByLabel('Where').fill('the hall');
  await lead.getByRole('button', { name: 'Open it' }).click();
  await lead.getByRole('heading', { name: /^Autumn canning, / }).waitFor();
  expect(await listViolations(lead)).toEqual([]);
}, 180_000);

test('a day is moved to other hours and another to never; the typing is kept and everyone is told', async () => {
  await lead.getByRole('link', { name: 'Change the day or call it off' }).click();
  await lead.getByRole('heading', { name: 'Change Autumn canning' }).waitFor();
  await lead.getByLabel('Until').fill('08:00');
  await lead.getByRole('button', { name: 'Keep the change' }).click();
  await lead.getByText('A session ends after it starts.').waitFor();
  await lead.getByLabel('Until').fill('14:00');
  await lead.getByLabel('Minutes of rest').fill('20');
  await lead.getByText('Seconds that each station takes a container').click();
  await lead.getByLabel('wipe and label').fill('21');
  await lead.reload();
  expect(await lead.getByLabel('Until').inputValue()).toBe('14:00');
  expect(await listViolations(lead)).toEqual([]);
  await lead.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(lead)).toBe(0);
  await lead.setViewportSize({ width: 390, height: 844 });
  await lead.getByRole('button', { name: 'Keep the change' }).click();
  await lead.getByRole('heading', { name: /^Autumn canning, .* to 14:00\.$/ }).waitFor();
  const { session } = bodyOf(await hall.lead.caller.get(await sessionPath()));
  expect(session).toMatchObject({ endsAt: '2026-09-19T19:00:00.000Z', breakMinutes: 20, version: 2 });
  expect(session.stations[4]).toEqual({ name: 'label', secondsPerUnit: 21, staysAlone: false });

  await aPackingSession(storehouse, hall, { name: 'Never canning' });
  await lead.goto(at());
  await lead.getByRole('link', { name: /Never canning/ }).click();
  await lead.getByRole('link', { name: 'Change the day or call it off' }).click();
  await lead.getByRole('button', { name: 'Call off Never canning' }).click();
  await lead
    .getByText(/^(Write|Say) /)
    .first()
    .waitFor();
  await lead.getByLabel('Why').fill('No power in the hall.');
  await lead.getByRole('button', { name: 'Call off Never canning' }).click();
  await lead.getByText('called off').waitFor();
  await member.goto(at().replace('/packing', '/notices'));
  await member.getByText('Never canning is called off: No power in the hall.').waitFor();
  await lead.goto(at());
  await lead.getByRole('link', { name: /Autumn canning/ }).click();
}, 180_000);

test('a household says what it wants packed, never more than it owns, and books its time', async () => {
  await member.goto(at());
  await member.getByRole('link', { name: /Autumn canning/ }).click();
  await member.getByLabel('Food', { exact: true }).selectOption({ label: 'Hard red winter wheat' });
  await member.getByLabel('Containers', { exact: true }).fill('90');
  await member.getByLabel('In each').fill('2 kg');
  await member.getByText(/Never pack moist or fatty food/).waitFor(); // the caution of the treatment
  await member.getByRole('button', { name: 'Add', exact: true }).click();
  await member.getByText(/180000 g are asked for/).waitFor();
  await member.getByLabel('Containers', { exact: true }).fill('4');
  await member.getByRole('button', { name: 'Add', exact: true }).click();
  await member.getByText('Your containers take 2 minutes on a line.').waitFor();
  await member.getByText(/Nobody has measured its moisture/).waitFor();
  await member.getByLabel('Begin at').fill('03:00');
  await member.getByRole('button', { name: 'Book this time' }).click();
  await member.getByText(/does not lie between setting up and cleaning down/).waitFor();
  await member.getByLabel('Begin at').fill('10:30');
  await member.getByRole('button', { name: 'Book this time' }).click();
  await member.getByText('You are booked from 10:30 to 10:32 on line 1.').waitFor();
  await member.getByLabel('I come to help').check();
  await member.getByText('1 person comes to help so far.').waitFor();
  expect(await listViolations(member)).toEqual([]);
  await member.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(member)).toBe(0);
}, 180_000);

test('what no line can pack safely is refused with the reason, and one tap takes the nearest that fits', async () => {
  await member.getByLabel('Containers', { exact: true }).fill('1');
  await member.getByLabel('In each').fill('2 kg');
  await member.getByLabel('Treatment', { exact: true }).selectOption({ label: 'Dry ice' });
  await member.getByRole('button', { name: 'Add', exact: true }).click();
  await member.getByText('Dry ice is never put in a metal can: its gas can burst it.').waitFor();
  await member
    .getByRole('button', { name: /^Take instead: No\. 10 can, Oxygen absorber, .* in each$/ })
    .click();
  expect(await member.getByLabel('Treatment', { exact: true }).inputValue()).toBe('oxygen-absorber');
  expect(await listViolations(member)).toEqual([]);
}, 180_000);

test('the plan says when the day ends and what one person more would buy, as people are added', async () => {
  await lead.reload();
  await lead.getByRole('link', { name: 'Plan of the day' }).click();
  await lead.getByRole('heading', { name: /^4 containers, and the day ends at/ }).waitFor();
  await lead.getByText('One person more would not end the day sooner.').waitFor();
  const standing = lead.locator('section', { hasText: 'Who stands where' }).last();
  await standing
    .getByText(/^seam:/)
    .first()
    .waitFor();
  await standing.getByText('1 hand is missing').first().waitFor(); // one comes, untrained: nobody closes cans
  await lead.getByRole('button', { name: 'One person less' }).click();
  await lead.getByText('5 people at each line').waitFor();
  await lead.getByText(/sets the pace: 27 s a container/).waitFor();
  await lead.getByText(/One person more, at fill, weigh, absorber, would end the day/).waitFor();
  await settle(lead);
  expect(await listViolations(lead)).toEqual([]);
  await lead.goBack();
}, 180_000);

test('at the line the biggest key logs a container; what goes over is told, and a slip is taken back', async () => {
  await lead.getByRole('button', { name: 'Begin the day' }).click();
  await lead.getByRole('link', { name: 'Pour log' }).click();
  await lead.getByRole('heading', { name: 'Bring the first bag to the line.' }).waitFor();
  await lead.getByRole('button', { name: 'It is at the line' }).click();
  await lead.getByRole('button', { name: 'Container 1: log 2,000 g' }).click();
  await lead.getByRole('heading', { name: '1 container is closed.' }).waitFor();
  await lead.getByRole('button', { name: 'Another figure' }).click();
  await lead.getByLabel('On the scale', { exact: true }).fill('2070');
  const wall = (minutes: number) =>
    new Date(site.app.clock.now.getTime() + minutes * 60_000).toLocaleTimeString('en-GB', {
      ...{ timeZone: 'America/Chicago', hour: '2-digit', minute: '2-digit' },
    });
  await lead.getByLabel('When, if a pen wrote it first').fill(wall(30));
  await lead.getByText('That time is still to come.').waitFor();
  await lead.getByLabel('When, if a pen wrote it first').fill(wall(-20));
  await lead.getByRole('button', { name: 'Container 2: log 2,070 g' }).click();
  await lead.getByText(/^70 g over after 2 containers\. One in 57 is given away\./).waitFor();
  const byPen = (await logNow()).pours.at(-1);
  expect(Date.parse(byPen.pouredAt)).toBe(Math.floor(site.app.clock.now.getTime() / 60_000 - 20) * 60_000);
  await lead.getByRole('button', { name: 'Take 2 back' }).click();
  await lead.getByRole('heading', { name: '1 container is closed.' }).waitFor();
  expect(await listViolations(lead)).toEqual([]);
  await lead.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(lead)).toBe(0);
}, 180_000);

test('packets too small for the air in a can are refused at the line, and one tap puts in enough', async () => {
  await lead.getByText('Container, target and line').click();
  await lead.getByLabel('Packets in each take up').selectOption({ label: '100 ml of oxygen' });
  await lead.getByRole('button', { name: 'Container 2: log 2,000 g' }).click();
  await lead
    .getByText(/ml of oxygen; these take up 100 ml\./)
    .first()
    .waitFor();
  expect((await logNow()).pours.filter(({ isUndone }: { isUndone: boolean }) => !isUndone)).toHaveLength(1);
  await lead.getByText('1 thing was not taken by the book.').waitFor();
  await lead.getByRole('button', { name: 'Container 2: log 2,000 g' }).waitFor(); // what was refused has no number
  await lead.getByRole('button', { name: 'Take instead: packets for 500 ml' }).click();
  await lead.getByRole('heading', { name: '2 containers are closed.' }).waitFor();
  expect((await logNow()).pours.at(-1).absorberMillilitres).toBe(500);
  await lead.getByRole('button', { name: 'Take 3 back' }).click();
  await lead.getByRole('heading', { name: '1 container is closed.' }).waitFor();
  await lead.getByLabel('Packets in each take up').selectOption({ label: '500 ml of oxygen' });
}, 180_000);

test('without a signal pours wait on the phone, outlive a closed tab, and are sent once', async () => {
  const context = lead.context();
  site.cut(true);
  await context.setOffline(true);
  await lead.getByRole('button', { name: 'Container 2: log 2,000 g' }).click();
  await lead.getByText('1 thing waits on this phone').waitFor();
  // The absorbers' clock runs without a signal, too: a pack is opened, and what is left of it jarred.
  await lead.getByRole('button', { name: 'A pack is opened now' }).click();
  await lead.getByText('The pack may stand open.').waitFor();
  await lead.getByLabel('Packets left').fill('20');
  await lead.getByRole('button', { name: 'It is in its jar' }).click();
  await lead.getByText('3 things wait on this phone').waitFor();
  expect((await logNow()).packs).toEqual([]);
  await lead.getByRole('button', { name: 'Container 3: log 2,000 g' }).click();
  await lead.getByText('4 things wait on this phone').waitFor();
  const address = lead.url();
  await lead.close();
  expect((await logNow()).pours.filter(({ isUndone }: { isUndone: boolean }) => !isUndone)).toHaveLength(1);
  site.cut(false);
  await context.setOffline(false);
  lead = await context.newPage();
  await lead.clock.setFixedTime(site.app.clock.now);
  await lead.goto(address);
  await lead.getByRole('heading', { name: '3 containers are closed.' }).waitFor();
  const { pours } = await logNow();
  expect(pours.filter(({ isUndone }: { isUndone: boolean }) => !isUndone)).toHaveLength(3);
  await expect
    .poll(async () => (await logNow()).packs, { timeout: 30_000 })
    .toMatchObject([{ packets: 25, packetsLeft: 20, state: 'shut' }]);
}, 180_000);

test('the lead’s first page answers what a running day asks, without a search', async () => {
  const address = lead.url();
  await lead.goto(at());
  await lead.getByRole('heading', { name: 'The day at a glance' }).waitFor();
  for (const question of ['Does the mass add up?', 'Do we have all supplies?', 'Is the seamer in limits?'])
    await lead.getByText(question).waitFor();
  const answers = Object.fromEntries(
    await lead.evaluate<[string, string][]>(
      "[...document.querySelectorAll('.glance > div')].map((one) => [one.children[0].innerText, one.children[1].innerText])",
    ),
  );
  const { lines, session, crew } = bodyOf(await hall.lead.caller.get(`${await sessionPath()}/plan`));
  const ends = new Date(Date.parse(session.startsAt) + saidFinish(lines[0].finishSeconds) * 1000);
  const hour = new Intl.DateTimeFormat('en-GB', { timeStyle: 'short', timeZone: 'America/Chicago' }).format(
    ends,
  );
  expect(answers).toMatchObject({
    'When will we finish?': `At ${hour}, with 4 containers.`,
    'Do enough people come?': expect.stringContaining(
      `Ask ${crew.moreToAsk} people more. ${crew.wanted} are wanted`,
    ),
    'Where does it jam?': expect.stringMatching(/^By the plan, seam: 24 s a container\./),
    'Do we have all supplies?': expect.stringMatching(/short|on no list/),
    'In what order do the foods run?': 'Hard red winter wheat',
    'Are we over-pouring?': 'No: nothing is given away.',
    'Is the seamer in limits?': 'No line has closed anything yet.',
    'Which cans are suspect?': 'None.',
    'When must the open absorber pack be shut?': 'No pack stands open.',
    'What is the heaviest lift?': expect.stringMatching(/^Bag \d+: .* between knee and chest/),
    'What is left for clean-down?': expect.stringMatching(/^Machines unplugged; .* Photo taken/),
    'Does the mass add up?': 'By the book nothing is missing; 1 bag is still to be weighed back.',
  });
  expect([await listViolations(lead), await overflowOf(lead)]).toEqual([[], 0]);
  const late = Date.parse(session.startsAt) + 6 * 3_600_000;
  await lead.clock.setFixedTime(late);
  await lead.reload();
  await lead.getByText(new RegExp(`as it goes, \\d+ minutes behind the plan’s ${hour}`)).waitFor();
  await lead.clock.setFixedTime(site.app.clock.now);
  await lead.goto(address);
  await lead.getByRole('heading', { name: '3 containers are closed.' }).waitFor();
  await lead.getByText('Clean-down: 9 things left').click();
  await lead.getByLabel('Machines unplugged').check();
  await lead.reload(); // a tick outlives the tab
  await lead.getByText('Clean-down: 8 things left').waitFor();
}, 180_000);

test('the absorbers’ clock runs while a pack is open, and the mass is signed once nothing is missing', async () => {
  await lead.getByRole('button', { name: 'A pack is opened now' }).click();
  await lead.getByText('The pack may stand open.').waitFor();
  await lead.clock.setFixedTime(new Date(site.app.clock.now.getTime() + 17 * 60_000));
  await lead.getByText('Jar them now.').waitFor();
  await lead.clock.setFixedTime(site.app.clock.now);
  await lead.getByLabel('Packets left').fill('22');
  await lead.getByRole('button', { name: 'It is in its jar' }).click();
  await lead.getByRole('button', { name: 'A pack is opened now' }).waitFor();
  await lead.getByText('Something was spilled or sampled').click();
  await lead.getByLabel('How much was that').fill('30 g');
  await lead.getByRole('button', { name: 'Spilled', exact: true }).click();
  await lead.getByRole('button', { name: 'Sign the mass' }).click();
  await lead.getByText(/has not been weighed yet/).waitFor();
  const [bag] = (await logNow()).bags;
  await lead.getByText('Weigh back what is left').click();
  await lead.getByLabel('Left in the bag').fill(`${bag.broughtGrams - 6000 - 30 - 12}`);
  await lead.getByRole('button', { name: 'Keep this weight' }).click();
  await lead.getByText('12 g are missing.').waitFor();
  await lead.getByRole('button', { name: 'Sign the mass' }).click();
  await lead.getByRole('heading', { name: '3 containers, signed.' }).waitFor();
  expect((await logNow()).stage).toBe('signed');
  await lead.getByText('Signed: 12 g are booked as dust.').waitFor();
  await lead.goto(at());
  await lead.getByText('What the last day left: Autumn canning').waitFor();
  await lead.getByText('Signed: 12 g are booked as dust.').waitFor();
}, 180_000);

test('without a signal a bag is brought, poured from and weighed back; the book takes each once, and what it refuses holds what hangs on it', async () => {
  const day = await aPackingSession(storehouse, hall, { name: 'Winter canning' });
  for (const name of ['Ashdown', 'Birchall'] as const)
    bodyOf(
      await hall.buy.households[name].caller.put(`${day}/wishes`, {
        wishes: [cansOf(hall, { containers: 3, gramsEach: 2000 })],
      }),
    );
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  const read = async () => bodyOf(await hall.lead.caller.get(`${day}/log`));
  const ownOf = (name: 'Ashdown' | 'Birchall') =>
    `${hall.wheat[name].bagId} ${hall.buy.households[name].householdId}`;
  const context = lead.context();
  const lose = async (isLost: boolean) => {
    site.cut(isLost);
    await context.setOffline(isLost);
  };
  const reopen = async () => {
    await lead.close();
    lead = await context.newPage();
    lead.setDefaultTimeout(40_000);
    await lead.clock.setFixedTime(site.app.clock.now);
    await lead.goto(address);
  };
  const bringing = () => lead.locator('details', { hasText: 'Bring a bag to the line' });
  const bring = async (name: 'Ashdown' | 'Birchall') => {
    await bringing().getByLabel('Whose bag').selectOption(ownOf(name));
    await bringing().getByRole('button', { name: 'It is at the line' }).click();
  };
  const address = at(`/${day.split('/').at(-1)}/log`);
  await lead.goto(address);
  await lead.getByRole('heading', { name: 'Bring the first bag to the line.' }).waitFor();
  await bringing().getByLabel('Whose bag').waitFor();
  await settle(lead);
  const topOf = async (one: ReturnType<Page['locator']>) => (await one.boundingBox())?.y ?? Number.NaN;
  expect(await topOf(bringing())).toBeLessThan(await topOf(lead.getByRole('heading', { name: 'Absorbers' })));

  await lose(true);
  await bring('Birchall');
  await lead.getByText(/^Brought to the line: Hard red winter wheat, Birchall, bag \d+/).waitFor();
  await lead.getByRole('button', { name: 'Container 1: log 2,000 g' }).click();
  await lead.getByRole('button', { name: 'Container 2: log 2,000 g' }).click();
  await lead.getByText('Weigh back what is left').click();
  const [expected = ''] =
    (await lead.getByText(/^By the book [\d,]+ g\.$/).textContent())?.match(/[\d,]+/) ?? [];
  const left = Number(expected.replace(',', '')) - 15;
  await lead.getByLabel('Left in the bag').fill(`${left} g`);
  await lead.getByRole('button', { name: 'Keep this weight' }).click();
  await lead.getByText(/^Weighed back: Hard red winter wheat, Birchall, bag \d+, [\d,]+ g left/).waitFor();
  await lead.getByText('4 things wait on this phone').waitFor();
  await lead.getByText('No signal. Signing needs one: you sign what the book has counted.').waitFor();
  expect(await lead.getByRole('button', { name: 'Sign the mass' }).isDisabled()).toBe(true);
  expect(await listViolations(lead)).toEqual([]);
  await lead.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(lead)).toBe(0);
  await lead.setViewportSize({ width: 390, height: 844 });
  expect(await read()).toMatchObject({ bags: [], pours: [] });

  await reopen(); // still without a signal
  await lead.getByText('4 things wait on this phone').waitFor();
  await bringing().locator('summary').click();
  await bring('Ashdown');
  await lead.getByLabel('Whose bag').first().selectOption(ownOf('Ashdown'));
  await lead.getByRole('button', { name: 'Container 1: log 2,000 g' }).click();
  await lead.getByText('6 things wait on this phone').waitFor();
  expect(hall.wheat.Ashdown.bagId).not.toBe(hall.wheat.Birchall.bagId);
  const { id: hold } = bodyOf(
    await hall.lead.caller.post(`${storehouse.path}/bags/${hall.wheat.Ashdown.bagId}/holds`, {
      reason: 'It smells of diesel.',
    }),
    201,
  );

  await lose(false);
  await reopen();
  await lead.getByText('1 thing was not taken by the book.').waitFor();
  await lead.getByText('It waits behind its bag, which was not taken. Nothing is lost.').waitFor();
  expect(await lead.getByRole('button', { name: 'Throw it away' }).count()).toBe(1); // the pour, not its bag
  const sent = await read();
  expect(sent.bags).toMatchObject([{ household: 'Birchall', leftInBagsGrams: left, unaccountedGrams: 15 }]);
  expect(sent.pours).toMatchObject([{ grams: 2000 }, { grams: 2000 }]);
  expect(await listViolations(lead)).toEqual([]);

  bodyOf(
    await hall.lead.caller.post(`${storehouse.path}/holds/${hold}/release-request`, { finding: 'Aired.' }),
  );
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/holds/${hold}/release`));
  await lead.getByRole('button', { name: 'Bring it again' }).click();
  await lead.getByRole('heading', { name: '3 containers are closed.' }).waitFor();
  await lead.getByText('It waits behind its bag').waitFor({ state: 'detached' });
  const all = await read();
  expect(all.bags).toHaveLength(2);
  expect(all.pours.map(({ bagId }: { bagId: string }) => bagId)).toEqual([
    ...[hall.wheat.Birchall.bagId, hall.wheat.Birchall.bagId, hall.wheat.Ashdown.bagId],
  ]);
  // A signature stands under what the book has counted, so it alone is not put off.
  site.cut(true);
  await lead.getByRole('button', { name: 'Sign the mass' }).click();
  await lead.getByText('No signal. Signing needs one: you sign what the book has counted.').waitFor();
  site.cut(false);
  expect((await read()).stage).toBe('running');
}, 180_000);
