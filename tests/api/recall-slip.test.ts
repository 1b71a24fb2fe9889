import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

type Can = { id: string; code: string };
let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let elder: TestHousehold;
let lead: TestHousehold;
let dells: Can[];
let elders: Can[];
let given: GivenCan[];
let pantryId: string;
let holdId: string;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  elder = await aHousehold(app, storehouse, 'Elder');
  lead = await aHousehold(app, storehouse, 'Lorne', { duties: ['packing_lead'] });
  const wish = { food: 'wheat-hard-white', packedOn: '2026-08-01', gramsEach: 2_000 };
  dells = await (await stockOf(storehouse, dell)).bringIn({ ...wish, count: 2 });
  elders = await (await stockOf(storehouse, elder)).bringIn({ ...wish, count: 1 });
  given = await commonCans(storehouse, [
    { food: 'wheat-hard-white', grams: 2_200, count: 1, stored: '2020-01' },
  ]);
  pantryId = (await post('/pantries', aPantryWish('Mill Lane', { mostDaysPastBest: 3650, leastLifeDays: 0 })))
    .id;
  const trips = [{ pantryId, onDay: '2026-09-08', capacityGrams: 50_000 }];
  const { id: matchingId } = await post('/gift-matchings', { trips });
  await post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' });
  const foodId = (await foodIdsOf(storehouse))['wheat-hard-white'];
  const of = { scope: 'food', foodId, fromOn: '2020-01-01', toOn: '2026-08-31' };
  holdId = bodyOf(await lead.caller.post(at('/holds'), { of, reason: 'The mill found stones.' }), 201).id;
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const post = async (rest: string, body: unknown) =>
  bodyOf(await storehouse.coordinator.post(at(rest), body), 201);
const key = (body: Record<string, unknown>, caller = lead.caller) =>
  caller.post(at(`/holds/${holdId}/slips`), {
    signedBy: 'Ida',
    writtenOn: '2026-09-02',
    became: [],
    ...body,
  });
const standing = async () => bodyOf(await lead.caller.get(at(`/holds/${holdId}/standing`)));
const inStanding = async (name: string) =>
  (await standing()).households.find((row: { name: string }) => row.name === name);
const toTelephone = async (): Promise<string[]> =>
  bodyOf(await storehouse.coordinator.get(at('/next-steps')))
    .items.filter(({ kind }: { kind: string }) => kind === 'unreached')
    .map(({ words }: { words: string }) => words);

test('a household whose slip is keyed in is reached: nobody telephones it, and it finds what was keyed', async () => {
  app.clock.now = new Date('2026-09-03T15:00:00Z');
  expect((await toTelephone())[0]).toMatch(/Telephone Dell, Elder/);
  expect(await inStanding('Dell')).toMatchObject({ acknowledgedAt: null, slip: null });
  expect((await inStanding('Dell')).codes).toEqual(dells.map(({ code }) => code).toSorted());
  const [aside, eaten] = dells;
  const became = [
    { code: aside?.code.toLowerCase(), became: 'aside' },
    { code: eaten?.code, became: 'eaten' },
  ];
  const slip = bodyOf(await key({ householdId: dell.householdId, became, note: 'by her son' }), 201);
  const kept = {
    ...{ signedBy: 'Ida', writtenOn: '2026-09-02', note: 'by her son' },
    keyedAt: '2026-09-03T15:00:00.000Z',
    became: became
      .map((line) => ({ ...line, code: line.code?.toUpperCase() }))
      .toSorted((a, b) => ((a.code ?? '') < (b.code ?? '') ? -1 : 1)),
  };
  expect(slip).toMatchObject(kept);
  expect(slip.keyedBy).toMatch(/Lorne/);
  expect(await inStanding('Dell')).toMatchObject({
    ...{ acknowledgedAt: '2026-09-03T15:00:00.000Z', answer: null, slip: kept },
  });
  expect((await toTelephone())[0]).toMatch(/Telephone Elder:/);

  expect(bodyOf(await dell.caller.get(at(`/holds/${holdId}/own-part`))).slip).toMatchObject(kept);
  expect(bodyOf(await elder.caller.get(at(`/holds/${holdId}/own-part`))).slip).toBeNull();
  const reads = bodyOf(await dell.caller.get(at(`/households/${dell.householdId}/private-reads`)));
  expect(reads.privateReads).toContainEqual(expect.objectContaining({ what: 'notices', purpose: 'recall' }));
});

test('a later slip stands in its place, and a screen’s own answer beside it', async () => {
  app.clock.now = new Date('2026-09-04T15:00:00Z');
  const [first] = dells;
  const became = [{ code: first?.code, became: 'thrown-away' }];
  bodyOf(await key({ householdId: dell.householdId, signedBy: 'Otto', became }), 201);
  const said = { hasSome: false, eatenOn: null, givenOn: null, note: '' };
  bodyOf(await dell.caller.put(at(`/holds/${holdId}/answer`), said));
  expect(await inStanding('Dell')).toMatchObject({
    ...{ answer: { hasSome: false }, slip: { signedBy: 'Otto', became } },
    acknowledgedAt: '2026-09-03T15:00:00.000Z', // since its first word
  });
});

test('a pantry’s slip tells what became of what went there', async () => {
  const [can] = given;
  const became = [{ code: can?.code, became: 'given' }];
  bodyOf(await key({ pantryId, signedBy: 'the intake desk', became }, storehouse.coordinator), 201);
  const { pantries } = await standing();
  expect(pantries).toMatchObject([{ pantry: 'Mill Lane', slip: { signedBy: 'the intake desk', became } }]);
});

test('a slip is refused for what it can’t be, and changes nothing', async () => {
  const [dells1] = dells;
  const [elders1] = elders;
  const nobody = '0192f0c8-5a00-7000-8000-000000000001';
  const of = { householdId: elder.householdId, became: [{ code: elders1?.code, became: 'aside' }] };
  const strange = [{ code: dells1?.code, became: 'aside' }];
  const cases: [Record<string, unknown>, ReturnType<typeof refused>][] = [
    [{ ...of, writtenOn: '2026-09-30' }, refused(400, 'invalid-input', 'writtenOn')],
    [{ ...of, writtenOn: '2026-08-31' }, refused(400, 'invalid-input', 'writtenOn')],
    [{ ...of, signedBy: ' ' }, refused(400, 'invalid-input', 'signedBy')],
    [{ ...of, became: [] }, refused(400, 'invalid-input', 'became')],
    [{ ...of, became: strange }, refused(404, 'thing-not-found', 'became.0.code')],
    [{ ...of, became: [...of.became, ...of.became] }, refused(400, 'invalid-input', 'became.1.code')],
    [{ ...of, pantryId }, refused(400, 'invalid-input', 'householdId')],
    [{ became: of.became }, refused(400, 'invalid-input', 'householdId')],
    [{ ...of, householdId: lead.householdId }, refused(404, 'thing-not-found')],
    [{ ...of, householdId: null, pantryId: nobody }, refused(404, 'thing-not-found')],
  ];
  for (const [body, refusal] of cases) expect(await refusalOf(app, () => key(body))).toEqual(refusal);
  expect(await refusalOf(app, () => key(of, dell.caller))).toEqual(refused(403, 'duty-missing'));
});

test('the last household is off the list with its slip, and a released hold takes none', async () => {
  const became = [{ code: elders[0]?.code, became: 'never-had' }];
  bodyOf(await key({ householdId: elder.householdId, became }), 201);
  expect(await toTelephone()).toEqual([]);
  const finding = { finding: 'Sieved, and no stone in any of it.' };
  bodyOf(await lead.caller.post(at(`/holds/${holdId}/release-request`), finding));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${holdId}/release`)));
  const again = () => key({ householdId: elder.householdId, became });
  expect(await refusalOf(app, again)).toEqual(refused(409, 'hold-ended'));
});
