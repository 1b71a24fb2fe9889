import { formatMass } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aGrainBuy, anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { printed } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let shared: TestSharedBuy;
let ordered: TestGrainBuy;
let gathering: TestGrainBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  shared = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
  const { households } = shared;
  ordered = await anOrderedBuy(app, storehouse, { households, name: 'Early grain' });
  gathering = await aGrainBuy(app, storehouse, { households, name: 'Winter grain' });
}, 60_000);
afterAll(() => app.close());

/** Each text stands behind the one before it, in the order of printing. */
function expectInOrder(text: string, texts: readonly string[]): void {
  let from = 0;
  for (const wanted of texts) {
    const at = text.indexOf(wanted, from);
    expect(at, `“${wanted}” behind “${text.slice(Math.max(0, from - 60), from)}”`).toBeGreaterThanOrEqual(0);
    from = at + wanted.length;
  }
}

const coordinator = () => storehouse.coordinator;
const english = 'language=en&unit=lb';

test('the buy sheet has the fields of the trade in their order (job map 13, paper 1)', async () => {
  const { text } = await printed(coordinator(), `${gathering.path}/papers/buy-sheet?${english}`);
  expectInOrder(text, [
    ...[
      'Winter grain',
      'Stage',
      'gathering',
      'Gathering closes',
      '20 Sept 2026 18:00 CDT',
      'Lands on',
      'Place',
    ],
    ...['Freight is shared', '1/2 by weight', 'Deposit', '40 %', 'Rules', 'version'],
    ...['Hard red winter wheat', 'Supplier', 'Bag size', '50.0 lb · 22.7 kg', 'Price of a bag', '36.00'],
    ...['Pledged: least, wanted, most', 'Bags as it stands', '6 × 50 lb', 'To the next', 'Landed price now'],
    ...['A little more', 'If it lands short', 'Proportional', 'Rolled oats', 'Black beans'],
  ]);
  // Four households pledge: whoever reads the wall could take their own off a sum.
  expect(text).toContain('shown once five');
});

test('a pledge slip says what was pledged, what it may cost and what deposit follows (paper 2)', async () => {
  const { text } = await printed(coordinator(), `${gathering.path}/papers/pledge-slip?${english}`);
  expectInOrder(text, [
    ...['Seat 1', 'Winter grain', 'Masses in pounds (lb).', 'Food', 'Least', 'Wanted', 'Most'],
    ...[
      'Highest price landed',
      'Bags',
      'Else',
      'Hard red winter wheat',
      '120.0 lb',
      '54.4 kg',
      'a share, by 5 lb',
    ],
    ...['What it may cost', 'USD', 'Deposit expected', '72.00', 'Pledged at', 'Entered', 'by the household'],
    ...['Written on', 'Signature'],
  ]);
  const blank = await printed(coordinator(), `${gathering.path}/papers/pledge-slip?blank=true&${english}`);
  expect(blank.text).not.toContain('120.0');
  expectInOrder(blank.text, [
    'Fill in with a pen',
    'Hard red winter wheat',
    'whole / share by 5 lb',
    'Household',
  ]);
});

test('an order says what the supplier needs, and its sums are those of the book (paper 3)', async () => {
  const { text } = await printed(coordinator(), `${ordered.path}/papers/order?${english}`);
  const [order] = bodyOf(await coordinator().get(`${ordered.path}/orders`)).orders;
  const mass = formatMass(order.grams, { unit: 'lb', locale: 'en' });
  expectInOrder(text, [
    ...[
      `Order no. ${order.orderNo}`,
      order.supplier.name,
      'Date',
      'Quote, stands until',
      '31 Oct 2026',
      'Deliver to',
    ],
    ...[
      'Window',
      'Contact',
      'coordinator, Ada Ashdown',
      'Lift, pallets',
      mass,
      'Your code',
      'Food',
      'Bag',
      'Price',
    ],
    ...[
      'Hard red winter wheat',
      '50 lb',
      '22,680 g',
      '6',
      '36.00',
      '216.00',
      'Rolled oats',
      '112.50',
      'Black beans',
    ],
    ...['107.00', 'Goods', '435.50', 'Freight', '88.00', 'Total', '14', '523.50', 'Freight terms', 'Payment'],
    ...['lot mark, the crop year', 'For the storehouse'],
  ]);
  expect(order.totalMinorUnits).toBe(52_350);
});

test('a landing sheet is empty before the lorry and filled after it (paper 4)', async () => {
  const empty = await printed(coordinator(), `${ordered.path}/papers/landing-sheet?${english}`);
  expectInOrder(empty.text, [
    ...[
      'Early grain',
      'Carrier',
      'Arrived',
      'Counted by two people',
      'Ordered',
      'Counted',
      'Short',
      '6',
      'Ring what',
    ],
    ...[
      'Lot mark',
      'Declared',
      'Gross',
      'Tare',
      'Net',
      'Condition',
      'Taken',
      'Photo',
      '1',
      '50 lb',
      'D T W I O',
      'A N R',
    ],
    ...['For the carrier, before leaving'],
  ]);
  expect(empty.text.split('D T W I O').length - 1).toBe(6 + 3 + 5); // a row for every bag that is ordered
  const filled = await printed(coordinator(), `${shared.path}/papers/landing-sheet?${english}`);
  expectInOrder(filled.text, ['Valley Freight', 'Ada and Ben', 'torn', 'with a note', 'Torn.']);
  expect(filled.text).not.toContain('D T W I O');
  expectInOrder(filled.text, ['45.0 lb', '20.4 kg']); // the torn bag, in both units
});

test('a claim letter says what was counted and what is asked for', async () => {
  const torn = await printed(
    coordinator(),
    `${storehouse.path}/claims/${shared.claims?.torn}/paper?${english}`,
  );
  expectInOrder(torn.text, [
    ...['We claim 3.60', 'for damaged or light bags', 'To', 'Raised on', 'What was counted', '6', '6', '0'],
    ...[
      'The bags it is about',
      '50.0 lb',
      '45.0 lb',
      '5.0 lb',
      'torn',
      'Why',
      'Torn: 5 lb lost.',
      'credit note over 3.60 USD',
    ],
  ]);
  const short = await printed(
    coordinator(),
    `${storehouse.path}/claims/${shared.claims?.short}/paper?${english}`,
  );
  expectInOrder(short.text, [
    'We claim 21.40',
    'did not come',
    'Black beans',
    '5',
    '4',
    '1',
    'One bag short.',
  ]);
});

test('a split sheet has rule, sentence, claims, exact awards, cents and pieces, and adds up (paper 5)', async () => {
  const { text } = await printed(
    coordinator(),
    `${storehouse.path}/splits/${shared.splitIds.beans}/paper?${english}`,
  );
  const split = bodyOf(await coordinator().get(`${storehouse.path}/splits/${shared.splitIds.beans}`));
  // Job map 5.5: 18,144 / 12,701 / 9,072 / 5,443 g of exactly 18,144, 12,700 4/5, 9,072 and 5,443 1/5.
  expectInOrder(text, [
    ...[
      'Landed 100.0 lb · 45.4 kg',
      split.sentence.slice(0, 60),
      'Proportional',
      '45,360 g',
      'What each gets',
    ],
    ...[
      'Seat 1',
      '18,144',
      'Seat 2',
      '12,700 4/5',
      '12,701 +',
      'Seat 3',
      '9,072',
      'Seat 4',
      '5,443 1/5',
      '5,443',
    ],
    ...[
      'All households',
      '45,360',
      'What each pays',
      'Goods',
      'Freight by weight',
      'Freight per household',
      'Total USD',
    ],
    ...[
      'Seat 1',
      '34.24',
      '14.94',
      '11.00',
      '60.18',
      'Seat 2',
      '23.97',
      '13.56',
      'Whole',
      '85.60',
      '44.00',
      '44.00',
    ],
    ...['173.60', 'lower seat', 'Done by', 'Seen by'],
  ]);
  expect(split.awardedGrams).toBe(45_360);
  const spanish = await printed(
    coordinator(),
    `${storehouse.path}/splits/${shared.splitIds.beans}/paper?language=es&unit=kg`,
  );
  expectInOrder(spanish.text, ['Llegado 45,4 kg · 100,0 lb', 'Puesto 1', 'Todos los hogares']);
  expect(spanish.text).not.toContain(split.sentence.slice(0, 30));
});

test('a statement adds up by hand and prints what the API answers (paper 10)', async () => {
  const home = `${storehouse.path}/households/${shared.households.Birchall.householdId}/statement`;
  const { text } = await printed(shared.treasurer, `${home}/paper?${english}`);
  const statement = bodyOf(await shared.treasurer.get(home));
  const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);
  expectInOrder(text, [
    ...['Birchall, seat 2', `You owe ${money(statement.closingMinorUnits)}`, 'Brought forward', '0.00'],
    ...statement.lines.flatMap((line: Record<string, number>) => [
      `E ${line.entryNo}`,
      money((line.chargeMinorUnits || line.paymentMinorUnits) ?? 0),
      money(line.balanceMinorUnits ?? 0),
    ]),
    ...['Charges less payments', money(statement.chargesMinorUnits), money(statement.paymentsMinorUnits)],
    ...[
      'Autumn grain, what the 150.53 is made of',
      '100.0 lb',
      '45.4 kg',
      '72.0',
      '158.7',
      '72.00',
      'Freight',
      'Whole',
    ],
    ...[
      '150.53',
      'Deposits held for you',
      'Early grain',
      '63.00',
      'Deposits asked for',
      'How to pay',
      'Birchall',
    ],
    ...['Whom to ask', 'Birchall Person', 'lower seat'],
  ]);
});

test('quotes stand side by side on what a pound costs landed', async () => {
  const { text } = await printed(coordinator(), `${gathering.path}/papers/quote-comparison?${english}`);
  expectInOrder(text, [
    ...[
      'Hard red winter wheat',
      'least pledged',
      '300.0 lb',
      '6 × 50 lb',
      '216.00',
      '88.00',
      '304.00',
      '101.3',
      'least',
    ],
    ...[
      'The cheapest way',
      '523.50',
      'The only way to order it.',
      'The quotes',
      'Stands until',
      'Freight',
      '88.00',
    ],
  ]);
});

describe('the treasurer’s list', () => {
  test('names who owes what, adds up, and is for the treasurer and the reviewer alone', async () => {
    const { text } = await printed(shared.treasurer, `${storehouse.path}/balances/paper?${english}`);
    const { balances } = bodyOf(await shared.treasurer.get(`${storehouse.path}/balances`));
    const owed = balances.reduce(
      (sum: number, row: { balanceMinorUnits: number }) => sum + row.balanceMinorUnits,
      0,
    );
    expectInOrder(text, [
      (owed / 100).toFixed(2),
      'Ashdown, seat 1',
      '93.48',
      'Dell, seat 4',
      '31.57',
      'Total',
    ]);
    for (const caller of [coordinator(), shared.households.Corran.caller]) {
      const answer = await caller.get(`${storehouse.path}/balances/paper`);
      expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
    }
  });
});

describe('what a neighbour may not read stays off paper', () => {
  test('a member asks in vain for a neighbour’s statement, slip and the code on them', async () => {
    const { Corran, Dell } = shared.households;
    const statement = `${storehouse.path}/households/${Dell.householdId}/statement/paper`;
    const slip = `${gathering.path}/papers/pledge-slip?household=${Dell.householdId}`;
    for (const path of [statement, slip]) {
      const answer = await Corran.caller.get(path);
      expect([answer.status, answer.body.code]).toEqual([403, 'not-your-household']);
    }
    const code = (await printed(Dell.caller, statement)).pages[0]?.qr.split('/').at(-1);
    const lost = await Corran.caller.get(`${storehouse.path}/papers/${code}`);
    expect([lost.status, lost.body.code]).toEqual([403, 'not-your-household']);
    expect((await Dell.caller.get(`${storehouse.path}/papers/${code}`)).status).toBe(200);
  });

  test('a split sheet has seats and no names, and for a member their own row alone', async () => {
    const path = `${storehouse.path}/splits/${shared.splitIds.wheat}/paper?${english}`;
    const all = await printed(coordinator(), path);
    for (const name of ['Ashdown', 'Birchall', 'Corran', 'Dell']) expect(all.text).not.toContain(name);
    for (const seat of [1, 2, 3, 4]) expect(all.text).toContain(`Seat ${seat}`);
    const own = await printed(shared.households.Corran.caller, path);
    expect(own.text).toContain('Seat 3');
    for (const seat of [1, 2, 4]) expect(own.text).not.toContain(`Seat ${seat}`);
  });

  test('a neighbour’s slip that a duty prints leaves the ceiling out', async () => {
    const { Dell } = shared.households;
    const own = bodyOf(await Dell.caller.get(`${gathering.path}/pledges`)).own;
    const line = own.find((pledge: { buyLineId: string }) => pledge.buyLineId === gathering.wheat);
    const { id: _, ...wish } = { id: line.id, version: line.version, ...maskOf(line) };
    bodyOf(
      await Dell.caller.put(`${gathering.path}/pledges/${line.id}`, {
        ...wish,
        ceilingMinorUnits: 777,
        ceilingPerGrams: 1000,
      }),
    );
    const path = `${gathering.path}/papers/pledge-slip?household=${Dell.householdId}&${english}`;
    expect((await printed(Dell.caller, path)).text).toContain('777.0');
    const seen = await printed(coordinator(), path);
    expect(seen.text).toContain('30.0 lb');
    expect(seen.text).not.toContain('777.0');
  });
});

const maskOf = ({ leastGrams, wantedGrams, mostGrams, wholeBags }: Record<string, unknown>) => ({
  ...{ leastGrams, wantedGrams, mostGrams, wholeBags },
});
