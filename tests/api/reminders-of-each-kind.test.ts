import { extract } from 'letterparser';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import type { TestApp } from '../support/app.ts';
import { aBuy, bodyOf } from '../support/buy.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import type { TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { aLandedBuy, aPackingLead, grainInvoice } from '../support/landed-buy.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

/* From the facts of the book to the letter, for the kinds that no other test follows all the way. */
let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let catcher: Catcher;
let lead: Awaited<ReturnType<typeof aPackingLead>>;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  lead = await aPackingLead(app, storehouse, households.Corran);
  catcher = await openCatcher();
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

/** To whom a letter with this in its subject goes, once everything that is due in the background is done. */
async function toldAt(instant: string, subject: string): Promise<string[]> {
  app.clock.now = new Date(instant);
  catcher.caught.length = 0;
  await enqueueEverywhere(app.outside, 'remind');
  await doWork(app, catcher);
  return catcher.caught
    .filter(({ source }) => (extract(source).subject ?? '').includes(subject))
    .map(({ to }) => to.replace('@example.org', ''))
    .toSorted();
}

test('a quote that lapses before its order is told to the coordinator, and no more once the order comes sooner', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const buy = await aBuy(app, storehouse, {
    ...{ name: 'Rye', orderOn: '2026-10-12' },
    quote: { validUntil: '2026-10-05' },
  });
  const lapses = 'A quote for Rye lapses';
  expect(await toldAt('2026-09-27T15:00:00Z', lapses)).toEqual([]);
  expect(await toldAt('2026-09-28T15:00:00Z', lapses)).toEqual(['coordinator']);
  expect(await toldAt('2026-09-29T15:00:00Z', lapses)).toEqual([]);
  const facts = bodyOf(await storehouse.coordinator.get(buy.path));
  const { name, gatheringClosesAt, landingPlace, version } = facts;
  const sooner = { name, gatheringClosesAt, landingPlace, version, landingOn: null, orderOn: '2026-10-05' };
  bodyOf(await storehouse.coordinator.put(buy.path, sooner));
  expect(await toldAt('2026-10-02T15:00:00Z', lapses)).toEqual([]);
});

test('what came short is to be claimed: told to coordinator and treasurer while it can be', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  await aLandedBuy(app, storehouse, { households, name: 'Spring grain', hasClaims: false });
  const claim = 'Claim what came short of Spring grain';
  expect(await toldAt('2026-09-01T16:00:00Z', claim)).toEqual(['birchall', 'coordinator']);
  expect(await toldAt('2026-09-02T15:00:00Z', claim)).toEqual(['birchall', 'coordinator']);
  expect(await toldAt('2026-09-03T15:00:00Z', claim)).toEqual([]);
});

test('a bill that names a day is told to the treasurer: three days before, on it and once after, until it is paid', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const buy = await aLandedBuy(app, storehouse, { households, name: 'Late grain', hasInvoice: false });
  const { treasurer, supplierId } = buy;
  const bill = { ...grainInvoice(buy), number: 'L-7', dueOn: '2026-09-15' };
  bodyOf(await treasurer.post(`${buy.path}/invoices`, bill), 201);
  const due = 'A bill is due: ';
  expect(await toldAt('2026-09-11T15:00:00Z', due)).toEqual([]);
  expect(await toldAt('2026-09-12T15:00:00Z', due)).toEqual(['birchall']);
  expect(await toldAt('2026-09-13T15:00:00Z', due)).toEqual([]);
  expect(await toldAt('2026-09-15T15:00:00Z', due)).toEqual(['birchall']);
  expect(await toldAt('2026-09-16T15:00:00Z', due)).toEqual(['birchall']);
  const foreseen = async (on: string) =>
    bodyOf(await treasurer.get(`${storehouse.path}/bank/forecast?on=${on}&more=0`)).paymentsMinorUnits;
  app.clock.now = new Date('2026-09-02T15:00:00Z');
  const { owedMinorUnits } = bodyOf(await treasurer.get(`${storehouse.path}/suppliers-owed`)).suppliers.find(
    (one: { supplierId: string }) => one.supplierId === supplierId,
  );
  // The other buys' bills name no day and are due now; this one is due later.
  expect((await foreseen('2026-09-15')) - (await foreseen('2026-09-14'))).toBe(52_350);
  const all = { supplierId, minorUnits: owedMinorUnits, till: 'bank' };
  bodyOf(await treasurer.post(`${storehouse.path}/supplier-payments`, all), 201);
  const { items } = bodyOf(await treasurer.get(`${storehouse.path}/next-steps`));
  expect(items.filter(({ kind }: { kind: string }) => kind === 'bill-due')).toEqual([]);
});

describe('a buy that is shared out', () => {
  let buy: TestSharedBuy;
  beforeAll(async () => {
    app.clock.now = new Date('2026-09-01T15:00:00Z');
    buy = await aSharedBuy(app, storehouse, { households, name: 'Autumn grain' });
  });

  test('has food that waits: a week and two days before the last day, on it, and once it is over', async () => {
    const waits = 'Your food of Autumn grain waits'; // until 1 October
    const all = ['birchall', 'coordinator', 'corran', 'dell', 'pat-corran']; // two live with the Corrans
    expect(await toldAt('2026-09-23T15:00:00Z', waits)).toEqual([]);
    expect(await toldAt('2026-09-24T15:00:00Z', waits)).toEqual(all);
    expect(await toldAt('2026-09-25T15:00:00Z', waits)).toEqual([]);
    for (const day of ['2026-09-29', '2026-10-01', '2026-10-02'])
      expect([day, await toldAt(`${day}T15:00:00Z`, waits)]).toEqual([day, all]);
    expect(await toldAt('2026-10-03T15:00:00Z', waits)).toEqual([]);
  });

  test('is fetched at the hour that was chosen: told the day before and on it, to who comes and who is there', async () => {
    const { Dell } = households;
    const window = { startsAt: '2026-10-10T17:00:00Z', endsAt: '2026-10-10T17:30:00Z' };
    bodyOf(await Dell.caller.post(`${buy.path}/pick-ups`, window), 201);
    const fetch = 'Fetch your food of Autumn grain';
    expect(await toldAt('2026-10-08T15:00:00Z', fetch)).toEqual([]);
    expect(await toldAt('2026-10-09T15:00:00Z', fetch)).toEqual(['dell']);
    expect(await toldAt('2026-10-10T14:00:00Z', 'Hand over food of Autumn grain')).toEqual([
      'coordinator',
      'pat-corran',
    ]);
    expect(await toldAt('2026-10-10T15:00:00Z', fetch)).toEqual([]); // an hour ago it was told for the day
  });

  test('leaves a debt that is told once a month, to the household alone and without its sum, until it is paid', async () => {
    const balance = 'Your balance';
    await toldAt('2026-11-01T15:00:00Z', balance);
    expect(await toldAt('2026-11-02T15:00:00Z', balance)).toEqual([]);
    expect(await toldAt('2026-12-01T15:00:00Z', balance)).toContain('dell');
    const letter = catcher.caught.find(({ to }) => to.startsWith('dell'));
    expect(extract(letter?.source ?? '').text).not.toMatch(/\d[.,]\d{2}\b/);
    const { items } = bodyOf(await households.Dell.caller.get(`${storehouse.path}/next-steps`));
    const owed = items.find(({ kind }: { kind: string }) => kind === 'balance-due');
    const receipt = { householdId: households.Dell.householdId, minorUnits: owed.minorUnits };
    bodyOf(
      await households.Birchall.caller.post(`${storehouse.path}/payments`, {
        ...{ ...receipt, currency: 'USD', onDay: '2026-12-01', till: 'cash' },
      }),
      201,
    );
    const january = await toldAt('2027-01-01T15:00:00Z', balance);
    expect(january).not.toContain('dell');
    expect(january).toContain('corran');
  });
});

describe('what stands at home or in the store comes near its dates', () => {
  const DAY_MS = 86_400_000;
  const today = new Date('2027-02-01T15:00:00Z');
  const inDays = (days: number) => new Date(today.getTime() + days * DAY_MS).toISOString();
  const stepsOf = async ({ caller }: TestHousehold, kind: string) =>
    bodyOf(await caller.get(`${storehouse.path}/next-steps`)).items.filter(
      (item: { kind: string }) => item.kind === kind,
    );
  const daysLeft = async ({ caller }: TestHousehold, can: { id: string }): Promise<number> =>
    bodyOf(await caller.get(`${storehouse.path}/containers/${can.id}/keeping`)).keeping.likelyDays;
  let stock: TestStock;
  beforeAll(async () => {
    app.clock.now = today;
    stock = await stockOf(storehouse, households.Dell);
    const { rules } = bodyOf(await storehouse.coordinator.get(storehouse.path));
    const { decidedAt: _, ...inForce } = rules;
    bodyOf(
      await storehouse.coordinator.post(`${storehouse.path}/rules`, {
        ...{ ...inForce, offerDaysWithoutPantry: 120, giftWindowDays: 20, eatFirstMarginDays: 40 },
      }),
    );
  });

  test('eat-first: told once to the household alone, from the group’s own margin on, with a page to see', async () => {
    const [can, other] = await stock.bringIn({ count: 2, packedOn: '2027-01-01' });
    if (!can || !other) throw new Error('two were brought in');
    const left = await daysLeft(households.Dell, can);
    const eat = 'Eat first: ';
    expect(await toldAt(inDays(left - 42), eat)).toEqual([]);
    expect(await toldAt(inDays(left - 39), eat)).toEqual(['dell']);
    const { subject, text = '' } = extract(catcher.caught.at(-1)?.source ?? '');
    expect(subject).toMatch(/Hard red winter wheat, 2 containers$/);
    expect(text).toContain('/rotation');
    for (const name of ['Birchall', 'Corran']) expect(text).not.toContain(name);
    expect(await toldAt(inDays(left - 38), eat)).toEqual([]);
    expect(await toldAt(inDays(left - 20), eat)).toEqual([]);
    const [step] = await stepsOf(households.Dell, 'dates-near');
    expect(step.words).toBe('2 containers of yours come near their last dates: see what to eat first.');
    expect(step.path).toBe(`${storehouse.path}/rotation`);
    await stock.take(can);
    expect((await stepsOf(households.Dell, 'dates-near'))[0].words).toMatch(/^A container of yours/);
    await stock.take(other);
    expect(await stepsOf(households.Dell, 'dates-near')).toEqual([]);
    expect(await stepsOf(households.Birchall, 'dates-near')).toEqual([]);
  });

  test('what is on hold waits for nobody: its date is not told, and that of the one beside it is', async () => {
    app.clock.now = today;
    const [free, held] = await stock.bringIn({ count: 2, packedOn: '2027-01-03' });
    if (!free || !held) throw new Error('two were brought in');
    const left = await daysLeft(households.Dell, free);
    const of = { scope: 'containers', containerIds: [held.id] };
    bodyOf(await lead.caller.post(`${storehouse.path}/holds`, { of, reason: 'A smell of oil.' }), 201);
    const eat = 'Eat first: ';
    expect(await toldAt(inDays(left - 42), eat)).toEqual([]);
    expect(await toldAt(inDays(left - 39), eat)).toEqual(['dell']);
    const subjects = catcher.caught.map(({ source }) => extract(source).subject ?? '');
    expect(subjects.filter((subject) => subject.includes(eat))).toEqual([
      'Alder Row Storehouse: Eat first: Hard red winter wheat, 1 container',
    ]);
    // Eaten up, so that nothing of it is told among what follows.
    bodyOf(await stock.take(free), 201);
    const all = { grams: 2_400, to: 'discarded' };
    bodyOf(await households.Dell.caller.post(`${storehouse.path}/containers/${held.id}/uses`, all), 201);
  });

  test('an offer: told before it comes, and not at all once the container was moved to where it keeps longer', async () => {
    app.clock.now = today;
    const [stays, moves] = await stock.bringIn({ count: 2, packedOn: '2027-01-02' });
    if (!stays || !moves) throw new Error('each was brought in');
    const left = await daysLeft(households.Dell, stays);
    app.clock.now = new Date(inDays(left - 160));
    const movedOn = app.clock.now.toISOString().slice(0, 10);
    const facts = { of: 'household', name: 'Cellar', kind: 'cellar', isLit: false, isDamp: false };
    const { post, put } = households.Dell.caller;
    const { id: placeId } = bodyOf(
      await post(`${storehouse.path}/places`, { ...facts, isRodentProof: true }),
      201,
    );
    const months = [{ month: lastMonth(movedOn), tenthsCelsius: 100 }];
    bodyOf(await put(`${storehouse.path}/places/${placeId}/months`, { months }));
    const move = { containerIds: [moves.id], placeId, movedOn };
    bodyOf(await post(`${storehouse.path}/container-moves`, move), 201);
    const offered = 'Soon to be offered: ';
    expect(await toldAt(inDays(left - 141), offered)).toEqual([]);
    expect(await toldAt(inDays(left - 139), offered)).toEqual(['dell']);
    const subjects = catcher.caught.map(({ source }) => extract(source).subject ?? '');
    // The other one stays where it is warm.
    expect(subjects.filter((subject) => subject.includes(offered))).toEqual([
      'Alder Row Storehouse: Soon to be offered: Hard red winter wheat, 1 container',
    ]);
  });
});

const lastMonth = (on: string) => {
  const [year = 0, of = 0] = on.split('-').map(Number);
  return of === 1 ? `${year - 1}-12` : `${year}-${String(of - 1).padStart(2, '0')}`;
};
