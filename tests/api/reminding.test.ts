import { extract } from 'letterparser';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import type { Caller, TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, foodIdsOf, type TestBuy } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aFixedBuy, type GrainHouseholds, openGrain, payDeposits } from '../support/fixed-buy.ts';
import { aHousehold, aPersonOf } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { refusalOf } from '../support/landing-books.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let catcher: Catcher;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  catcher = await openCatcher();
});
beforeEach(() => {
  catcher.caught.length = 0;
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

type Letter = { to: string; subject: string; text: string; html: string; source: string };

/** What everybody is written to, once everything that is due in the background is done. */
async function lettersAt(instant: string): Promise<Letter[]> {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught.map(({ to, source }) => {
    const { subject = '', text = '', html = '' } = extract(source);
    return { to, subject, text: text.replaceAll('\r\n', '\n'), html, source };
  });
}
const subjectsTo = (letters: readonly Letter[], to: string) =>
  letters
    .filter((letter) => letter.to === to)
    .map(({ subject }) => subject.replace('Alder Row Storehouse: ', ''));
const DELL = 'dell@example.org';
const linkIn = ({ text }: Letter): string => /http:\/\/\S+(\/stop\/\S+)/.exec(text)?.[1] ?? '';
const wishesOf = async (caller: Caller, change: Record<string, unknown>) => {
  const path = `${storehouse.path}/telling-wishes`;
  const { kinds, isEmailPossible, ...wishes } = bodyOf(await caller.get(path));
  expect(isEmailPossible).toBe(false); // the app that answers here has no mail; the worker has
  const off = kinds.filter(({ isOn }: { isOn: boolean }) => !isOn).map(({ kind }: { kind: string }) => kind);
  return bodyOf(await caller.put(path, { ...wishes, stoppedKinds: off, ...change }));
};
async function moveClosing(buy: TestBuy, gatheringClosesAt: string): Promise<void> {
  const { version, name, landingPlace } = bodyOf(await storehouse.coordinator.get(buy.path));
  const edit = { version, name, landingPlace, landingOn: null, orderOn: '2026-10-20', gatheringClosesAt };
  bodyOf(await storehouse.coordinator.put(buy.path, edit));
}

describe('a gathering that closes, for a household that has not pledged', () => {
  let rye: TestBuy;
  beforeAll(async () => {
    app.clock.now = new Date('2026-09-01T15:00:00Z');
    rye = await aBuy(app, storehouse, { name: 'Rye & oats' });
    await aPledge(households.Corran.caller, rye, { wanted: 50 });
    await lettersAt('2026-09-16T15:00:00Z'); // what the opening was told with
  });

  test('is written about three days before and on the day, once each, and never to who has pledged', async () => {
    expect(subjectsTo(await lettersAt('2026-09-16T16:00:00Z'), DELL)).toEqual([]);
    const letters = await lettersAt('2026-09-17T15:00:00Z');
    expect(subjectsTo(letters, DELL)).toEqual(['Rye & oats closes Sunday, 20 September 2026 at 18:00']);
    expect(subjectsTo(letters, 'corran@example.org')).toEqual([]);
    expect(await lettersAt('2026-09-17T15:15:00Z')).toEqual([]);
    expect(await lettersAt('2026-09-18T15:00:00Z')).toEqual([]);
    expect(subjectsTo(await lettersAt('2026-09-20T15:00:00Z'), DELL)).toHaveLength(1);
    expect(subjectsTo(await lettersAt('2026-09-20T15:15:00Z'), DELL)).toEqual([]);
  });

  test('is written as text and as HTML that fetches nothing, with a link there and one to stop', async () => {
    await moveClosing(rye, '2026-09-25T23:00:00Z');
    const letters = await lettersAt('2026-09-22T15:00:00Z');
    const letter = letters.find(({ to }) => to === DELL) as Letter;
    const { storehouseId } = storehouse;
    const [, token] = /\/stop\/[^/]+\/(\S+)/.exec(letter.text) ?? [];
    const stop = `http://127.0.0.1:4180/stop/${storehouseId}/${token}`;
    expect(letter.text.trim()).toBe(
      [
        'Rye & oats gathers pledges until Friday, 25 September 2026 at 18:00, and your household has made none. Pledge what you want of it, or let it pass.',
        `Open it: http://127.0.0.1:4180/s/${storehouseId}/buys/${rye.buyId}`,
        '',
        `Stop letters about this: ${stop}`,
      ].join('\n'),
    );
    expect(letter.html).toContain('Rye &#38; oats gathers pledges');
    expect(letter.html).not.toMatch(/<img|src=|<script|<style|url\(/i);
    expect(letter.source.replaceAll(/\r\n\s+/g, ' ')).toContain(`List-Unsubscribe: <${stop}>`);
  });

  test('moving it has told anew; a pledge in time ends it, and so does calling the buy off', async () => {
    await moveClosing(rye, '2026-09-29T23:00:00Z');
    await aPledge(households.Dell.caller, rye, { wanted: 50 });
    const letters = await lettersAt('2026-09-26T15:00:00Z');
    expect(subjectsTo(letters, DELL)).toEqual([]);
    expect(subjectsTo(letters, 'birchall@example.org')).toEqual([
      'Rye & oats closes Tuesday, 29 September 2026 at 18:00',
    ]);
    const off = { reason: 'The mill burnt.', cancellationCosts: [], cancellationNote: '' };
    bodyOf(await storehouse.coordinator.post(`${rye.path}/calling-off`, off), 200, 201);
    const told = await lettersAt('2026-09-29T15:00:00Z');
    expect(subjectsTo(told, 'birchall@example.org')).toEqual([]);
    expect(subjectsTo(told, DELL)).toEqual(['Rye & oats']); // the notice that it is off
  });
});

describe('a fixed buy', () => {
  test('reminds each household of its own deposit and of nobody else’s, without amounts', async () => {
    app.clock.now = new Date('2026-10-01T15:00:00Z');
    const closes = { gatheringClosesAt: '2026-10-05T23:00:00Z', orderOn: '2026-10-09' };
    const buy = await aFixedBuy(app, storehouse, { households, ...closes } as never);
    const [ask] = await app.admin<{ due: string }[]>`select min(due_on)::text as due from book.deposit_ask
      where buy_id = ${buy.buyId}`;
    await payDeposits(buy, { Corran: 5300 });
    const letters = await lettersAt(`${ask?.due}T15:00:00Z`);
    const deposits = letters.filter(({ subject }) => subject.includes('deposit'));
    expect(deposits.map(({ to }) => to).toSorted()).toEqual([
      'birchall@example.org',
      'coordinator@example.org',
      DELL,
    ]);
    const names = ['Ashdown', 'Birchall', 'Corran', 'Dell'];
    for (const { to, text, html, subject } of letters) {
      expect(`${subject} ${text} ${html}`).not.toMatch(/\b(72|63|53|23)\.00\b/);
      const others = names.filter((name) => !to.startsWith(name.toLowerCase()));
      for (const other of others) expect(`${subject} ${text}`).not.toContain(other);
    }
  });
});

describe('in their own way', () => {
  test('a letter comes in the reader’s language, in the reader’s hours, and names the zone of its time', async () => {
    app.clock.now = new Date('2026-11-01T15:00:00Z');
    const hale = await aHousehold(app, storehouse, 'Hale');
    await wishesOf(hale.caller, { language: 'es', timeZone: 'Europe/Berlin', fromHour: 7, toHour: 9 });
    const spelt = await aBuy(app, storehouse, {
      ...{ name: 'Spelt', gatheringClosesAt: '2026-11-20T23:00:00Z', orderOn: '2026-11-24' },
      quote: { validUntil: '2026-12-31' },
    });
    expect(subjectsTo(await lettersAt('2026-11-18T15:00:00Z'), 'hale@example.org')).toEqual([]);
    const letters = await lettersAt('2026-11-19T06:30:00Z'); // 07:30 in Berlin
    const own = letters.filter(({ to, subject }) => to === 'hale@example.org' && subject.includes('cierra'));
    expect(own.map(({ subject }) => subject)).toEqual([
      'Alder Row Storehouse: Spelt cierra: viernes, 20 de noviembre de 2026, 17:00 (America/Chicago)',
    ]);
    expect(own[0]?.text).toContain('No más cartas sobre esto');
    expect(spelt.buyId).toBeTruthy();
  });

  test('a letter about a food on hold names the food in the reader’s language', async () => {
    const at = (rest: string) => `${storehouse.path}${rest}`;
    app.clock.now = new Date('2026-11-20T12:00:00Z');
    const lead = await aHousehold(app, storehouse, 'Lowe', { duties: ['packing_lead'] });
    await wishesOf(lead.caller, { language: 'es' });
    const rice = { food: 'rice-white-long', gramsEach: 2_000, packedOn: '2026-08-10' };
    await (await stockOf(storehouse, households.Dell)).bringCan(rice);
    const foodId = (await foodIdsOf(storehouse))['rice-white-long'];
    const of = { scope: 'food', foodId, fromOn: '2026-08-01', toOn: '2026-08-31' };
    bodyOf(await lead.caller.post(at('/holds'), { of, reason: 'A notice of the mill.' }), 201);
    const letters = await lettersAt('2026-11-20T15:00:00Z');
    const held = (to: string) => subjectsTo(letters, to).filter((subject) => /rice|Arroz/.test(subject));
    expect(held('lowe@example.org')).toContain('Retenido: Arroz blanco largo');
    expect(held('lowe@example.org').join()).not.toContain('rice');
    expect(held('coordinator@example.org')).toContain('On hold: White rice, long grain');
  });

  test('a daily letter holds everything of the day, and comes once', async () => {
    app.clock.now = new Date('2026-11-20T17:00:00Z');
    const isle = await aHousehold(app, storehouse, 'Isle');
    await wishesOf(isle.caller, { digestHour: 18 });
    const told = (about: string) =>
      storehouse.coordinator.post(`${storehouse.path}/notices`, {
        ...{ audience: { to: 'household', householdId: isle.householdId }, about, says: 'Come and see.' },
      });
    bodyOf(await told('The hall'), 201);
    bodyOf(await told('The scales'), 201);
    const to = 'isle@example.org';
    expect(subjectsTo(await lettersAt('2026-11-20T18:00:00Z'), to)).toEqual([]);
    const evening = await lettersAt('2026-11-21T00:05:00Z'); // 18:05
    expect(subjectsTo(evening, to)).toEqual(['2 things for you']);
    const { text } = evening.find((letter) => letter.to === to) as Letter;
    expect(text.match(/Come and see\./g)).toHaveLength(2);
    expect(text).toContain('Stop all letters but those about safety');
    bodyOf(await told('The stove'), 201);
    expect(subjectsTo(await lettersAt('2026-11-21T01:00:00Z'), to)).toEqual([]);
    expect(subjectsTo(await lettersAt('2026-11-22T00:05:00Z'), to)).toEqual(['one thing for you']);
  });

  test('while e-mail is off nothing is marked as told, so that it is told once it is on', async () => {
    app.clock.now = new Date('2026-11-23T17:00:00Z');
    const jory = await aHousehold(app, storehouse, 'Jory');
    const wish = { audience: { to: 'household', householdId: jory.householdId } };
    const body = { ...wish, about: 'The cellar', says: 'It is wet.' };
    bodyOf(await storehouse.coordinator.post(`${storehouse.path}/notices`, body), 201);
    app.clock.now = new Date('2026-11-23T18:00:00Z');
    await enqueueEverywhere(app.outside, 'remind');
    await doWork(app);
    expect(await app.admin`select from book.telling where person_id = ${jory.personId}`).toHaveLength(0);
    expect(subjectsTo(await lettersAt('2026-11-23T18:15:00Z'), 'jory@example.org')).toEqual(['The cellar']);
  });
});

test('a notice that was taken back before anybody was written to is written about to nobody', async () => {
  app.clock.now = new Date('2026-11-23T19:00:00Z');
  const path = `${storehouse.path}/notices`;
  const told = async (about: string): Promise<string> =>
    bodyOf(
      await storehouse.coordinator.post(path, { audience: { to: 'everyone' }, about, says: 'Come.' }),
      201,
    ).id;
  const gone = await told('A slip of the pen');
  await told('The shelves');
  expect((await storehouse.coordinator.delete(`${path}/${gone}`)).status).toBe(204);
  const subjects = subjectsTo(await lettersAt('2026-11-23T19:15:00Z'), DELL);
  expect(subjects).toContain('The shelves');
  expect(subjects).not.toContain('A slip of the pen');
});

describe('a link to stop a kind, without signing in', () => {
  const told = async (householdId: string, isSafety = false) =>
    bodyOf(
      await storehouse.coordinator.post(`${storehouse.path}/notices`, {
        ...{ audience: { to: 'household', householdId }, about: 'The hall', says: 'Come.', isSafety },
      }),
      201,
    );

  test('shows what it would stop, and stops it when that is asked for; safety goes on', async () => {
    app.clock.now = new Date('2026-11-24T18:00:00Z');
    const kerr = await aHousehold(app, storehouse, 'Kerr');
    const other = await aPersonOf(app, storehouse, kerr, 'Kim Kerr');
    await told(kerr.householdId);
    const to = 'kerr@example.org';
    const letter = (await lettersAt('2026-11-24T18:15:00Z')).find((one) => one.to === to) as Letter;
    const stranger = app.as();
    const look = await stranger.get(linkIn(letter));
    expect([look.status, look.headers.get('Content-Type')]).toEqual([200, 'text/html; charset=UTF-8']);
    expect(look.body).toContain('You would no longer be written to about: notices.');
    await told(kerr.householdId);
    expect(subjectsTo(await lettersAt('2026-11-24T18:30:00Z'), to)).toEqual(['The hall']);
    // RFC 8058: the mail program's own button sends this body, without a cookie.
    const form = { 'Content-Type': 'application/x-www-form-urlencoded' };
    const stopped = await stranger.post(linkIn(letter), 'List-Unsubscribe=One-Click', form);
    expect(stopped.body).toContain('You are no longer written to about this.');
    await told(kerr.householdId);
    await told(kerr.householdId, true);
    const after = await lettersAt('2026-11-24T18:45:00Z');
    expect(subjectsTo(after, to)).toEqual(['Safety: The hall']);
    expect(subjectsTo(after, 'kim-kerr@example.org').toSorted()).toEqual(['Safety: The hall', 'The hall']);
    const safety = after.find((one) => one.to === to) as Letter;
    expect(linkIn(safety)).toBe('');
    expect(safety.source).not.toContain('List-Unsubscribe');
    expect(other.personId).not.toBe(kerr.personId);
  });

  test('that was guessed, or is of another storehouse, leads to nothing and changes nothing', async () => {
    const guess = (storehouseId: string) => `/stop/${storehouseId}/${'A'.repeat(43)}`;
    for (const path of [
      guess(storehouse.storehouseId),
      guess('00000000-0000-7000-8000-000000000000'),
      '/stop/x/y',
    ]) {
      const look = await app.as().get(path);
      expect([look.status, look.body.includes('There is nothing at this address.')]).toEqual([404, true]);
      expect(await refusalOf(app, () => app.as().post(path, {}))).toMatchObject({ status: 404 });
    }
    const rows = await app.admin<{ hash: string }[]>`select token_hash as hash from book.stop_link limit 1`;
    const [hash] = rows.map((row) => row.hash);
    expect((await app.as().get(`/stop/${storehouse.storehouseId}/${hash}`)).status).toBe(404);
  });
});
