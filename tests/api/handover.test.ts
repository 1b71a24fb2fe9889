import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller } from '../support/app.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aFixedBuy, GRAIN_DEPOSITS, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aPantryWish, commonCans } from '../support/giving.ts';
import { printed } from '../support/pdf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  await commonCans(storehouse, [{ food: 'rice-brown-long', grams: 2_400, count: 2, stored: '2026-01' }]);
  buy = await aFixedBuy(app, storehouse);
  const wish = aPantryWish('Mill Lane', { confirmedOn: '2025-12-01' });
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/pantries`, wish), 201);
});
afterAll(() => app.close());

const page = async (caller: Caller) => bodyOf(await caller.get(`${storehouse.path}/handover`));
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);
type Due = { name: string; dueMinorUnits?: number };
const dueOf = (all: { deposits: { households: Due[] }[] }) =>
  all.deposits.flatMap(({ households }) => households);

test('a hand-over tells what is open, who takes the next step, what waits for whom, and who has which duty', async () => {
  const all = await page(storehouse.coordinator);
  const run = bodyOf(await storehouse.coordinator.get(`${buy.path}/next`));
  expect(all.buys).toEqual([
    expect.objectContaining({ stage: 'fixed', who: run.who, dueOn: run.dueOn, name: run.name }),
  ]);
  expect(all.how.map(({ stage }: { stage: string }) => stage)).toEqual([
    ...['planning', 'gathering', 'fixed', 'ordered', 'landed', 'shared-out'],
  ]);
  const held = Object.fromEntries(
    all.duties.map(({ duty, holders }: { duty: string; holders: unknown[] }) => [duty, holders.length]),
  );
  expect(held).toMatchObject({ coordinator: 1, treasurer: 1, packing_lead: 0, reviewer: 0 });
  expect(all.unaskedPantries).toEqual([
    expect.objectContaining({ name: 'Mill Lane', confirmedOn: '2025-12-01' }),
  ]);
  const risk = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/rotation/store`)).risk;
  expect(risk.grams).toBe(4_800);
  expect(all.atRisk.grams).toBe(risk.grams);
  const quotes = bodyOf(await storehouse.coordinator.get(`${buy.path}/quotes`)).quotes;
  for (const { name, terms } of all.suppliers) {
    const quoted = quotes.filter(({ supplier }: { supplier: { name: string } }) => supplier.name === name);
    if (terms !== null)
      expect(quoted.map((one: { validUntil: string }) => one.validUntil)).toContain(terms.validUntil);
  }
  expect(all.suppliers.length).toBeGreaterThan(0);
});

test('the coordinator reads of deposits yes or no and of balances nothing; amounts are the treasurer’s', async () => {
  const forCoordinator = await page(storehouse.coordinator);
  expect(dueOf(forCoordinator)).toHaveLength(4);
  for (const row of dueOf(forCoordinator))
    expect(Object.keys(row).toSorted()).toEqual(['householdId', 'name', 'seat']);
  expect(forCoordinator).toMatchObject({ seesAmounts: false, balances: null });
  const forTreasurer = await page(buy.treasurer);
  const amounts = Object.fromEntries(
    dueOf(forTreasurer).map(({ name, dueMinorUnits }) => [name, dueMinorUnits]),
  );
  expect(Object.values(amounts).toSorted()).toEqual(Object.values(GRAIN_DEPOSITS).toSorted());
  const { balances } = bodyOf(await buy.treasurer.get(`${storehouse.path}/balances`));
  const owed = balances.reduce(
    (sum: number, { balanceMinorUnits }: { balanceMinorUnits: number }) =>
      sum + Math.max(0, balanceMinorUnits),
    0,
  );
  expect(forTreasurer.balances.owedMinorUnits).toBe(owed);
  expect(await buy.households.Dell.caller.get(`${storehouse.path}/handover`)).toMatchObject({ status: 403 });
  expect(await buy.households.Dell.caller.get(`${storehouse.path}/handover/paper`)).toMatchObject({
    status: 403,
  });
});

test('whose deposits were read finds it in its record, with the purpose', async () => {
  const { caller, householdId } = buy.households.Dell;
  const { privateReads: reads } = bodyOf(
    await caller.get(`${storehouse.path}/households/${householdId}/private-reads`),
  );
  expect(reads).toContainEqual(expect.objectContaining({ what: 'deposits', purpose: 'handing over a duty' }));
});

test('it says until when each duty is meant and who acts for whom, on the page and on paper', async () => {
  const { Dell, Corran } = buy.households;
  const helping = { personId: Corran.personId, days: 90, reason: 'a broken wrist' };
  const helpers = `${storehouse.path}/households/${Dell.householdId}/helpers`;
  bodyOf(await Dell.caller.post(helpers, helping), 201);
  const { duties } = await page(storehouse.coordinator);
  const [treasurer] = duties.find(({ duty }: { duty: string }) => duty === 'treasurer').holders;
  const ends = `${storehouse.path}/persons/${treasurer.personId}/duties/treasurer/planned-end`;
  expect(bodyOf(await storehouse.coordinator.put(ends, { endsOn: '2026-10-15' })).endsOn).toBe('2026-10-15');
  const all = await page(storehouse.coordinator);
  expect(all.duties[1].holders).toMatchObject([{ name: treasurer.name, endsOn: '2026-10-15' }]);
  expect(all.helpers).toMatchObject([
    { household: 'Dell', helper: 'Corran Person', untilOn: '2026-11-30' }, // 90 days after 1 September
  ]);
  expect((await page(buy.treasurer)).helpers).toBeNull();
  const paper = async (language: string) =>
    (await printed(storehouse.coordinator, `${storehouse.path}/handover/paper?language=${language}`)).text;
  expect(await paper('en')).toMatch(/Meant to end.*15 Oct 2026.*Dell Corran Person 30 Nov 2026/s);
  expect(await paper('es')).toContain('Quién puede actuar por qué hogar');
  expect(await paper('en')).toMatch(/eat-first date.* [A-Z][a-z]+ 20\d\d \d+\.\d lb/s);
  const ofTreasurer = await printed(buy.treasurer, `${storehouse.path}/handover/paper?language=en`);
  expect(ofTreasurer.text).not.toContain('Corran Person');
});

test('a duty that ends within 60 days waits for its holder and for the coordinator, and for nobody else', async () => {
  const endings = async (caller: Caller, headers = {}) => {
    const { items } = bodyOf(await caller.get(`${storehouse.path}/next-steps`, headers));
    return items
      .filter(({ kind }: { kind: string }) => kind === 'duty-ends')
      .map(({ words, dueOn }: { words: string; dueOn: string }) => [words, dueOn]);
  };
  const [ofHolder, ofCoordinator] = [
    'Your duty as treasurer ends soon: hand it over.',
    'The duty of Birchall Person as treasurer ends soon: find who takes it over.',
  ];
  expect(await endings(buy.treasurer)).toEqual([[ofHolder, '2026-10-15']]);
  expect(await endings(storehouse.coordinator)).toEqual([[ofCoordinator, '2026-10-15']]);
  expect(await endings(buy.treasurer, { 'Accept-Language': 'es' })).toEqual([
    ['Su cargo en la tesorería termina pronto: traspáselo.', '2026-10-15'],
  ]);
  expect(await endings(buy.households.Dell.caller)).toEqual([]);
  const { personId } = buy.households.Birchall;
  const ends = `${storehouse.path}/persons/${personId}/duties/treasurer/planned-end`;
  // 60 days after 1 September is 31 October.
  for (const [endsOn, shown] of [
    ['2026-10-31', 1],
    ['2026-11-01', 0],
    [null, 0],
  ] as const) {
    bodyOf(await storehouse.coordinator.put(ends, { endsOn }));
    expect(await endings(storehouse.coordinator)).toHaveLength(shown);
  }
});

test('a planned end lies ahead, is the coordinator’s to say, and is of a duty that is held', async () => {
  const { personId } = buy.households.Birchall;
  const put = (caller: Caller, duty: string, endsOn: string) => () =>
    caller.put(`${storehouse.path}/persons/${personId}/duties/${duty}/planned-end`, { endsOn });
  const { coordinator } = storehouse;
  expect(await refusalOf(app, put(coordinator, 'treasurer', '2026-08-31'))).toEqual(
    refused(400, 'invalid-input', 'endsOn'),
  );
  expect(await refusalOf(app, put(buy.treasurer, 'treasurer', '2026-12-31'))).toEqual(
    refused(403, 'duty-missing'),
  );
  for (const duty of ['reviewer', 'king'])
    expect(await refusalOf(app, put(coordinator, duty, '2026-12-31'))).toEqual(
      refused(404, 'thing-not-found'),
    );
});

test('the pack has the figures of the page, and a coordinator’s has no amount of a household', async () => {
  const paper = (caller: Caller, query = 'language=en') =>
    printed(caller, `${storehouse.path}/handover/paper?${query}`);
  const all = await page(storehouse.coordinator);
  const { text, pages } = await paper(storehouse.coordinator);
  for (const wanted of [
    ...['A password never is', 'Collect deposits and agree to order, two people', 'Mill Lane: ask again'],
    ...all.buys.map(({ name }: { name: string }) => name),
    ...all.suppliers.map(({ name }: { name: string }) => name),
    ...dueOf(all).map(({ name }) => name),
    ...['10.6 lb', 'nobody', 'Keys, and who has them', 'Takes over'],
  ])
    expect(text).toContain(wanted);
  const amounts = Object.values(GRAIN_DEPOSITS).map(money);
  for (const amount of amounts) expect(text).not.toContain(amount);
  const ofTreasurer = await paper(buy.treasurer);
  for (const amount of amounts) expect(ofTreasurer.text).toContain(amount);
  const code = pages[0]?.qr.split('/').at(-1) ?? '';
  expect(bodyOf(await storehouse.coordinator.get(`${storehouse.path}/papers/${code}`)).kind).toBe('handover');
  expect(await buy.households.Dell.caller.get(`${storehouse.path}/papers/${code}`)).toMatchObject({
    status: 403,
  });
  const large = await paper(storehouse.coordinator, 'language=es&large=true&size=letter');
  expect(large.text).toContain('Cómo va una compra');
  for (const { width, texts } of large.pages)
    expect(Math.max(...texts.map(({ right }) => right))).toBeLessThanOrEqual(width - 41);
});
