import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
let treasurer: TestHousehold;
let reviewer: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
  treasurer = await aHousehold(app, storehouse, 'Dell', { duties: ['treasurer'] });
  reviewer = await aHousehold(app, storehouse, 'Elder', { duties: ['reviewer'] });
});
afterAll(() => app.close());

const of = (household: TestHousehold, rest: string) =>
  `${storehouse.path}/households/${household.householdId}${rest}`;
const contact = { phone: '555-0142', address: '3 Mill Lane', shownToMembers: false };
const setContact = (household: TestHousehold, change: Record<string, unknown> = {}) =>
  household.caller.put(of(household, '/contact'), { ...contact, version: 0, ...change });
const readsOf = async (household: TestHousehold) =>
  (await household.caller.get(of(household, '/private-reads'))).body.privateReads;

describe('a household’s telephone and address', () => {
  test('are its own to write, from the version that was read', async () => {
    const fenn = await aHousehold(app, storehouse, 'Fenn');
    expect((await fenn.caller.get(of(fenn, '/contact'))).body).toMatchObject({ phone: '', version: 0 });
    expect((await setContact(fenn)).body).toMatchObject({ ...contact, version: 1 });
    const stale = await setContact(fenn, { phone: '555-0199' });
    expect(stale.body).toMatchObject({ code: 'stale-version', newer: { ...contact, version: 1 } });
    const second = await setContact(fenn, { phone: '555-0199', version: 1 });
    expect(second.body).toMatchObject({ phone: '555-0199', version: 2 });
    const foreign = await storehouse.coordinator.put(of(fenn, '/contact'), { ...contact, version: 2 });
    expect(foreign.body.code).toBe('not-your-household');
  });

  test('are read by a duty for a purpose only, and the household sees who looked and why', async () => {
    const garth = await aHousehold(app, storehouse, 'Garth');
    await setContact(garth);
    const path = of(garth, '/contact');
    const bare = await storehouse.coordinator.get(path);
    expect(bare.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'purpose' }] });
    expect((await storehouse.coordinator.get(`${path}?purpose=x`)).body.code).toBe('invalid-input');
    expect(await readsOf(garth)).toEqual([]);
    const told = await storehouse.coordinator.get(`${path}?purpose=the%20lorry%20comes%20early`);
    expect(told.body).toMatchObject(contact);
    await treasurer.caller.get(`${path}?purpose=a%20returned%20payment`);
    expect(await readsOf(garth)).toMatchObject([
      {
        readerName: 'Dell Person',
        what: 'contact',
        purpose: 'a returned payment',
        readAt: expect.any(String),
      },
      { readerName: 'Ada Ashdown', what: 'contact', purpose: 'the lorry comes early' },
    ]);
  });

  test('are hidden from a member and a reviewer, purpose or not, unless the household shows them', async () => {
    const hale = await aHousehold(app, storehouse, 'Hale');
    await setContact(hale);
    for (const { caller } of [birchall, reviewer])
      for (const path of ['/contact', '/contact?purpose=curiosity'])
        expect((await caller.get(of(hale, path))).body.code).toBe('not-your-household');
    await setContact(hale, { shownToMembers: true, version: 1 });
    expect((await birchall.caller.get(of(hale, '/contact'))).body).toMatchObject({ phone: '555-0142' });
    expect(await readsOf(hale)).toEqual([]); // what is shown to everyone is no private thing
  });
});

describe('who looked', () => {
  test('is for the household alone, whatever the duty', async () => {
    for (const caller of [storehouse.coordinator, treasurer.caller, reviewer.caller, birchall.caller])
      expect((await caller.get(of(corran, '/private-reads'))).body.code).toBe('not-your-household');
  });

  test('comes newest first, page by page, and as CSV', async () => {
    const isle = await aHousehold(app, storehouse, 'Isle');
    for (const purpose of ['first', 'second', 'third'])
      await storehouse.coordinator.get(of(isle, `/contact?purpose=${purpose}`));
    const path = of(isle, '/private-reads');
    const page = (await isle.caller.get(`${path}?limit=2`)).body;
    const rest = (await isle.caller.get(`${path}?limit=2&after=${page.next}`)).body;
    const purposes = [...page.privateReads, ...rest.privateReads].map(
      (row: { purpose: string }) => row.purpose,
    );
    expect([purposes, rest.next]).toEqual([['third', 'second', 'first'], null]);
    const csv = (await isle.caller.get(`${path}?format=csv`)).body;
    expect(csv.split('\r\n')[0]).toBe('id,readerId,readerName,what,purpose,readAt');
  });

  test('is changed and deleted by nobody', async () => {
    await expect(app.sql`update book.private_read set purpose = 'none'`).rejects.toThrow('permission denied');
    await expect(app.sql`delete from book.private_read`).rejects.toThrow('permission denied');
  });

  test('is summed for the reviewer by duty and purpose, naming nobody', async () => {
    app.clock.now = new Date('2026-10-10T15:00:00Z');
    const jory = await aHousehold(app, storehouse, 'Jory');
    for (const household of [jory, birchall, jory])
      await treasurer.caller.get(of(household, '/contact?purpose=a%20returned%20payment'));
    await storehouse.coordinator.get(of(jory, '/contact?purpose=landing'));
    await jory.caller.get(of(jory, '/contact')); // one's own is nobody's business
    const path = `${storehouse.path}/private-reads`;
    const { looks } = (await reviewer.caller.get(`${path}?from=2026-10-10&to=2026-10-10`)).body;
    const day = { firstOn: '2026-10-10', lastOn: '2026-10-10' };
    expect(looks).toEqual([
      {
        duties: 'treasurer',
        what: 'contact',
        purpose: 'a returned payment',
        looks: 3,
        readers: 1,
        households: 2,
        ...day,
      },
      {
        duties: 'coordinator',
        what: 'contact',
        purpose: 'landing',
        looks: 1,
        readers: 1,
        households: 1,
        ...day,
      },
    ]);
    expect((await reviewer.caller.get(`${path}?from=2026-10-11`)).body.looks).toEqual([]);
    const turned = await reviewer.caller.get(`${path}?from=2026-10-11&to=2026-10-10`);
    expect(turned.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'to' }] });
  });

  test('is summed for nobody but the reviewer', async () => {
    for (const caller of [storehouse.coordinator, treasurer.caller, birchall.caller])
      expect((await caller.get(`${storehouse.path}/private-reads`)).body.code).toBe('duty-missing');
  });
});
