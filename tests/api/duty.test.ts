import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, aPersonOf, grantDuty, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let founder: string;
let birchall: TestHousehold;
let bess: TestHousehold;
let corran: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  founder = (await storehouse.coordinator.get(`${storehouse.path}/persons`)).body.persons[0].id;
  birchall = await aHousehold(app, storehouse, 'Birchall');
  bess = await aPersonOf(app, storehouse, birchall, 'Bess Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
});
afterAll(() => app.close());
// Each test starts with the founder as the only holder of any duty.
beforeEach(async () => {
  await app.admin`update book.duty_grant set ended_at = ${app.clock.now} where ended_at is null
    and not (person_id = ${founder} and duty = 'coordinator')`;
});

const duties = (personId: string) => `${storehouse.path}/persons/${personId}/duties`;
const give = (personId: string, duty: string) => storehouse.coordinator.post(duties(personId), { duty });
const end = (personId: string, duty: string) => storehouse.coordinator.delete(`${duties(personId)}/${duty}`);
const held = async () =>
  (
    await app.admin<{ name: string; duty: string }[]>`select p.name, d.duty from book.duty_grant d
      join book.person p using (storehouse_id, person_id)
      where d.storehouse_id = ${storehouse.storehouseId} and d.ended_at is null order by p.name, d.duty`
  ).map(({ name, duty }) => `${name}: ${duty}`);

test('a duty is given, works at once, and is ended with its dates kept', async () => {
  const given = await give(corran.personId, 'coordinator');
  expect([given.status, given.body]).toMatchObject([
    201,
    { personId: corran.personId, duty: 'coordinator', grantedBy: founder, endedAt: null },
  ]);
  const invitations = `${storehouse.path}/invitations`;
  expect((await corran.caller.get(invitations)).status).toBe(200);
  app.clock.now = new Date(app.clock.now.getTime() + 86_400_000);
  expect((await end(corran.personId, 'coordinator')).body.endedAt).toBe(app.clock.now.toISOString());
  expect((await corran.caller.get(invitations)).body.code).toBe('duty-missing');
  const [newest] = (await birchall.caller.get(`${storehouse.path}/duties`)).body.duties;
  expect(newest).toMatchObject({
    personName: 'Corran Person',
    duty: 'coordinator',
    endedAt: expect.any(String),
  });
});

describe('the reviewer is neither the treasurer nor of the treasurer’s household', () => {
  test.for([
    { first: 'treasurer', second: 'reviewer', by: 'bess', code: 'duties-not-separate' },
    { first: 'reviewer', second: 'treasurer', by: 'bess', code: 'duties-not-separate' },
    { first: 'treasurer', second: 'reviewer', by: 'birchall', code: 'duties-not-separate' },
    { first: 'reviewer', second: 'treasurer', by: 'birchall', code: 'duties-not-separate' },
    { first: 'treasurer', second: 'reviewer', by: 'corran', code: undefined },
    { first: 'treasurer', second: 'coordinator', by: 'bess', code: undefined },
    { first: 'treasurer', second: 'treasurer', by: 'bess', code: undefined },
  ])('Birchall is $first; $by becomes $second: $code', async ({ first, second, by, code }) => {
    await grantDuty(storehouse, birchall.personId, first as 'treasurer');
    const before = await held();
    const answer = await give({ birchall, bess, corran }[by]?.personId ?? '', second);
    expect(answer.body.code).toBe(code);
    if (code) expect(await held()).toEqual(before);
  });

  test('not even when both are given in the same moment', async () => {
    const answers = await Promise.all([
      give(birchall.personId, 'treasurer'),
      give(bess.personId, 'reviewer'),
      give(bess.personId, 'treasurer'),
      give(birchall.personId, 'reviewer'),
    ]);
    const duties = new Set((await held()).map((line) => line.split(': ')[1]));
    expect(duties.has('treasurer') && duties.has('reviewer')).toBe(false);
    expect(answers.some(({ body }) => body.code === 'duties-not-separate')).toBe(true);
  });

  test('and the way is free once the one has ended', async () => {
    await give(birchall.personId, 'reviewer');
    await end(birchall.personId, 'reviewer');
    expect((await give(bess.personId, 'treasurer')).status).toBe(201);
  });
});

describe('the last one of a duty', () => {
  test.for([
    { duty: 'coordinator', of: 'founder', code: 'last-of-duty' },
    { duty: 'treasurer', of: 'birchall', code: 'last-of-duty' },
    { duty: 'reviewer', of: 'corran', code: undefined },
    { duty: 'packing_lead', of: 'corran', code: undefined },
    { duty: 'equipment_keeper', of: 'corran', code: undefined },
  ])('$duty can be ended with nobody succeeding: $code', async ({ duty, of, code }) => {
    const personId = { birchall: birchall.personId, corran: corran.personId }[of] ?? founder;
    if (personId !== founder) await give(personId, duty);
    expect((await end(personId, duty)).body.code).toBe(code);
  });

  test('goes once there is a successor', async () => {
    await give(birchall.personId, 'treasurer');
    await give(corran.personId, 'treasurer');
    expect((await end(birchall.personId, 'treasurer')).status).toBe(200);
    expect((await end(corran.personId, 'treasurer')).body.code).toBe('last-of-duty');
  });

  test('stays when both end in the same moment', async () => {
    await give(birchall.personId, 'treasurer');
    await give(corran.personId, 'treasurer');
    const answers = await Promise.all([
      end(birchall.personId, 'treasurer'),
      end(corran.personId, 'treasurer'),
    ]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409]);
    expect((await held()).filter((line) => line.endsWith(': treasurer'))).toHaveLength(1);
  });
});

describe('a duty is refused', () => {
  test('twice to one person', async () => {
    await give(corran.personId, 'reviewer');
    expect((await give(corran.personId, 'reviewer')).body.code).toBe('already-there');
  });

  test('to a person without a login', async () => {
    const paper = { name: 'Fenn', personName: 'Florence Fenn' };
    const made = await storehouse.coordinator.post(`${storehouse.path}/households`, paper);
    const answer = await give(made.body.personId, 'reviewer');
    expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'person' }] });
  });

  test('to a person of another storehouse', async () => {
    const other = await anotherStorehouse(app);
    const [stranger] = (await other.coordinator.get(`${other.path}/persons`)).body.persons;
    expect((await give(stranger.id, 'reviewer')).body.code).toBe('thing-not-found');
  });

  test.for(['member', 'Coordinator', '', 'coordinator; drop'])('when it is none: "%s"', async (duty) => {
    expect((await give(corran.personId, duty)).body).toMatchObject({
      code: 'invalid-input',
      fields: [{ field: 'duty' }],
    });
  });

  test('from anyone but a coordinator, whether to give or to end', async () => {
    await give(birchall.personId, 'treasurer');
    const answers = [
      await birchall.caller.post(duties(birchall.personId), { duty: 'coordinator' }),
      await birchall.caller.delete(`${duties(founder)}/coordinator`),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(['duty-missing', 'duty-missing']);
  });

  test('an end, where the person does not hold it', async () => {
    expect((await end(corran.personId, 'treasurer')).body.code).toBe('thing-not-found');
    expect((await end(corran.personId, 'gardener')).body.code).toBe('thing-not-found');
  });
});
