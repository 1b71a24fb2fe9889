import { extract, parse } from 'letterparser';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  catcher = await openCatcher();
});
beforeEach(async () => {
  catcher.mood = 'take';
  catcher.caught.length = 0;
  await app.admin`delete from book.work`;
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const A_LETTER = {
  kind: 'pick-up',
  subject: 'Your pick-up is tomorrow',
  text: 'Bring your buckets at ten.\nThe Ashdowns hand out.',
  html: '<p>Bring your <b>buckets</b> at ten.</p>',
  stopUrl: 'https://book.alder.example/stop/abc',
};

const write = (wish: Partial<typeof A_LETTER> = {}, personId = birchall.personId) =>
  withStorehouseTx(app.outside, storehouse.storehouseId, (tx) =>
    writeLetter(tx, storehouse.storehouseId, { ...A_LETTER, ...wish, personId }),
  );

const stateOf = async (letterId: string) => {
  const [row] =
    await app.admin`select l.state, l.unsent_because as because, w.state as work, w.tries, w.last_reason as reason
    from book.letter l join book.work w on w.work_id = l.letter_id where letter_id = ${letterId}`;
  return row;
};

test('a letter is sent to the address of its person’s login, as text and as HTML', async () => {
  const letterId = await write();
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  const [caught] = catcher.caught;
  const read = extract(caught?.source ?? '');
  expect(read).toMatchObject({
    subject: 'Your pick-up is tomorrow',
    from: { name: 'Alder Row', address: 'book@alder.example' },
    to: [{ name: 'Birchall Person', address: 'birchall@example.org' }],
  });
  expect(read.text?.trim()).toBe(A_LETTER.text);
  expect(read.html?.trim()).toBe(A_LETTER.html);
  expect(parse(caught?.source ?? '').headers).toMatchObject({
    'Message-Id': `<${letterId}@alder.example>`,
    'Auto-Submitted': 'auto-generated',
    'List-Unsubscribe': '<https://book.alder.example/stop/abc>',
    'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click',
  });
  expect(await stateOf(letterId)).toMatchObject({ state: 'sent', work: 'done', tries: 1 });
  expect(await doWork(app, catcher)).toMatchObject({ done: 0 });
});

test('no name and no subject can add a header', async () => {
  const subject = 'Flour\r\nBcc: all@example.org\r\n\r\nBody of its own';
  await app.admin`update book.person set name = ${'Bo\r\nBcc: all@example.org'} where person_id = ${birchall.personId}`;
  await write({ subject });
  await doWork(app, catcher);
  await app.admin`update book.person set name = 'Birchall Person' where person_id = ${birchall.personId}`;
  expect(catcher.caught.map(({ to }) => to)).toEqual(['birchall@example.org']);
  const source = catcher.caught[0]?.source ?? '';
  const { headers } = parse(source);
  expect(Object.keys(headers).map((name) => name.toLowerCase())).not.toContain('bcc');
  expect(source).not.toMatch(/^Bcc/im);
  expect(extract(source).subject).toBe('Flour Bcc: all@example.org Body of its own');
});

test('a server that refuses for now is asked again, and one that refuses for good is not', async () => {
  catcher.mood = { code: 451, words: '4.7.1 come back later', at: 'data' };
  const greylisted = await write();
  expect(await doWork(app, catcher)).toMatchObject({ later: 1, dead: 0 });
  expect(await stateOf(greylisted)).toMatchObject({
    ...{ state: 'waiting', work: 'waiting' },
    reason: 'The mail server refused the letter for now: “451 4.7.1 come back later”.',
  });
  catcher.mood = { code: 554, words: '5.7.1 looks like spam', at: 'data' };
  app.clock.now = new Date(app.clock.now.getTime() + 10_000);
  expect(await doWork(app, catcher)).toMatchObject({ later: 0, dead: 1 });
  expect(catcher.caught).toEqual([]);
});

test('a server that hangs, and one that is not there, is asked again', async () => {
  const hanging = await openCatcher(200);
  hanging.mood = 'hang';
  const letterId = await write();
  expect(await doWork(app, hanging)).toMatchObject({ later: 1 });
  expect(await stateOf(letterId)).toMatchObject({ reason: 'The mail server took too long to answer.' });
  await hanging.close();
  app.clock.now = new Date(app.clock.now.getTime() + 10_000);
  expect(await doWork(app, hanging)).toMatchObject({ later: 1 });
  expect(await stateOf(letterId)).toMatchObject({ reason: 'The mail server could not be reached.' });
});

test('a server that took a letter and says so too late gets it again under the same id, so that it can tell', async () => {
  const late = await openCatcher(200);
  late.mood = 'late';
  const letterId = await write();
  expect(await doWork(app, late)).toMatchObject({ later: 1, done: 0 });
  expect(await stateOf(letterId)).toMatchObject({ reason: 'The mail server took too long to answer.' });
  late.mood = 'take';
  app.clock.now = new Date(app.clock.now.getTime() + 121_000);
  expect(await doWork(app, late)).toMatchObject({ done: 1 });
  const ids = late.caught.map(({ source }) => parse(source).headers['Message-Id']);
  expect(ids).toEqual([`<${letterId}@alder.example>`, `<${letterId}@alder.example>`]);
  await late.close();
});

test('an address that nobody has ends the letter with a reason that does not tell it', async () => {
  catcher.mood = { code: 550, words: '5.1.1 no mailbox <birchall@example.org>', at: 'rcpt' };
  const nobody = await write();
  expect(await doWork(app, catcher)).toMatchObject({ dead: 1 });
  const { reason, work } = (await stateOf(nobody)) ?? {};
  expect(work).toBe('dead');
  expect(reason).toContain('The mail server refused the letter for good: “550 5.1.1 no mailbox');
  expect(reason).not.toContain('birchall');
});

test('a letter that may be on its way is not sent beside it, and again after two minutes under its own id', async () => {
  const letterId = await write();
  await app.admin`update book.letter set state = 'sending', sending_at = ${app.clock.now.toISOString()}`;
  expect(await doWork(app, catcher)).toMatchObject({ later: 1 });
  expect(catcher.caught).toEqual([]);
  app.clock.now = new Date(app.clock.now.getTime() + 121_000);
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  expect(catcher.caught[0]?.source).toContain(`Message-ID: <${letterId}@alder.example>`);
});

test('who has no address, and a server without e-mail, get no letter, and nothing fails for it', async () => {
  const off = await write();
  expect(await doWork(app)).toMatchObject({ done: 1 });
  expect(await stateOf(off)).toMatchObject({ state: 'unsent', because: 'E-mail is off on this server.' });
  const [person] = await app.admin`insert into book.person (storehouse_id, name, joined_on)
    values (${storehouse.storehouseId}, 'On Paper', '2026-09-01') returning person_id as id`;
  const paper = await write({}, person?.id);
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  expect(await stateOf(paper)).toMatchObject({ state: 'unsent', work: 'done' });
});

test('a letter that was deleted before it went out, and a person who left, are sent nothing, and the work ends', async () => {
  const deleted = await write();
  await app.admin`delete from book.letter where letter_id = ${deleted}`;
  expect(await doWork(app, catcher)).toMatchObject({ done: 1, later: 0, dead: 0 });
  const left = await write();
  const [had] = await app.admin<{ login: string }[]>`select login_id as login from book.person
    where person_id = ${birchall.personId}`;
  await app.admin`update book.person set login_id = null where person_id = ${birchall.personId}`;
  expect(await doWork(app, catcher)).toMatchObject({ done: 1, later: 0, dead: 0 });
  expect(await stateOf(left)).toMatchObject({
    ...{ state: 'unsent', work: 'done' },
    because: 'This person has no login, and so no address.',
  });
  expect(catcher.caught).toEqual([]);
  await app.admin`update book.person set login_id = ${had?.login ?? null} where person_id = ${birchall.personId}`;
});

test('a neighbour’s letter is read by nobody but who sends it', async () => {
  await write();
  const rows = await withStorehouseTx(app.outside, storehouse.storehouseId, (tx) =>
    tx.execute('select * from book.letter'),
  );
  expect([...rows]).toEqual([]);
});
