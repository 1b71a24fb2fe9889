import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aHousehold, aPersonOf, grantDuty, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let reviewer: TestHousehold;
const THROUGH = '2026-08-31';
const at = (path: string) => `${storehouse.path}${path}`;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  buy = await aSharedBuy(app, storehouse);
  app.clock.now = new Date('2026-09-02T15:00:00Z');
});
afterAll(() => app.close());

const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex');
const theClose = async () => bodyOf(await buy.treasurer.get(at('/periods'))).closes[0];

test('what the year would carry into the store fund is shown first, and carried as it was shown', async () => {
  bodyOf(await buy.treasurer.post(at('/bank-charges'), { minorUnits: 450, onDay: '2026-08-25' }), 201);
  bodyOf(
    await buy.treasurer.post(at('/fund-receipts'), { minorUnits: 2000, till: 'bank', onDay: '2026-08-26' }),
    201,
  );
  const preview = bodyOf(await buy.treasurer.get(at(`/year-ends/preview?throughOn=${THROUGH}`)));
  expect(preview.accounts).toEqual(
    expect.arrayContaining([
      { number: '4020', name: 'Cash gifts received', balanceMinorUnits: -2000 },
      { number: '5010', name: 'Bank charges', balanceMinorUnits: 450 },
    ]),
  );
  expect(preview.toFundMinorUnits).toBe(1550);
  const { minorUnits } = bodyOf(await buy.treasurer.post(at('/year-ends'), { throughOn: THROUGH }), 201);
  expect(minorUnits).toBe(1550);
  const after = bodyOf(await buy.treasurer.get(at(`/year-ends/preview?throughOn=${THROUGH}`)));
  expect(after).toMatchObject({ accounts: [], toFundMinorUnits: 0 });
});

test('the year ends with the month that the coordinator says, and with December until then', async () => {
  const facts = bodyOf(await storehouse.coordinator.get(storehouse.path));
  expect(facts.yearEndMonth).toBe(12);
  expect(bodyOf(await buy.treasurer.get(at('/periods'))).yearEndOn).toBe('2025-12-31');
  const { version, name, timeZone, massDisplay, language } = facts;
  const edit = { version, name, timeZone, massDisplay, language };
  const put = (more: object) => storehouse.coordinator.put(storehouse.path, { ...edit, ...more });
  expect((await put({ yearEndMonth: 13 })).body.fields).toMatchObject([{ field: 'yearEndMonth' }]);
  expect(bodyOf(await put({ yearEndMonth: 8 })).yearEndMonth).toBe(8);
  // Who changes the name alone leaves the year as it is.
  expect(bodyOf(await put({ version: version + 1 })).yearEndMonth).toBe(8);
  expect(bodyOf(await buy.treasurer.get(at('/periods'))).yearEndOn).toBe(THROUGH);
});

test('a close asks first for what the book can settle, lists what stays open, and changes nothing when it refuses', async () => {
  type Missing = { code: string; isBlocking: boolean; count: number; buys: { buyId: string }[] };
  const preview = async () => bodyOf(await reviewer.caller.get(at(`/periods/preview?throughOn=2026-09-01`)));
  const blockingOf = ({ missing }: { missing: Missing[] }) =>
    missing.filter(({ isBlocking }) => isBlocking).map(({ code }) => code);
  bodyOf(await buy.treasurer.post(at('/bank-charges'), { minorUnits: 30, onDay: '2026-08-27' }), 201);
  const bill = { supplierId: buy.supplierId, number: 'LATE-1', onDay: '2026-08-28' };
  const late = { ...bill, lines: [{ kind: 'freight', minorUnits: 1200 }] };
  bodyOf(await buy.treasurer.post(`${buy.path}/invoices`, late), 201);
  const first = await preview();
  expect(first.mayClose).toBe(false);
  expect(blockingOf(first)).toEqual(['results-not-carried', 'buys-not-clear']);
  const of = (code: string) => first.missing.find((missing: Missing) => missing.code === code);
  expect(of('results-not-carried')).toMatchObject({ count: 1, minorUnits: -30, onDay: THROUGH });
  expect(of('buys-not-clear').buys).toEqual([expect.objectContaining({ buyId: buy.buyId })]);
  expect(of('buys-open')).toMatchObject({ isBlocking: false, count: 1 });
  // The mill's short bags and the torn bag, 21.40 and 3.60.
  expect(of('claims-open')).toMatchObject({ isBlocking: false, count: 2, minorUnits: 2500 });
  const before = await fingerprintOf(app);
  const refused = await buy.treasurer.post(at('/periods'), { throughOn: '2026-09-01' });
  expect(refused).toMatchObject({ status: 409, body: { code: 'period-unsettled' } });
  expect(refused.body.missing.map(({ code }: Missing) => code)).toEqual(blockingOf(first));
  expect(await fingerprintOf(app)).toEqual(before);
  bodyOf(await buy.treasurer.post(at('/year-ends'), { throughOn: THROUGH }), 201);
  bodyOf(await buy.treasurer.post(`${buy.path}/recharging`), 201);
  await creditClaims(storehouse, buy);
  const settled = await preview();
  expect(blockingOf(settled)).toEqual([]);
  expect(settled.mayClose).toBe(true);
  expect(settled.missing.map(({ code }: Missing) => code)).toContain('buys-open');
  expect(settled.missing.map(({ code }: Missing) => code)).not.toContain('claims-open');
  expect((await buy.households.Dell.caller.get(at(`/periods/preview?throughOn=2026-09-01`))).body.code).toBe(
    'duty-missing',
  );
});

test('the close keeps a digest that sha256sum gives again from the text that anyone may take along', async () => {
  const { closes } = bodyOf(await buy.treasurer.post(at('/periods'), { throughOn: THROUGH }), 201);
  expect(closes[0]).toMatchObject({ closedThrough: THROUGH, signatures: [] });
  const answer = await reviewer.caller.get(at(`/periods/${THROUGH}/digest?format=text`));
  expect(answer.headers.get('Content-Type')).toContain('text/plain');
  const text = answer.body as string;
  const summed = execFileSync('sha256sum', { input: text, encoding: 'utf8' }).split(' ')[0];
  expect(closes[0].digestSha256).toBe(summed);
  const lines = text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines[0]).toEqual(['sheafbook-digest', 1, storehouse.storehouseId, THROUGH, null]);
  const entries = lines.filter(([kind]) => kind === 'entry');
  expect(entries).toHaveLength(closes[0].entryCount);
  const [row] = await app.admin<
    { count: number }[]
  >`select count(*)::int as count from book.entry where on_day <= ${THROUGH}`;
  expect(entries).toHaveLength(row?.count ?? -1);
  const digest = bodyOf(await reviewer.caller.get(at(`/periods/${THROUGH}/digest`)));
  expect(digest).toMatchObject({ digestSha256: summed, digestNowSha256: summed, holds: true });
});

test('beside the text stands the kind of each account that it names, and of no other', async () => {
  const { body: text } = await reviewer.caller.get(at(`/periods/${THROUGH}/digest?format=text`));
  const named = (text as string)
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line))
    .flatMap(([what, , , from, to]) => (what === 'movement' ? [from, to] : []));
  const { body, headers } = await reviewer.caller.get(at(`/periods/${THROUGH}/digest?format=accounts`));
  expect(headers.get('Content-Type')).toContain('text/csv');
  const [head, ...rows] = (body as string).trimEnd().split('\r\n');
  expect(head).toContain('accountId,unit,number,kind');
  const cells = rows.map((row) => row.split(','));
  expect(cells.map(([id]) => id).toSorted()).toEqual([...new Set(named)].toSorted());
  const said = cells.map(([, unit, number, kind]) => `${unit} ${number} ${kind}`);
  expect(said).toEqual(
    expect.arrayContaining(['currency 1000 Bank', 'currency 2200 Buy clearing', 'currency 3000 Store fund']),
  );
  const member = await buy.households.Dell.caller.get(at(`/periods/${THROUGH}/digest?format=accounts`));
  expect(member.body.code).toBe('duty-missing');
});

test('the next close is chained to the one before and takes in the days between alone', async () => {
  bodyOf(await buy.treasurer.post(at('/bank-charges'), { minorUnits: 99, onDay: '2026-09-01' }), 201);
  // The year ended the day before and is carried: within the next one, results are listed and keep nothing open.
  const preview = bodyOf(await buy.treasurer.get(at('/periods/preview?throughOn=2026-09-01')));
  expect(preview).toMatchObject({ mayClose: true });
  expect(preview.missing).toContainEqual(
    expect.objectContaining({ code: 'results-not-carried', isBlocking: false, count: 1, minorUnits: -99 }),
  );
  const first = await theClose();
  const { closes } = bodyOf(await buy.treasurer.post(at('/periods'), { throughOn: '2026-09-01' }), 201);
  const { body } = await buy.treasurer.get(at('/periods/2026-09-01/digest?format=text'));
  const lines = (body as string)
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(lines[0]).toEqual([
    'sheafbook-digest',
    1,
    storehouse.storehouseId,
    '2026-09-01',
    first.digestSha256,
  ]);
  expect(lines.slice(1).every(([kind, , day]) => kind !== 'entry' || day === '2026-09-01')).toBe(true);
  expect(sha256(body as string)).toBe(closes[0].digestSha256);
});

test('nothing of what a household has at home stands in the text, but that something moved', async () => {
  const { body } = await buy.treasurer.get(at(`/periods/${THROUGH}/digest?format=text`));
  const homes = await app.admin<{ amount: string; id: string }[]>`
    select m.amount::text as amount, a.account_id as id from book.movement m
    join book.account a on a.account_id = m.destination_id
    join book.owner o on o.owner_id = a.owner_id and o.kind = 'household'
    where a.vessel_kind not in ('bag', 'supplier')`;
  for (const { id } of homes) expect(body).not.toContain(id);
});

test('reviewer, treasurer and coordinator sign what they saw, each once, three people', async () => {
  const { digestSha256 } = (await bodyOf(await buy.treasurer.get(at('/periods'))).closes).find(
    ({ closedThrough }: { closedThrough: string }) => closedThrough === THROUGH,
  );
  const path = at(`/periods/${THROUGH}/signatures`);
  const sign = (duty: string, more: object = {}) => ({ duty, digestSha256, remarks: '', ...more });
  expect(
    (await reviewer.caller.post(path, sign('reviewer', { digestSha256: '0'.repeat(64) }))).body,
  ).toMatchObject({
    code: 'cannot-sign',
    fields: [{ field: 'digestSha256' }],
  });
  expect((await reviewer.caller.post(path, sign('treasurer'))).body.code).toBe('duty-missing');
  bodyOf(await reviewer.caller.post(path, sign('reviewer', { remarks: 'Two receipts to find.' })), 201);
  expect((await reviewer.caller.post(path, sign('reviewer'))).body.code).toBe('already-there');
  bodyOf(await buy.treasurer.post(path, sign('treasurer')), 201);
  const { closes } = bodyOf(await storehouse.coordinator.post(path, sign('coordinator')), 201);
  const signed = closes.find(({ closedThrough }: { closedThrough: string }) => closedThrough === THROUGH);
  expect(signed.signatures.map(({ duty }: { duty: string }) => duty).sort()).toEqual([
    'coordinator',
    'reviewer',
    'treasurer',
  ]);
  expect(signed.signatures).toContainEqual(
    expect.objectContaining({ duty: 'reviewer', remarks: 'Two receipts to find.', signedBy: 'Quill Person' }),
  );
});

test('whoever kept the books in the closed days, or lives with who did, does not review them, but may review later ones', async () => {
  const aside = await anotherStorehouse(app);
  const path = `${aside.path}/periods`;
  const first = await aHousehold(app, aside, 'First', { duties: ['treasurer'], email: 'first@example.org' });
  const mate = await aPersonOf(app, aside, first, 'Mate');
  const second = await aHousehold(app, aside, 'Second', { email: 'second@example.org' });
  app.clock.now = new Date('2026-09-02T15:00:00Z');
  const closeOf = async (throughOn: string): Promise<string> => {
    const { closes } = bodyOf(await second.caller.post(path, { throughOn }), 201);
    return closes[0].digestSha256;
  };
  await grantDuty(aside, second.personId, 'treasurer');
  bodyOf(await aside.coordinator.delete(`${aside.path}/persons/${first.personId}/duties/treasurer`));
  const digestSha256 = await closeOf('2026-08-31');
  // Second hands over to nobody of First's; First and its housemate become reviewers once Second is treasurer alone.
  await grantDuty(aside, first.personId, 'reviewer');
  await grantDuty(aside, mate.personId, 'reviewer');
  const wish = { duty: 'reviewer', digestSha256 };
  const before = await fingerprintOf(app);
  const own = await first.caller.post(`${path}/2026-08-31/signatures`, wish);
  expect(own.body).toMatchObject({ code: 'cannot-sign' });
  expect(own.body.detail).toMatch(/^You kept these books as treasurer/);
  const near = await mate.caller.post(`${path}/2026-08-31/signatures`, wish);
  expect(near.body.detail).toMatch(/^Somebody of your household kept these books/);
  expect(await fingerprintOf(app)).toEqual(before);
  app.clock.now = new Date('2026-09-05T15:00:00Z');
  // First laid the duty down on 2 September: the days after 31 August are in part its own, those after 2 September not.
  const touched = { duty: 'reviewer', digestSha256: await closeOf('2026-09-02') };
  expect((await first.caller.post(`${path}/2026-09-02/signatures`, touched)).body.code).toBe('cannot-sign');
  const later = { duty: 'reviewer', digestSha256: await closeOf('2026-09-04') };
  bodyOf(await first.caller.post(`${path}/2026-09-04/signatures`, later), 201);
});

test('a close that was tampered with is found by the audit, and nobody can sign it', async () => {
  const holds = async () => {
    const { findings } = bodyOf(await reviewer.caller.get(at('/audit')));
    return findings.find(({ invariant }: { invariant: string }) => invariant.includes('digest')).holds;
  };
  expect(await holds()).toBe(true);
  const [entry] = await app.admin`select entry_id, what from book.entry where on_day = '2026-09-01' limit 1`;
  await app.admin`alter table book.entry disable trigger user`;
  await app.admin`update book.entry set what = 'bank-charged' where entry_id = ${entry?.entry_id}`;
  expect(await holds()).toBe(false);
  const { digestSha256 } = await theClose();
  const answer = await reviewer.caller.post(at('/periods/2026-09-01/signatures'), {
    duty: 'reviewer',
    digestSha256,
  });
  expect(answer.body.code).toBe('cannot-sign');
  await app.admin`update book.entry set what = ${entry?.what} where entry_id = ${entry?.entry_id}`;
  await app.admin`alter table book.entry enable trigger user`;
  expect(await holds()).toBe(true);
});

test('two closings of one day race, and one of them is told that it came second', async () => {
  app.clock.now = new Date('2026-09-10T15:00:00Z');
  const close = () => buy.treasurer.post(at('/periods'), { throughOn: '2026-09-09' });
  const answers = await Promise.all([close(), close(), close()]);
  expect(answers.map(({ status }) => status).sort()).toEqual([201, 409, 409]);
});

test('a day that is no day names no close, and a closed day takes nothing any more', async () => {
  const before = await fingerprintOf(app);
  expect((await reviewer.caller.get(at('/periods/yesterday/digest'))).status).toBe(404);
  expect((await reviewer.caller.get(at('/periods/2026-01-31/digest'))).status).toBe(404);
  const late = await buy.treasurer.post(at('/bank-charges'), { minorUnits: 5, onDay: THROUGH });
  expect(late.body.code).toBe('period-closed');
  expect(await fingerprintOf(app)).toEqual(before);
});
