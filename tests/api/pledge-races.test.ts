import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, openForPledges, pledgeBody } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
const households: TestHousehold[] = [];
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  for (const name of ['Birchall', 'Corran', 'Dell']) households.push(await aHousehold(app, storehouse, name));
});
afterAll(() => app.close());

const first = () => {
  const [household] = households;
  if (!household) throw new Error('there is a first household');
  return household;
};
const standing = (buyId: string) =>
  app.admin`select pledge_id from book.pledge where buy_id = ${buyId} and withdrawn_at is null`;

test('of many pledges of one household for one food exactly one stands', async () => {
  const buy = await aBuy(app, storehouse);
  const wishes = Array.from({ length: 12 }, (_, at) => pledgeBody(buy, { wanted: 5 * (at + 1) }));
  const answers = await Promise.all(wishes.map((wish) => first().caller.post(`${buy.path}/pledges`, wish)));
  const refused = answers.filter(({ status }) => status !== 201);
  expect(refused.map(({ body }) => body.code)).toEqual(Array.from({ length: 11 }, () => 'already-pledged'));
  expect(await standing(buy.buyId)).toHaveLength(1);
});

test('of many changes of one version exactly one is made', async () => {
  const buy = await aBuy(app, storehouse);
  const pledge = await aPledge(first().caller, buy, { wanted: 50 });
  const changes = Array.from({ length: 10 }, (_, at) => {
    const { buyLineId: _line, ...body } = pledgeBody(buy, { wanted: 5 * (at + 1) });
    return first().caller.put(`${buy.path}/pledges/${pledge.id}`, { ...body, version: 1 });
  });
  const answers = await Promise.all(changes);
  expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
  expect(new Set(answers.filter(({ status }) => status !== 200).map(({ body }) => body.code))).toEqual(
    new Set(['stale-version']),
  );
  const [row] = await app.admin<
    { version: number }[]
  >`select version from book.pledge where pledge_id = ${pledge.id}`;
  expect(row?.version).toBe(2);
});

// ledger-notes 6.16: whoever pledges share-locks the buy, whoever moves its stage locks it alone.
test('a pledge that gets in stands in a buy that was gathering, and none gets in after its end', async () => {
  for (let round = 0; round < 5; round += 1) {
    const buy = await aBuy(app, storehouse);
    const [callingOff, ...answers] = await Promise.all([
      storehouse.coordinator.post(`${buy.path}/calling-off`, { reason: 'the mill burned down' }),
      ...households.map(({ caller }) => caller.post(`${buy.path}/pledges`, pledgeBody(buy, { wanted: 50 }))),
    ]);
    expect(callingOff?.status).toBe(200);
    const accepted = answers.filter(({ status }) => status === 201).length;
    const refused = answers.filter(({ body }) => body.code === 'buy-stage-wrong').length;
    expect(accepted + refused).toBe(households.length);
    expect(await standing(buy.buyId)).toHaveLength(accepted);
    const late = await first().caller.post(`${buy.path}/pledges`, pledgeBody(buy, { wanted: 5 }));
    expect(late.status).toBe(409);
  }
});

test('6.16: a locked stage move makes pledges wait and then sees them refused', async () => {
  const buy = await aBuy(app, storehouse);
  const answer = await app.admin.begin(async (sql) => {
    await sql`select 1 from book.buy where buy_id = ${buy.buyId} for update`;
    const pledging = first().caller.post(`${buy.path}/pledges`, pledgeBody(buy, { wanted: 50 }));
    await waitUntilBlocked(buy.path);
    await sql`update book.buy set stage = 'called-off' where buy_id = ${buy.buyId}`;
    return { pledging };
  });
  const pledged = await answer.pledging;
  expect([pledged.status, pledged.body.code, pledged.body.stage]).toEqual([
    409,
    'buy-stage-wrong',
    'called-off',
  ]);
  expect(await standing(buy.buyId)).toHaveLength(0);
});

test('a quote can’t be taken away between the opening’s check and the opening', async () => {
  for (let round = 0; round < 5; round += 1) {
    const buy = await aBuy(app, storehouse, { isOpen: false });
    const withdrawal = `${buy.path}/quotes/${buy.quoteId}/withdrawal`;
    const [withdrawn, opened] = await Promise.all([
      storehouse.coordinator.post(withdrawal, { version: 1 }),
      storehouse.coordinator.post(`${buy.path}/stage`, { to: 'gathering' }),
    ]);
    expect(withdrawn.status).toBe(200);
    const { stage } = bodyOf(await storehouse.coordinator.get(buy.path));
    expect([opened.status, stage]).toEqual(opened.status === 200 ? [200, 'gathering'] : [409, 'planning']);
  }
});

test('a buy is opened once however often it is asked for', async () => {
  const buy = await aBuy(app, storehouse, { isOpen: false });
  const tries = await Promise.allSettled(Array.from({ length: 8 }, () => openForPledges(storehouse, buy)));
  expect(tries.filter(({ status }) => status === 'fulfilled')).toHaveLength(1);
  expect(bodyOf(await storehouse.coordinator.get(`${buy.path}/stage-moves`)).moves).toHaveLength(1);
});

/** Until some connection of this database waits for a lock. */
async function waitUntilBlocked(what: string): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    const waiting = await app.admin`select 1 from pg_stat_activity
      where datname = current_database() and wait_event_type = 'Lock'`;
    if (waiting.length > 0) return;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error(`nobody waited for ${what}`);
}
