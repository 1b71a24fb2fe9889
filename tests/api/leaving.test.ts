import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, foodIdsOf } from '../support/buy.ts';
import { aHousehold, anInvitation, aPersonOf, grantDuty, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let treasurer: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  treasurer = await aHousehold(app, storehouse, 'Birchall', { duties: ['treasurer'] });
});
afterAll(() => app.close());

const pathOf = (householdId: string, rest = '') => `${storehouse.path}/households/${householdId}${rest}`;
const of = ({ householdId }: TestHousehold, rest = '') => pathOf(householdId, rest);
const leave = (household: TestHousehold, version = 1) =>
  household.caller.post(of(household, '/leaving'), { version });
const unsettled = async (household: TestHousehold) =>
  bodyOf(await household.caller.get(of(household, '/leaving'))).unsettled;

/** Wheat that the household had before: three containers of 1,000 g. */
async function bringIn({ caller }: TestHousehold) {
  const foods = await foodIdsOf(storehouse);
  const { containerKinds } = bodyOf(await caller.get(`${storehouse.path}/container-kinds?limit=200`));
  const pail = containerKinds.find((kind: { kindCode: string }) => kind.kindCode === 'pail-6-gallon-lined');
  const wheat = {
    foodId: foods['wheat-hard-red-winter'],
    originNote: 'from before',
    containerKindId: pail.id,
    count: 3,
    gramsEach: 1000,
    packedOn: '2026-08-01',
  };
  return bodyOf(await caller.post(`${storehouse.path}/stock`, wheat), 201);
}

/** Everything that a refused leaving must not have touched. */
async function everything(): Promise<string> {
  const rows = await app.admin`select
    (select jsonb_agg(h order by seat) from book.household h) as households,
    (select jsonb_agg(p order by person_id) from book.person p) as persons,
    (select jsonb_agg(d order by duty_grant_id) from book.duty_grant d) as duties,
    (select jsonb_agg(e order by eater_id) from book.eater e) as eaters,
    (select jsonb_agg(c order by household_id) from book.household_contact c) as contacts,
    (select jsonb_agg(g order by helper_grant_id) from book.helper_grant g) as grants,
    (select jsonb_agg(a order by account_id) from book.account a where inflow > 0 or outflow > 0) as accounts,
    (select count(*) from book.entry) as entries`;
  return JSON.stringify(rows);
}

describe('a household that is settled leaves', () => {
  test('and what is private goes, what moved stays under its seat alone', async () => {
    const corran = await aHousehold(app, storehouse, 'Corran', { duties: ['packing_lead'] });
    const { seat } = (await corran.caller.get(of(corran))).body;
    await corran.caller.post(of(corran, '/eaters'), { name: 'Cara', birthOn: '2018' });
    await corran.caller.put(of(corran, '/contact'), {
      ...{ phone: '555-0142', address: '3 Mill Lane', shownToMembers: true, version: 0 },
    });
    const helperWish = { personId: treasurer.personId, days: 30, reason: 'Cara is ill' };
    await corran.caller.post(of(corran, '/helpers'), helperWish);
    const open = await anInvitation(storehouse, { householdId: corran.householdId });
    await bringIn(corran);

    const left = bodyOf(await leave(corran));
    expect(left).toEqual({
      householdId: corran.householdId,
      seat,
      name: `Seat ${seat}`,
      leftOn: '2026-09-01',
      takenAlong: [1, 2, 3].map(() => ({
        lotId: expect.any(String),
        food: 'Hard red winter wheat',
        vesselCode: expect.any(String),
        grams: 1000,
      })),
    });
    const seen = (await storehouse.coordinator.get(of(corran))).body;
    expect(seen).toMatchObject({ name: `Seat ${seat}`, leftOn: '2026-09-01', version: 2 });
    expect((await app.as().get(open)).body.code).toBe('invitation-not-valid');
    const leftovers = await app.admin`select
      (select count(*)::int from book.eater where household_id = ${corran.householdId}) as eaters,
      (select count(*)::int from book.household_contact where household_id = ${corran.householdId}) as contacts,
      (select count(*)::int from book.duty_grant where person_id = ${corran.personId} and ended_at is null) as duties,
      (select count(*)::int from book.helper_grant where household_id = ${corran.householdId}
        and (ended_at is null or reason <> '')) as helpers`;
    expect(leftovers[0]).toEqual({ eaters: 0, contacts: 0, duties: 0, helpers: 0 });
    const [person] = await app.admin`select name, login_id, left_on::text from book.person
      where person_id = ${corran.personId}`;
    expect(person).toEqual({ name: `Seat ${seat}`, login_id: null, left_on: '2026-09-01' });
  });

  test('and no text of the book names it any more', async () => {
    const quill = await aHousehold(app, storehouse, 'Quillfeather');
    await quill.caller.post(of(quill, '/eaters'), { name: 'Quentin Quillfeather', birthOn: '2018' });
    bodyOf(await leave(quill));
    const tables = await app.admin<{ name: string }[]>`select table_name as name
      from information_schema.tables where table_schema = 'book' and table_name <> 'kept_answer'`;
    for (const { name } of tables) {
      const rows = await app.admin`select 1 from book.${app.admin(name)} t where t::text ilike '%quill%'`;
      expect([name, rows.length]).toEqual([name, 0]);
    }
  });

  test('with its grams, in one entry that the audit still balances', async () => {
    const dell = await aHousehold(app, storehouse, 'Dell');
    await bringIn(dell);
    const { seat } = bodyOf(await leave(dell));
    const movements = await app.admin`select e.what, e.on_day::text, v.kind as into, m.amount::int as grams,
        d.owner_id as owner from book.movement m join book.entry e using (storehouse_id, entry_id)
      join book.account d on d.storehouse_id = m.storehouse_id and d.account_id = m.destination_id
      join book.vessel v on v.storehouse_id = d.storehouse_id and v.vessel_id = d.vessel_id
      where e.subject_id = ${dell.householdId} order by m.line`;
    const row = {
      what: 'taken-along',
      on_day: '2026-09-01',
      into: 'given',
      grams: 1000,
      owner: dell.householdId,
    };
    expect([...movements]).toEqual([row, row, row]);
    const held = await app.admin`select 1 from book.account where owner_id = ${dell.householdId}
      and vessel_kind in ('bag', 'container') and inflow <> outflow`;
    expect(held).toHaveLength(0);
    expect(seat).toBeGreaterThan(0);
    const audit = bodyOf(await treasurer.caller.get(`${storehouse.path}/audit`));
    expect(audit.findings.filter((finding: { holds: boolean }) => !finding.holds)).toEqual([]);
  });

  test('while its login keeps its other storehouses, and may be invited again', async () => {
    const other = await anotherStorehouse(app);
    const elder = await aHousehold(app, storehouse, 'Elder');
    await elder.caller.post(await anInvitation(other, { householdName: 'Elder' }), { personName: 'Edda' });
    bodyOf(await leave(elder));
    expect((await elder.caller.get(of(elder))).body.code).toBe('storehouse-not-found');
    const me = bodyOf(await elder.caller.get('/api/session'));
    expect(me.storehouses.map((row: { name: string }) => row.name)).toEqual(['Bell Lane Storehouse']);
    const again = await elder.caller.post(await anInvitation(storehouse, { householdName: 'Elder' }), {
      personName: 'Edda',
    });
    expect(again.status).toBe(201);
    expect(again.body.householdId).not.toBe(elder.householdId);
  });

  test('once, however many ask at once', async () => {
    const fenn = await aHousehold(app, storehouse, 'Fenn');
    const flo = await aPersonOf(app, storehouse, fenn, 'Flo Fenn');
    const answers = await Promise.all([leave(fenn), leave(flo), leave(fenn), leave(flo)]);
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1);
    const codes = answers.filter(({ status }) => status !== 200).map(({ body }) => body.code);
    // Whoever was let in before the first one left finds the household gone; whoever comes later is no member.
    for (const code of codes) expect(['household-has-left', 'storehouse-not-found']).toContain(code);
  });
});

describe('a household stays until', () => {
  test('what it owes is paid, and what it is owed is paid back', async () => {
    const garth = await aHousehold(app, storehouse, 'Garth');
    const opening = { of: 'household', householdId: garth.householdId, reason: 'older book' };
    const { caller } = treasurer;
    bodyOf(await caller.post(`${storehouse.path}/opening-balances`, { ...opening, balanceMinorUnits: 1250 }));
    const before = await everything();
    const refused = await leave(garth);
    expect([refused.status, refused.body]).toMatchObject([
      409,
      {
        code: 'household-not-settled',
        unsettled: [
          {
            what: 'balance',
            minorUnits: 1250,
            message: 'The household owes 12.50 USD. It is to be paid first.',
          },
        ],
      },
    ]);
    expect(await everything()).toBe(before);
    const payment = { householdId: garth.householdId, till: 'bank' };
    bodyOf(await caller.post(`${storehouse.path}/payments`, { ...payment, minorUnits: 1300 }));
    expect(await unsettled(garth)).toMatchObject([
      {
        what: 'balance',
        minorUnits: -50,
        message: 'The household is owed 0.50 USD. It is to be paid back first.',
      },
    ]);
    bodyOf(await caller.post(`${storehouse.path}/refunds`, { ...payment, minorUnits: 50 }));
    expect(await unsettled(garth)).toEqual([]);
    bodyOf(await leave(garth));
  });

  test('no pledge and no deposit binds it', async () => {
    const hale = await aHousehold(app, storehouse, 'Hale');
    const buy = await aBuy(app, storehouse, { name: 'Spring wheat' });
    await aPledge(hale.caller, buy, { wanted: 50, ceilingMinorUnits: 90 });
    const deposit = { householdId: hale.householdId, minorUnits: 2000, till: 'cash' };
    bodyOf(await treasurer.caller.post(`${buy.path}/deposits`, deposit));
    const refused = await leave(hale);
    expect(refused.body.unsettled).toMatchObject([
      {
        what: 'deposit',
        minorUnits: -2000,
        buyId: buy.buyId,
        message: 'A deposit of 20.00 USD is held for Spring wheat.',
      },
      {
        what: 'open-buy',
        buyId: buy.buyId,
        because: 'pledge',
        message: 'Spring wheat is gathering: withdraw the pledge, or wait until the buy is closed.',
      },
    ]);
    bodyOf(await hale.caller.post(`${buy.path}/withdrawals`, { reason: 'We move away.' }));
    expect(await unsettled(hale)).toMatchObject([{ what: 'balance', minorUnits: -2000 }]);
    const refund = { householdId: hale.householdId, till: 'cash', minorUnits: 2000 };
    bodyOf(await treasurer.caller.post(`${storehouse.path}/refunds`, refund));
    bodyOf(await leave(hale));
    const ceilings =
      await app.admin`select 1 from book.pledge_ceiling where household_id = ${hale.householdId}`;
    expect(ceilings).toHaveLength(0);
  });

  test('somebody else holds the duty that must not stand empty', async () => {
    const before = await everything();
    const refused = await leave(treasurer);
    expect(refused.body).toMatchObject({
      code: 'household-not-settled',
      unsettled: [
        { what: 'last-of-duty', duty: 'treasurer', message: 'Somebody else must become treasurer first.' },
      ],
    });
    expect(await everything()).toBe(before);
    const isle = await aHousehold(app, storehouse, 'Isle', { duties: ['treasurer'] });
    bodyOf(await leave(isle));
  });

  test('its page is not stale', async () => {
    const jory = await aHousehold(app, storehouse, 'Jory');
    await jory.caller.put(of(jory), { name: 'Jory North', version: 1 });
    const stale = await leave(jory);
    expect(stale.body).toMatchObject({ code: 'stale-version', newer: { name: 'Jory North', version: 2 } });
    bodyOf(await leave(jory, 2));
  });

  test('a pledge made in the very moment of leaving is either made or refused, never left behind', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Summer wheat' });
    for (const number of [1, 2, 3]) {
      const kerr = await aHousehold(app, storehouse, `Kerr ${number}`);
      const [, left] = await Promise.all([
        aPledge(kerr.caller, buy, { wanted: 50 }).catch(() => null),
        leave(kerr),
      ]);
      const pledges = await app.admin`select 1 from book.pledge where household_id = ${kerr.householdId}`;
      expect([left.status, pledges.length]).toEqual(left.status === 200 ? [200, 0] : [409, 1]);
    }
  });
});

describe('others do not take a household out', () => {
  test('neither a neighbour nor the coordinator, while it has a login of its own', async () => {
    const lund = await aHousehold(app, storehouse, 'Lund');
    const moor = await aHousehold(app, storehouse, 'Moor');
    const before = await everything();
    for (const caller of [moor.caller, storehouse.coordinator, treasurer.caller]) {
      const answer = await caller.post(of(lund, '/leaving'), { version: 1 });
      expect(answer.body.code).toBe('not-your-household');
      expect((await caller.get(of(lund, '/leaving'))).body.code).toBe('not-your-household');
    }
    expect(await everything()).toBe(before);
  });

  test('but the coordinator does for a household on paper, and is told no amount', async () => {
    const paper = { name: 'Nash', personName: 'Nora Nash' };
    const { id } = bodyOf(await storehouse.coordinator.post(`${storehouse.path}/households`, paper));
    const opening = { of: 'household', householdId: id, balanceMinorUnits: 700, reason: 'older book' };
    bodyOf(await treasurer.caller.post(`${storehouse.path}/opening-balances`, opening));
    const refused = await storehouse.coordinator.post(pathOf(id, '/leaving'), { version: 1 });
    expect(refused.body.unsettled).toEqual([
      { what: 'balance', minorUnits: null, message: 'The household owes. It is to be paid first.' },
    ]);
    expect(JSON.stringify(refused.body)).not.toMatch(/7\.00|700/);
    const payment = { householdId: id, till: 'cash', minorUnits: 700 };
    bodyOf(await treasurer.caller.post(`${storehouse.path}/payments`, payment));
    bodyOf(await storehouse.coordinator.post(pathOf(id, '/leaving'), { version: 1 }));
  });
});

describe('a person', () => {
  const leaveAlone = ({ caller, personId }: TestHousehold) =>
    caller.post(`${storehouse.path}/persons/${personId}/leaving`);

  test('leaves alone, and the household stays', async () => {
    const orme = await aHousehold(app, storehouse, 'Orme');
    const olive = await aPersonOf(app, storehouse, orme, 'Olive Orme');
    await grantDuty(storehouse, olive.personId, 'reviewer');
    expect(bodyOf(await leaveAlone(olive))).toEqual({ household: null });
    expect((await olive.caller.get(of(orme))).body.code).toBe('storehouse-not-found');
    expect((await orme.caller.get(of(orme))).body).toMatchObject({ name: 'Orme', leftOn: null });
    const held =
      await app.admin`select 1 from book.duty_grant where person_id = ${olive.personId} and ended_at is null`;
    expect(held).toHaveLength(0);
  });

  test('who is the last of a household takes it with them', async () => {
    const pike = await aHousehold(app, storehouse, 'Pike');
    expect(bodyOf(await leaveAlone(pike)).household).toMatchObject({
      householdId: pike.householdId,
      takenAlong: [],
    });
    expect((await storehouse.coordinator.get(of(pike))).body.leftOn).toBe('2026-09-01');
  });

  test('who holds the last of a duty stays', async () => {
    const bess = await aPersonOf(app, storehouse, treasurer, 'Bess Birchall');
    const before = await everything();
    expect((await leaveAlone(treasurer)).body).toMatchObject({ code: 'last-of-duty', duty: 'treasurer' });
    expect(await everything()).toBe(before);
    bodyOf(await leaveAlone(bess));
  });

  test('of two who leave at once, the second takes the household along', async () => {
    const rook = await aHousehold(app, storehouse, 'Rook');
    const ruth = await aPersonOf(app, storehouse, rook, 'Ruth Rook');
    const answers = await Promise.all([leaveAlone(rook), leaveAlone(ruth)]);
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
    expect((await storehouse.coordinator.get(of(rook))).body.leftOn).toBe('2026-09-01');
  });

  test('is not sent away by another', async () => {
    const shaw = await aHousehold(app, storehouse, 'Shaw');
    const path = `${storehouse.path}/persons/${shaw.personId}/leaving`;
    for (const caller of [storehouse.coordinator, treasurer.caller])
      expect((await caller.post(path)).body.code).toBe('not-your-household');
  });
});

test('a helper’s right over a household ends with it, and so does a leaver’s right over others', async () => {
  const thorn = await aHousehold(app, storehouse, 'Thorn');
  const usher = await aHousehold(app, storehouse, 'Usher');
  const wish = { days: 30, reason: '' };
  bodyOf(await thorn.caller.post(of(thorn, '/helpers'), { ...wish, personId: usher.personId }));
  bodyOf(await usher.caller.post(of(usher, '/helpers'), { ...wish, personId: thorn.personId }));
  bodyOf(await leave(thorn));
  const headers = { 'Sheafbook-For-Household': thorn.householdId };
  expect((await usher.caller.get(`${storehouse.path}/households`, headers)).body.code).toBe(
    'helper-grant-missing',
  );
  const [grant] = (await usher.caller.get(of(usher, '/helpers'))).body.helpers;
  expect(grant).toMatchObject({ isInForce: false, endedAt: app.clock.now.toISOString() });
});

test('what is private is taken along too, and a helper who does it is written down', async () => {
  const voss = await aHousehold(app, storehouse, 'Voss');
  await voss.caller.post(of(voss, '/eaters'), {
    name: 'Vera',
    birthOn: '2018',
    excludedAllergens: ['milk', 'soy'],
  });
  const contact = { phone: '555-0142', address: '3 Mill Lane', shownToMembers: false };
  await voss.caller.put(of(voss, '/contact'), { ...contact, version: 0 });
  const plan = { needBasis: 'energy', targetDays: 90, targetGroups: ['grains'], addYear: false };
  const guidelines = [{ foodGroup: 'salt', gramsPerAdultYear: 2000 }];
  await voss.caller.put(of(voss, '/plan'), { ...plan, guidelines, version: 0 });
  await storehouse.coordinator.get(of(voss, '/contact?purpose=landing'));
  const wish = { personId: treasurer.personId, days: 30, reason: 'away' };
  await voss.caller.post(of(voss, '/helpers'), wish);
  await bringIn(voss);
  const { tables } = bodyOf(await voss.caller.get(of(voss, '/take-along')));
  expect(tables).toMatchObject({
    contact: [contact],
    persons: [{ name: 'Voss Person', leftOn: null }],
    eaters: [{ name: 'Vera', birthOn: '2018', excludedAllergens: ['milk', 'soy'] }],
    plan: [plan],
    guidelines,
    containers: [1, 2, 3].map(() => ({ kindCode: 'pail-6-gallon-lined', packedOn: '2026-08-01' })),
    holdings: [1, 2, 3].map(() => ({ vesselKind: 'container', grams: 1000 })),
    helpers: [{ helperName: 'Birchall Person', reason: 'away', endedAt: null }],
    privateReads: [{ readerName: 'Ada Ashdown', what: 'contact', purpose: 'landing' }],
  });
  const csv = await voss.caller.get(of(voss, '/take-along?format=csv&table=eaters'));
  expect(csv.body).toContain('milk soy');
  await treasurer.caller.get(of(voss, '/take-along'), { 'Sheafbook-For-Household': voss.householdId });
  const [newest] = bodyOf(await voss.caller.get(of(voss, '/private-reads'))).privateReads;
  expect(newest).toMatchObject({
    readerName: 'Birchall Person',
    what: 'everything',
    purpose: 'taking along',
  });
});
