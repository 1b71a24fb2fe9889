import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let member: TestHousehold;
let wheatId: string;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  member = await aHousehold(app, storehouse, 'Dell');
  const { foods } = bodyOf(await member.caller.get(at('/foods?search=hard red winter')));
  wheatId = foods[0].id;
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const waysTo = async (query: string) =>
  bodyOf(await member.caller.get(at(`/ways-to-keep?food=${wheatId}&${query}`)));
type Way = { kind: { kindCode: string }; treatment: { code: string }; costMinorUnits: number | null };
const named = (ways: Way[], kindCode: string, code: string) =>
  ways.find(({ kind, treatment }) => kind.kindCode === kindCode && treatment.code === code);

const setPrice = (supplyCode: string, priceMinorUnits: number | null) =>
  storehouse.coordinator.put(at('/supply-prices'), { supplyCode, priceMinorUnits });

test('a member sees what wheat can be kept in before any price is known, and nothing modest is blocked', async () => {
  const { ways, refused } = await waysTo('grams=20000');
  expect(ways.filter(({ costMinorUnits }: Way) => costMinorUnits !== null)).toEqual([]);
  const { containerKinds } = bodyOf(await member.caller.get(at('/container-kinds')));
  expect(ways.filter(({ treatment }: Way) => treatment.code === 'none').length).toBe(containerKinds.length);
  // Nobody has measured its moisture, so that no pack without oxygen is offered yet.
  expect(named(ways, 'can-no-10', 'oxygen-absorber')).toBeUndefined();
  expect(named(refused, 'can-no-10', 'oxygen-absorber')).toMatchObject({
    why: [{ misfit: 'moisture-unknown', say: { es: expect.stringContaining('mídala') } }],
    nearest: { code: 'freeze-thaw-freeze' },
  });
});

// The published sums of the calculation: 8 cans at 1.33 and 8 packets of 300 at 0.25 are 12.64, over 30 years 0.42 a year.
test('with its moisture and the group’s prices the cheapest per year kept stands first', async () => {
  const { containerKinds } = bodyOf(await member.caller.get(at('/container-kinds')));
  const can = containerKinds.find(({ kindCode }: { kindCode: string }) => kindCode === 'can-no-10');
  bodyOf(
    await storehouse.coordinator.put(at(`/container-kinds/${can.id}`), {
      version: can.version,
      tareGrams: null,
      priceMinorUnits: 133,
    }),
  );
  bodyOf(await setPrice('absorber-300', 30));
  const { prices } = bodyOf(await setPrice('absorber-300', 25));
  expect(prices).toEqual([{ supplyCode: 'absorber-300', priceMinorUnits: 25 }]);
  const { ways } = await waysTo('grams=20000&moistureTenths=95');
  expect(ways[0]).toMatchObject({
    kind: { kindCode: 'can-no-10' },
    treatment: { code: 'oxygen-absorber', cautions: [{ code: 'oxygen-free-moist' }] },
    containers: 8,
    packets: [{ sizeMillilitres: 300, count: 8 }],
    costMinorUnits: 1264,
    costPerYearMinorUnits: 42,
    life: { likelyDays: 10_957 },
  });
  expect(bodyOf(await setPrice('absorber-300', null)).prices).toEqual([]);
});

test('what the supplies list says a pack costs is what counts, wherever else a price was given', async () => {
  const { containerKinds } = bodyOf(await member.caller.get(at('/container-kinds')));
  const can = containerKinds.find(({ kindCode }: { kindCode: string }) => kindCode === 'can-no-10');
  const cost = async () => {
    const { ways } = await waysTo('grams=20000&moistureTenths=95');
    return named(ways, 'can-no-10', 'oxygen-absorber')?.costMinorUnits;
  };
  bodyOf(await setPrice('absorber-300', 25));
  expect(await cost()).toBe(1264);
  const add = (supply: Record<string, unknown>) => storehouse.coordinator.post(at('/supplies'), supply);
  const pack = { name: 'Cans by the case', kind: 'container', containerKindId: can.id };
  bodyOf(await add({ ...pack, packPieces: 24, packMinorUnits: 3590 }), 201); // 1.495… each, rounded up to 1.50
  expect(await cost()).toBe(8 * 150 + 8 * 25);
  const packets = { name: 'Absorbers 300', kind: 'absorber', sizeMillilitres: 300 };
  const { id, version } = bodyOf(await add({ ...packets, packPieces: 100, packMinorUnits: 2000 }), 201);
  expect(await cost()).toBe(8 * 150 + 8 * 20);
  const retired = { name: packets.name, packPieces: 100, packMinorUnits: 2000, isRetired: true };
  bodyOf(await storehouse.coordinator.put(at(`/supplies/${id}`), { version, ...retired }));
  expect(await cost()).toBe(8 * 150 + 8 * 25);
});

test('what cannot be asked is refused, and prices are for those who know them', async () => {
  const { caller } = member;
  expect((await caller.get(at(`/ways-to-keep?food=${wheatId}&grams=0`))).body.fields[0].field).toBe('grams');
  const moist = await caller.get(at(`/ways-to-keep?food=${wheatId}&grams=1&moistureTenths=1001`));
  expect(moist.body.fields[0].field).toBe('moistureTenths');
  const nothing = await caller.get(at('/ways-to-keep?food=018f0000-0000-7000-8000-000000000000&grams=1'));
  expect([nothing.status, nothing.body.code]).toEqual([404, 'thing-not-found']);
  const price = { supplyCode: 'absorber-300', priceMinorUnits: 1 };
  expect((await caller.put(at('/supply-prices'), price)).status).toBe(403);
  expect((await setPrice('absorber-301', 1)).body.fields[0].field).toBe('supplyCode');
});
