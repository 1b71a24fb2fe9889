import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Caller } from '../support/app.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, book, bringBack, handOut } from '../support/equipment.ts';
import { aPantryWish, commonCans } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import { aSeamer, THICK } from '../support/seam.ts';
import { aFilledDay, aSupply } from '../support/settlement.ts';
import { creditClaims } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let reviewer: TestHousehold;
const at = (path: string) => `${storehouse.path}${path}`;
const LATE = { mostDaysPastBest: 3650, leastLifeDays: 0 };
/** A year with a buy, two packing days, two loans, a gift with its receipt and one without, a count and a waiver. */
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  await commonCans(storehouse, [{ food: 'rice-white-long', grams: 2_400, count: 3, stored: '2020-01' }]);
  hall = await aHall(app, storehouse);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  await creditClaims(storehouse, hall.buy);
  await twoPackingDays();
  await twoLoans();
  await twoGifts();
  bodyOf(
    await hall.buy.treasurer.post(at('/fund-receipts'), { minorUnits: 2000, till: 'bank', onDay: today() }),
    201,
  );
  app.clock.now = new Date('2026-09-30T15:00:00Z');
}, 60_000);
afterAll(() => app.close());

const today = () => app.clock.now.toISOString().slice(0, 10);
const get = async (path: string, caller: Caller = hall.buy.treasurer) => bodyOf(await caller.get(at(path)));

/** Twelve cans filled and five lids spoilt; then four filled of which two are in doubt, one of them let go as sound. */
async function twoPackingDays(): Promise<void> {
  const { caller } = hall.lead;
  const can = { name: 'No. 10 cans', kind: 'container', containerKindId: hall.shelves.kinds['can-no-10'] };
  const supplyId = await aSupply(storehouse, hall, can, { pieces: 100, minorUnits: 13_300 });
  const inHours = (hours: number) => new Date(app.clock.now.getTime() + hours * 3_600_000).toISOString();
  const hours = { startsAt: inHours(1), endsAt: inHours(7) };
  const first = await aFilledDay(storehouse, hall, { Ashdown: 12 }, hours);
  const worked = {
    supplies: [{ supplyId, usedPieces: 12, spoiltPieces: 5 }],
    equipmentFees: [],
    sundries: [],
  };
  const { seen } = bodyOf(await caller.post(`${first}/settlement-previews`, worked));
  bodyOf(await caller.post(`${first}/settlement`, { ...worked, seen, note: '' }), 201);
  const seamer = await aSeamer(storehouse, hall);
  const day = await aPackingSession(storehouse, hall, hours);
  bodyOf(await caller.post(`${day}/start`));
  const brought = await bringWheat(hall, day, 'Dell');
  bodyOf(await seamer.check(day, { occasion: 'first' }), 201);
  const pour = async (cans: number) =>
    bodyOf(
      await caller.post(
        `${day}/pours`,
        aPourBody(hall, { name: 'Dell', grams: Array(cans).fill(10), targetGrams: 10 }),
      ),
      201,
    );
  await pour(2);
  bodyOf(await seamer.check(day, { serial: 2 }), 201);
  await pour(2);
  bodyOf(await seamer.check(day, { serial: 4, measures: THICK }), 201);
  const bag = { bagId: hall.wheat.Dell.bagId, householdId: hall.buy.households.Dell.householdId };
  bodyOf(await caller.put(`${day}/left`, { ...bag, leftGrams: brought - 40 }));
  bodyOf(await caller.post(`${day}/signing`), 201);
}

/** One comes back a day late. */
async function twoLoans(): Promise<void> {
  const keeper = await aHousehold(app, storehouse, 'Keeper', { duties: ['equipment_keeper'] });
  const shed = { ...storehouse, keeper };
  for (const hoursLate of [0, 24]) {
    const item = await anItem(shed, { name: `Sealer ${hoursLate}` });
    const span = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
    app.clock.now = new Date('2026-09-03T15:00:00Z');
    const { id } = bodyOf(await book(hall.buy.households.Ashdown.caller, item, span), 201);
    app.clock.now = new Date('2026-09-05T14:00:00Z');
    const loan = bodyOf(await handOut(keeper.caller, storehouse, id, item), 201);
    app.clock.now = new Date(Date.parse('2026-09-05T22:00:00Z') + hoursLate * 3_600_000);
    bodyOf(await bringBack(keeper.caller, storehouse, loan.id, item), 201);
  }
}

/** Two cans to one pantry, with a receipt; the third to another, whose receipt is not back. */
async function twoGifts(): Promise<void> {
  const post = (path: string, body: unknown) => storehouse.coordinator.post(at(path), body);
  for (const [name, onDay, capacityGrams] of [
    ['Mill Lane', '2026-09-08', 5_000],
    ['North End', '2026-09-15', 5_000],
  ] as const) {
    const { id: pantryId } = bodyOf(await post('/pantries', aPantryWish(name, LATE)), 201);
    const trips = [{ pantryId, onDay, capacityGrams }];
    const { id: matchingId } = bodyOf(await post('/gift-matchings', { trips }), 201);
    const manifest = bodyOf(await post('/gift-manifests', { matchingId, trip: 0, driver: 'Ruth' }), 201);
    app.clock.now = new Date(`${onDay}T20:00:00Z`);
    const receipt = { version: 1, receivedOn: onDay, receiverDuty: 'desk', refused: [] };
    if (name === 'Mill Lane') bodyOf(await post(`/gift-manifests/${manifest.id}/receipt`, receipt));
  }
}

const plain = (text: string) => text.replaceAll('\u00a0', ' ').replaceAll(/\s+/g, ' ');
const paper = async (caller: Caller, query = '') => {
  const pdf = await printed(caller, at(`/year-review/paper?language=en&unit=lb&${query}`));
  return { ...pdf, text: plain(pdf.text) };
};
const money = (minorUnits: number) =>
  (minorUnits / 100).toLocaleString('en-US', { minimumFractionDigits: 2 });

test('the year is told with its buys, packing days, loans, gifts and losses', async () => {
  const { text } = await paper(reviewer.caller);
  expect(text).toContain('1 Jan 2026 to 30 Sept 2026');
  // Job map 4.3: goods 421.40, freight 95.00; credited 3.60 for the torn bag and 21.40 for the short one.
  const bills = bodyOf(await hall.buy.treasurer.get(`${hall.buy.path}/invoices`)).invoices;
  const billed = (kind: string) =>
    bills
      .flatMap(({ lines }: { lines: { kind: string; minorUnits: number }[] }) => lines)
      .filter((line: { kind: string }) => line.kind === kind)
      .reduce((sum: number, { minorUnits }: { minorUnits: number }) => sum + minorUnits, 0);
  for (const minorUnits of [billed('goods'), billed('freight'), 360 + 2140])
    expect(text).toContain(money(minorUnits));
  expect(text).toContain('Saved against shelf price no shelf price was noted for what was bought');
  // Sixteen filled: twelve, and four of which serials 3 and 4 were in doubt.
  expect(text).toContain('Days signed 2 Containers filled 16 Good at the first pass 14 of 16, 87.5 %');
  expect(text).toContain('Spoilt pieces, as settled 5');
  expect(text).toContain('Lent 2 Late 1');
  // Two cans of 2,400 g at 544 g a meal are eight meals; the third is out, and its receipt not back.
  expect(text).toContain(
    '(4,800 g) Meals, an estimate 8 Manifests signed out 2 With a receipt 1 of 2, 50.0 %',
  );
  const { all } = await get('/gift-year?year=2026');
  expect(all).toMatchObject({ grams: 4_800, meals: 8 });
  const { lost } = await get('/year-of-mass?of=store&year=2026');
  for (const { grams } of lost) expect(text).toContain((grams / 453.59237).toFixed(1));
});

test('the money, the checks, the traces and the looks are those of the screens', async () => {
  const { looks } = await get('/private-reads', reviewer.caller);
  const { text } = await paper(reviewer.caller);
  const balance = await get('/trial-balance');
  for (const { number, name, debitMinorUnits, creditMinorUnits } of balance.rows)
    expect(text).toContain(`${number} ${name} ${money(debitMinorUnits)} ${money(creditMinorUnits)}`);
  expect(text).toContain('Debits and credits agree.');
  const { findings } = await get('/audit');
  const [, checks = ''] = /What must hold(.*)Ten traces/.exec(text) ?? [];
  expect(checks.split(' pass ')).toHaveLength(findings.length + 1);
  expect(checks).not.toContain('FAIL');
  const { traces } = await get('/traces?seed=2026-09-30');
  for (const { code, kind } of traces)
    expect(text).toContain(kind === 'entry' ? code : `${code.slice(0, 3)} ${code.slice(3)}`);
  const byTreasurer = looks
    .filter(({ duties }: { duties: string }) => duties === 'treasurer')
    .reduce((sum: number, row: { looks: number }) => sum + row.looks, 0);
  expect(byTreasurer).toBeGreaterThan(0);
  expect(text).toContain(`Treasurer ${byTreasurer}`);
  for (const { purpose } of looks) expect(text).not.toContain(purpose);
});

test('the store fund goes from its opening over in and out to its closing', async () => {
  bodyOf(await hall.buy.treasurer.post(at('/year-ends'), { throughOn: today() }), 201);
  const { text } = await paper(hall.buy.treasurer);
  const fund = (await get('/trial-balance')).rows.find(({ number }: { number: string }) => number === '3000');
  const closing = fund.creditMinorUnits - fund.debitMinorUnits;
  const [, opening, came, went, end] =
    /Store fund Opening (\S+) In (\S+) Out (\S+) Closing (\S+)/.exec(text)?.map((figure) => figure) ?? [];
  const cents = (figure = '') => Math.round(Number(figure.replace('−', '-').replaceAll(',', '')) * 100);
  expect(cents(end)).toBe(closing);
  expect(cents(opening)).toBe(0);
  expect(cents(opening) + cents(came) - cents(went)).toBe(closing);
});

test('a count that differs and what was decided against the rule are told, without a household', async () => {
  const [first] = (await get('/common-stock', reviewer.caller)).stock;
  const counted = { accountId: first.accountId, countedGrams: first.bookGrams - 100 };
  bodyOf(await reviewer.caller.post(at('/stock-counts'), counted), 201);
  const undo = bodyOf(
    await hall.buy.treasurer.post(at('/bank-charges'), { minorUnits: 450, onDay: today() }),
    201,
  );
  bodyOf(
    await hall.buy.treasurer.post(at(`/entries/${undo.entryId}/reversal`), { reason: 'Dell’s slip' }),
    201,
  );
  for (const caller of [reviewer.caller, hall.buy.treasurer, storehouse.coordinator]) {
    const { text } = await paper(caller);
    expect(text).toContain('Counted once; 1 differs from the book.');
    expect(text).toMatch(/−100 g −?\d/);
    // Accounts and exceptions one by one are for the books' duties: an account may hold one household's money alone.
    const seesAmounts = caller !== storehouse.coordinator;
    expect(/E \d+ E \d+ \D* 4\.50/.test(text)).toBe(seesAmounts);
    expect(text.includes('2100 Buy deposits held')).toBe(seesAmounts);
    // Birchall is the treasurer, whose name stands by what it took back.
    for (const name of ['Ashdown', 'Corran', 'Dell']) expect(text).not.toContain(name);
  }
  const dell = hall.buy.households.Dell.caller;
  expect(await dell.get(at('/year-review/paper'))).toMatchObject({ status: 403 });
  const late = await reviewer.caller.get(at('/year-review/paper?through=2026-10-01'));
  expect(late).toMatchObject({ status: 400, body: { fields: [{ field: 'through' }] } });
});

test('a close is printed with its digest, its own draw and who signed it, and its code leads its signers back', async () => {
  bodyOf(await hall.buy.treasurer.post(at('/year-ends'), { throughOn: '2026-09-29' }), 201);
  const { closes } = bodyOf(await hall.buy.treasurer.post(at('/periods'), { throughOn: '2026-09-29' }), 201);
  const { digestSha256 } = closes[0];
  const sign = { duty: 'reviewer', digestSha256, remarks: 'Two receipts to find.' };
  bodyOf(await reviewer.caller.post(at('/periods/2026-09-29/signatures'), sign), 201);
  const { text, pages } = await paper(reviewer.caller, 'through=2026-09-29');
  for (const words of [
    `Closed. Digest of the close: ${digestSha256.slice(0, 12)}…`,
    `Drawn by the seed “${digestSha256.slice(0, 12)}…”`,
    'Reviewer: Quill Person, 30 Sept 2026',
    'Two receipts to find.',
    'Treasurer: not signed in the book',
  ])
    expect(text).toContain(words);
  const { traces } = await get(`/traces?seed=${digestSha256}`);
  for (const { code, kind } of traces)
    if (kind !== 'entry') expect(text).toContain(`${code.slice(0, 3)} ${code.slice(3)}`);
  const code = pages[0]?.qr.split('/').at(-1) ?? '';
  expect((await get(`/papers/${code}`)).kind).toBe('year-review');
  expect(await hall.buy.households.Dell.caller.get(at(`/papers/${code}`))).toMatchObject({ status: 403 });
  const large = await paper(storehouse.coordinator, 'large=true&size=letter');
  // The same in Spanish says its rules and its accounts in Spanish.
  const spanish = plain((await printed(reviewer.caller, at('/year-review/paper?language=es'))).text);
  for (const words of ['Lo que debe cumplirse', '3000 Fondo del almacén', 'sin firma en el libro'])
    expect(spanish).toContain(words);
  for (const { invariant } of (await get('/audit')).findings) expect(spanish).not.toContain(invariant);
  for (const { width, texts } of large.pages)
    expect(Math.max(...texts.map(({ right }) => right))).toBeLessThanOrEqual(width - 41);
});
