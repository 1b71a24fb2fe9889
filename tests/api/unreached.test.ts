import { extract } from 'letterparser';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold } from '../support/household.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { printed } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let catcher: Catcher;
let packingLead: Caller;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  packingLead = (await aPackingLead(app, storehouse, buy.households.Corran)).caller;
  catcher = await openCatcher();
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const at = (path: string) => `${storehouse.path}${path}`;
const writeAt = async (instant: string, wish: Record<string, unknown> = {}): Promise<string> => {
  app.clock.now = new Date(instant);
  const notice = { audience: { to: 'everyone' }, about: 'The stove', says: 'Do not light it.', ...wish };
  return bodyOf(await storehouse.coordinator.post(at('/notices'), { isSafety: true, ...notice }), 201).id;
};
type Item = { kind: string; words: string; path: string; isOverdue: boolean; dueAt: string };
async function toTelephone(caller: Caller = storehouse.coordinator, headers = {}): Promise<Item[]> {
  const { items } = bodyOf(await caller.get(at('/next-steps'), headers));
  return items.filter(({ kind }: Item) => kind === 'unreached');
}
const acknowledge = async ({ caller }: { caller: Caller }, id: string) =>
  bodyOf(await caller.put(at(`/notices/${id}/reading`), { isAcknowledged: true }));

/** What everybody is written about telephoning, once everything that is due in the background is done. */
async function lettersAt(instant: string) {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .map(({ to, source }) => ({ to, ...wordsIn(source) }))
    .filter(({ subject }) => subject.includes('Telephone'));
}
const wordsIn = (source: string) => {
  const { subject = '', text = '' } = extract(source);
  return { subject, text };
};

describe('a notice about safety that a household has not acknowledged a day later', () => {
  let id: string;

  test('is the coordinator’s to telephone about from that moment on, by the names of the households', async () => {
    id = await writeAt('2026-09-10T15:00:00Z');
    const { Birchall, Corran, Dell } = buy.households;
    await acknowledge(Birchall, id);
    app.clock.now = new Date('2026-09-11T14:59:59Z');
    await aHousehold(app, storehouse, 'Late'); // came after it was told
    expect(await toTelephone()).toEqual([]);
    expect(await lettersAt('2026-09-11T14:59:59Z')).toEqual([]);
    app.clock.now = new Date('2026-09-11T15:00:00Z');
    expect(await toTelephone()).toMatchObject([
      {
        words: 'The stove is about safety. Telephone Corran, Dell: nobody there has acknowledged it.',
        ...{ path: at(`/notices/${id}/reach`), dueAt: '2026-09-11T15:00:00.000Z', buyId: null },
      },
    ]);
    const handed = async (caller: Caller) => bodyOf(await caller.get(at('/handover'))).unreached;
    expect(await handed(storehouse.coordinator)).toEqual([
      {
        ...{ noticeId: id, about: 'The stove', aboutEs: 'The stove' },
        ...{ telephoneAt: '2026-09-11T15:00:00.000Z', households: ['Corran', 'Dell'] },
      },
    ]);
    expect(await handed(buy.treasurer)).toBeNull(); // whom to telephone is the coordinator's
    const { text } = await printed(storehouse.coordinator, at('/handover/paper?language=en'));
    expect(text).toMatch(/About safety, and not acknowledged.*The stove Corran, Dell 11 Sept 2026 10:00/s);
    for (const { caller } of [Birchall, Corran, Dell]) expect(await toTelephone(caller)).toEqual([]);
    expect(await toTelephone(packingLead)).toEqual([]);
    expect(await toTelephone(storehouse.coordinator, { 'Accept-Language': 'es' })).toMatchObject([
      { words: 'The stove trata de seguridad. Llame a Corran, Dell: nadie allí lo ha confirmado.' },
    ]);
    const { privateReads } = bodyOf(
      await Dell.caller.get(at(`/households/${Dell.householdId}/private-reads`)),
    );
    expect(privateReads[0]).toMatchObject({ readerName: 'Ada Ashdown', purpose: 'who was reached' });
  });

  test('is written about once, at any hour, to the coordinator alone and without naming anybody', async () => {
    const [letter, ...others] = await lettersAt('2026-09-12T08:00:00Z'); // three at night
    expect(others).toEqual([]);
    expect(letter).toMatchObject({
      to: 'coordinator@example.org',
      subject: 'Alder Row Storehouse: Telephone about The stove',
    });
    expect(letter?.text).toContain(`/s/${storehouse.storehouseId}/notices/written`);
    expect(letter?.text).not.toMatch(/Birchall|Corran|Dell|Late/);
    expect(await lettersAt('2026-09-12T08:15:00Z')).toEqual([]);
    expect(await lettersAt('2026-09-13T15:00:00Z')).toEqual([]);
  });

  test('leaves the list household by household as they acknowledge it, and with the last it ends', async () => {
    await acknowledge(buy.households.Dell, id);
    expect((await toTelephone()).map(({ words }) => words)).toEqual([
      'The stove is about safety. Telephone Corran: nobody there has acknowledged it.',
    ]);
    await acknowledge(buy.households.Corran, id);
    expect(await toTelephone()).toEqual([]);
  });

  test('and one that is taken back, or was never about safety, asks for nothing', async () => {
    const taken = await writeAt('2026-09-20T15:00:00Z');
    await writeAt('2026-09-20T15:00:00Z', { isSafety: false });
    app.clock.now = new Date('2026-09-21T15:00:00Z');
    expect(await toTelephone()).toHaveLength(1);
    expect((await storehouse.coordinator.delete(at(`/notices/${taken}`))).status).toBe(204);
    expect(await toTelephone()).toEqual([]);
    expect(await lettersAt('2026-09-21T15:15:00Z')).toEqual([]);
  });

  test('is asked of those alone whom it was for: a household, a duty, who pledged in a buy', async () => {
    const { Dell } = buy.households;
    const wishes = [
      [{ to: 'household', householdId: Dell.householdId }, 'Dell'],
      [{ to: 'duty', duty: 'treasurer' }, 'Birchall'],
      [{ to: 'buy', buyId: buy.buyId }, 'Birchall, Corran, Dell'],
    ] as const;
    for (const [audience, names] of wishes) {
      const told = await writeAt('2026-09-25T15:00:00Z', { audience });
      app.clock.now = new Date('2026-09-26T15:00:00Z');
      const words = `The stove is about safety. Telephone ${names}: nobody there has acknowledged it.`;
      expect((await toTelephone()).map((item) => item.words)).toEqual([words]);
      await storehouse.coordinator.delete(at(`/notices/${told}`));
    }
  });
});

test('a hold that was told to several owners is one thing, and its release ends it', async () => {
  app.clock.now = new Date('2026-10-01T15:00:00Z');
  const [bag] = await app.admin<{ id: string }[]>`select a.vessel_id as id from book.account a
    join book.household h on h.household_id = a.owner_id join book.bag b on b.bag_id = a.vessel_id
    where a.kind = 'mass' and a.inflow > a.outflow group by 1 having count(distinct a.owner_id) > 1 limit 1`;
  const hold = bodyOf(
    await packingLead.post(at(`/bags/${bag?.id}/holds`), { reason: 'A smell of mice' }),
    201,
  );
  app.clock.now = new Date('2026-10-02T15:00:00Z');
  const [item, ...others] = await toTelephone();
  expect(others).toEqual([]);
  expect(item?.words).toMatch(/^\S+ is about safety\. Telephone \w+(, \w+)+: nobody there/);
  bodyOf(await packingLead.post(at(`/holds/${hold.id}/release-request`), { finding: 'Clean' }));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${hold.id}/release`)));
  expect(await toTelephone()).toEqual([]);
});

test('where very many are to be telephoned the first are named and the others counted', async () => {
  app.clock.now = new Date('2026-10-05T15:00:00Z');
  for (let seat = 1; seat <= 11; seat += 1) await aHousehold(app, storehouse, `Row ${seat}`);
  await writeAt('2026-10-05T16:00:00Z');
  app.clock.now = new Date('2026-10-06T16:00:00Z');
  const [item] = await toTelephone();
  expect(item?.words).toContain('Row 8 and 3 more: nobody there');
  expect(item?.words).not.toContain('Row 9');
});
