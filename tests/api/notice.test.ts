import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf } from '../support/buy.ts';
import { aHousehold, aPersonOf } from '../support/household.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { refusalOf, refused } from '../support/landing-books.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let packingLead: Caller;
let buyName: string;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  buyName = bodyOf(await storehouse.coordinator.get(buy.path)).name;
  packingLead = (await aPackingLead(app, storehouse, buy.households.Corran)).caller;
});
afterAll(() => app.close());

type Notice = { id: string; kind: string; about: string; words: string; text: string; readAt: string | null };
const at = (path: string) => `${storehouse.path}${path}`;
const listOf = async (caller: Caller, query = '', headers = {}): Promise<Notice[]> =>
  bodyOf(await caller.get(at(`/notices${query}`), headers)).notices;
const tell = async (wish: Record<string, unknown>): Promise<string> =>
  bodyOf(
    await storehouse.coordinator.post(at('/notices'), { about: 'The hall', says: 'Sweep it.', ...wish }),
    201,
  ).id;
const everyone = { audience: { to: 'everyone' } };
const ids = (notices: readonly Notice[]) => notices.map(({ id }) => id);

describe('what a coordinator writes', () => {
  test('reaches everyone, with what to do and by when, in the words that it was written in', async () => {
    const id = await tell({ ...everyone, says: 'Bring a broom.', dueOn: '2026-09-05' });
    const [first] = await listOf(buy.households.Dell.caller, '', { 'Accept-Language': 'es' });
    expect(first).toEqual({
      ...{
        id,
        kind: 'written',
        audience: 'everyone',
        duty: null,
        about: 'The hall',
        aboutEs: 'The hall',
        words: '',
      },
      ...{ text: 'Bring a broom.', dueOn: '2026-09-05', path: null, isSafety: false, buyName: null },
      ...{
        writtenAt: '2026-09-01T15:00:00.000Z',
        writtenBy: 'Ada Ashdown',
        readAt: null,
        acknowledgedAt: null,
      },
    });
  });

  test('reaches the holders of a duty, a household, or those who pledged in a buy, and nobody else', async () => {
    const { Ashdown, Birchall, Dell } = buy.households;
    const gathering = await aBuy(app, storehouse, { name: 'Rye' });
    await aPledge(Dell.caller, gathering, { wanted: 50 });
    const duty = await tell({ audience: { to: 'duty', duty: 'treasurer' } });
    const home = await tell({ audience: { to: 'household', householdId: Dell.householdId } });
    const rye = await tell({ audience: { to: 'buy', buyId: gathering.buyId } });
    const told = [duty, home, rye];
    const toldTo = async (caller: Caller) => ids(await listOf(caller)).filter((id) => told.includes(id));
    expect(await toldTo(Dell.caller)).toEqual([rye, home]);
    expect(await toldTo(Birchall.caller)).toEqual([duty]);
    expect(await toldTo(Ashdown.caller)).toEqual([]);
    for (const id of told) {
      const { caller } = id === duty ? Dell : Birchall;
      expect(await refusalOf(app, () => caller.put(at(`/notices/${id}/reading`), {}))).toEqual(
        refused(404, 'thing-not-found'),
      );
    }
  });

  test('is refused when it says nothing, is for nobody, or is due on a day that is over', async () => {
    const { coordinator } = storehouse;
    const wish = { ...everyone, about: 'The hall', says: 'Sweep it.' };
    const send =
      (change: Record<string, unknown>, caller = coordinator) =>
      () =>
        caller.post(at('/notices'), { ...wish, ...change });
    const nobody = '00000000-0000-7000-8000-000000000000';
    const cases = [
      [{ says: '  ' }, 400, 'invalid-input', 'says'],
      [{ about: '' }, 400, 'invalid-input', 'about'],
      [{ dueOn: '2026-08-31' }, 400, 'invalid-input', 'dueOn'],
      [
        { audience: { to: 'household', householdId: nobody } },
        404,
        'thing-not-found',
        'audience.householdId',
      ],
      [{ audience: { to: 'buy', buyId: nobody } }, 404, 'thing-not-found', 'audience.buyId'],
    ] as const;
    for (const [change, status, code, field] of cases)
      expect(await refusalOf(app, send(change))).toEqual(refused(status, code, field));
    expect(await refusalOf(app, send({}, buy.households.Dell.caller))).toEqual(refused(403, 'duty-missing'));
  });

  test('is taken back, and then nobody is shown it any more', async () => {
    const id = await tell({ ...everyone, about: 'A slip of the pen' });
    expect(ids(await listOf(buy.households.Dell.caller))).toContain(id);
    expect((await storehouse.coordinator.delete(at(`/notices/${id}`))).status).toBe(204);
    expect(ids(await listOf(buy.households.Dell.caller))).not.toContain(id);
  });
});

describe('each person reads alone', () => {
  test('unread ones are counted, and once read or acknowledged they no longer are', async () => {
    const dell = buy.households.Dell;
    const other = await aPersonOf(app, storehouse, dell, 'Dora Dell');
    const unreadOf = async (caller: Caller) => bodyOf(await caller.get(at('/notices/unread'))).unread;
    const [mine, hers] = [await unreadOf(dell.caller), await unreadOf(other.caller)];
    const id = await tell(everyone);
    expect(await unreadOf(dell.caller)).toBe(mine + 1);
    const read = (isAcknowledged: boolean) =>
      dell.caller.put(at(`/notices/${id}/reading`), { isAcknowledged });
    app.clock.now = new Date('2026-09-01T16:00:00Z');
    expect(bodyOf(await read(false))).toEqual({ readAt: '2026-09-01T16:00:00.000Z', acknowledgedAt: null });
    expect(await unreadOf(dell.caller)).toBe(mine);
    expect(ids(await listOf(dell.caller, '?state=open'))).toContain(id);
    app.clock.now = new Date('2026-09-01T17:00:00Z');
    const acknowledged = {
      readAt: '2026-09-01T16:00:00.000Z',
      acknowledgedAt: '2026-09-01T17:00:00.000Z',
    };
    expect(bodyOf(await read(true))).toEqual(acknowledged);
    app.clock.now = new Date('2026-09-01T18:00:00Z');
    expect(bodyOf(await read(true))).toEqual(acknowledged);
    expect(ids(await listOf(dell.caller, '?state=open'))).not.toContain(id);
    const { households } = bodyOf(await storehouse.coordinator.get(at(`/notices/${id}/reach`)));
    const reached = households.filter(
      (one: { acknowledgedAt: string | null }) => one.acknowledgedAt !== null,
    );
    expect(reached.map(({ name }: { name: string }) => name)).toEqual(['Dell']);
    expect(households.length).toBeGreaterThan(3);
    expect(await unreadOf(other.caller)).toBe(hers + 1);
  });

  test('who comes later is not asked about what was told before', async () => {
    app.clock.now = new Date('2026-09-03T15:00:00Z');
    const garth = await aHousehold(app, storehouse, 'Garth');
    expect(await listOf(garth.caller)).toEqual([]);
    const id = await tell(everyone);
    expect(ids(await listOf(garth.caller))).toEqual([id]);
  });

  test('the list is searched in the language that it is read in, and comes in pages', async () => {
    const { caller } = buy.households.Birchall;
    const abouts = async (q: string) =>
      (await listOf(caller, `?q=${encodeURIComponent(q)}`)).map(({ about }) => about);
    await tell({ ...everyone, about: 'Scales', says: 'Hang them 100% level_again.' });
    expect(await abouts('HANG them')).toEqual(['Scales']);
    expect(await abouts('100%')).toEqual(['Scales']);
    expect(await abouts('level%again')).toEqual([]);
    expect(await abouts('está fijada')).toEqual([buyName]);
    const page = bodyOf(await caller.get(at('/notices?limit=2')));
    const rest = await listOf(caller, `?after=${page.next}`);
    expect([...ids(page.notices), ...ids(rest)]).toEqual(ids(await listOf(caller)));
  });
});

describe('what the book tells itself', () => {
  const wordsAbout = async (caller: Caller, about: string, headers = {}) =>
    (await listOf(caller, '', headers)).filter((one) => one.about === about).map(({ words }) => words);

  test('each stage of a buy is told to those who pledged in it, in their language', async () => {
    const { Dell } = buy.households;
    expect(await wordsAbout(Dell.caller, buyName)).toEqual([
      `${buyName} is shared out. Choose an hour to fetch your food.`,
      `${buyName} has landed. It is weighed and shared out next.`,
      `${buyName} is ordered. The day on which it lands is not settled yet.`,
      `${buyName} is fixed. Look at what you were promised and see to your deposit.`,
      `${buyName} gathers pledges until 2026-09-20. Pledge what you want of it.`,
    ]);
    const [spanish] = await wordsAbout(Dell.caller, buyName, { 'Accept-Language': 'es' });
    expect(spanish).toBe(`${buyName} está repartida. Elija una hora para recoger su alimento.`);
    const late = await aHousehold(app, storehouse, 'Hale');
    expect(await wordsAbout(late.caller, buyName)).toEqual([]);
  });

  test('a landing day that moves and a buy that is called off are told with the reason', async () => {
    const { Dell } = buy.households;
    const spelt = await aBuy(app, storehouse, { name: 'Spelt' });
    await aPledge(Dell.caller, spelt, { wanted: 50 });
    const { version, ...facts } = bodyOf(await storehouse.coordinator.get(spelt.path));
    const { name, gatheringClosesAt, orderOn, landingPlace } = facts;
    const edit = { version, name, gatheringClosesAt, orderOn, landingPlace, landingOn: '2026-10-15' };
    bodyOf(await storehouse.coordinator.put(spelt.path, edit));
    bodyOf(
      await storehouse.coordinator.post(`${spelt.path}/calling-off`, {
        reason: 'The mill burnt',
        cancellationCosts: [],
        cancellationNote: '',
      }),
      200,
      201,
    );
    expect((await wordsAbout(Dell.caller, 'Spelt')).slice(0, 2)).toEqual([
      'Spelt is called off: The mill burnt. What you paid stands on your balance.',
      'Spelt now lands on 2026-10-15.',
    ]);
  });

  test('a hold is told to the owners in the bag as a matter of safety, and they alone are shown it', async () => {
    const [bag] = buy.bags.wheat;
    const owners = await ownersOf(bag?.id ?? '');
    expect(owners.length).toBeGreaterThan(0);
    const { id, bagCode } = bodyOf(
      await storehouse.coordinator.post(at(`/bags/${bag?.id}/holds`), { reason: 'A smell of mice' }),
      201,
    );
    const says = `Bag ${bagCode}, in which you have food, is on hold: A smell of mice. Do not eat from it, open it or give it away until you hear more.`;
    for (const { householdId, caller } of Object.values(buy.households)) {
      const words = (await listOf(caller)).filter(({ kind }) => kind === 'held').map((one) => one.words);
      expect(words).toEqual(owners.includes(householdId) ? [says] : []);
    }
    for (const householdId of owners) expect(await rowsSeenBy(householdId)).toEqual([householdId]);
    const { householdId: others } = await aHousehold(app, storehouse, 'Isle');
    expect(await rowsSeenBy(others)).toEqual([]);
    bodyOf(
      await storehouse.coordinator.post(at(`/holds/${id}/release-request`), { finding: 'Clean inside' }),
    );
    bodyOf(await packingLead.post(at(`/holds/${id}/release`)));
    const [last] = await listOf(callerOf(owners[0]));
    expect(last?.words).toBe(
      `Bag ${bagCode} is released: Clean inside. What you have of it may be used again.`,
    );
  });

  test('the packing lead sees which households acknowledged it, and each of them sees that', async () => {
    const { notices } = bodyOf(await packingLead.get(at('/notices/written')));
    const { id } = notices.find(({ kind }: Notice) => kind === 'held');
    const reach = async () => bodyOf(await packingLead.get(at(`/notices/${id}/reach`))).households;
    const [household] = await reach();
    expect(household).toMatchObject({ acknowledgedAt: null });
    bodyOf(await callerOf(household.householdId).put(at(`/notices/${id}/reading`), { isAcknowledged: true }));
    expect(await reach()).toMatchObject([{ acknowledgedAt: '2026-09-03T15:00:00.000Z' }]);
    const looks = await app.admin`select from book.private_read
      where household_id = ${household.householdId} and purpose = 'who was reached'`;
    expect(looks.length).toBeGreaterThan(0);
    const take = () => storehouse.coordinator.delete(at(`/notices/${id}`));
    expect(await refusalOf(app, take)).toEqual(refused(409, 'in-use', 'notice'));
    expect(await refusalOf(app, () => buy.households.Dell.caller.get(at(`/notices/${id}/reach`)))).toEqual(
      refused(403, 'duty-missing'),
    );
  });
});

function callerOf(householdId: string | undefined): Caller {
  const found = Object.values(buy.households).find((household) => household.householdId === householdId);
  if (!found) throw new Error('this household is not in the buy');
  return found.caller;
}

async function ownersOf(bagId: string): Promise<string[]> {
  const rows = await app.admin<{ owner_id: string }[]>`select distinct a.owner_id from book.account a
    join book.household h on h.household_id = a.owner_id
    where a.vessel_id = ${bagId} and a.kind = 'mass' and a.inflow > a.outflow`;
  return rows.map((row) => row.owner_id);
}

/** The households whose own notices the app's role is shown while one of them is acted for. */
async function rowsSeenBy(householdId: string): Promise<string[]> {
  return app.sql.begin(async (sql) => {
    await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true),
      set_config('app.household', ${householdId}, true)`;
    const rows = await sql<{ id: string }[]>`select distinct household_id as id from book.notice
      where household_id is not null`;
    return rows.map(({ id }) => id);
  });
}
