import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { foreseeBank } from './foresee-bank.ts';
import { type Pairable, pairLines } from './pair-lines.ts';
import { findReference, paymentReference } from './payment-reference.ts';
import { type KnownParty, lastingWords, recogniseLine } from './recognise-line.ts';
import { reconcileBank } from './reconcile-bank.ts';
import { questionReceipt } from './second-receipt.ts';
import { piecesOf, sumPieces } from './tin-count.ts';

const dayOf = (day: number) => `2026-09-${String(day).padStart(2, '0')}`;
const row = (id: string, day: number, minorUnits: number): Pairable => ({
  id,
  onDay: dayOf(day),
  minorUnits,
});

test('a line is taken for the entry of its amount whose day is nearest', () => {
  const lines = [row('a', 10, 7200), row('b', 12, 7200)];
  const entries = [row('x', 11, 7200), row('y', 12, 7200), row('z', 10, 7201)];
  expect(pairLines({ lines, entries })).toEqual([
    { lineId: 'b', entryId: 'y', days: 0 },
    { lineId: 'a', entryId: 'x', days: 1 },
  ]);
});

test('an entry of the same party goes before a nearer one of nobody known, and one of another party is none', () => {
  const lines = [{ ...row('a', 10, 500), partyId: 'Dell' }];
  const [near, own, other] = [
    row('x', 10, 500),
    { ...row('y', 12, 500), partyId: 'Dell' },
    { ...row('z', 10, 500), partyId: 'Cole' },
  ];
  expect(pairLines({ lines, entries: [near, own, other] }).map(({ entryId }) => entryId)).toEqual(['y']);
  expect(pairLines({ lines, entries: [near, other] }).map(({ entryId }) => entryId)).toEqual(['x']);
  expect(pairLines({ lines, entries: [other] })).toEqual([]);
});

test('a line eleven days from its entry is not taken for it, one of ten days is', () => {
  const entries = [row('x', 1, 500)];
  expect(pairLines({ lines: [row('a', 12, 500)], entries })).toEqual([]);
  expect(pairLines({ lines: [row('a', 11, 500)], entries })).toHaveLength(1);
});

const someRows = fc
  .array(
    fc.record({
      day: fc.integer({ min: 1, max: 30 }),
      minorUnits: fc.constantFrom(-450, 100, 7200),
      partyId: fc.constantFrom(null, 'Cole', 'Dell'),
    }),
  )
  .map((rows) =>
    rows.map(({ day, minorUnits, partyId }, at) => ({ ...row(`row ${at}`, day, minorUnits), partyId })),
  );

test('one line, one entry: equal amounts, days near, nothing left that would fit, whatever the order', () => {
  fc.assert(
    fc.property(someRows, someRows, fc.integer(), (lines, entries, seed) => {
      const pairs = pairLines({ lines, entries });
      expect(new Set(pairs.map(({ lineId }) => lineId)).size).toBe(pairs.length);
      expect(new Set(pairs.map(({ entryId }) => entryId)).size).toBe(pairs.length);
      const line = new Map(lines.map((one) => [one.id, one]));
      const entry = new Map(entries.map((one) => [one.id, one]));
      for (const { lineId, entryId, days } of pairs) {
        expect(line.get(lineId)?.minorUnits).toBe(entry.get(entryId)?.minorUnits);
        expect(days).toBeLessThanOrEqual(10);
      }
      const paired = {
        lines: new Set(pairs.map((pair) => pair.lineId)),
        entries: new Set(pairs.map((pair) => pair.entryId)),
      };
      const left = {
        lines: lines.filter(({ id }) => !paired.lines.has(id)),
        entries: entries.filter(({ id }) => !paired.entries.has(id)),
      };
      expect(pairLines(left)).toEqual([]);
      const shuffled = <Row>(rows: readonly Row[]) =>
        rows.toSorted((a, b) => Math.sin(rows.indexOf(a) + seed) - Math.sin(rows.indexOf(b) + seed));
      expect(pairLines({ lines: shuffled(lines), entries: shuffled(entries) })).toEqual(pairs);
    }),
  );
});

test('every seat has a reference of its own, and one wrong letter makes none', () => {
  const words = Array.from({ length: 4899 }, (_, at) => paymentReference(at + 1));
  expect(new Set(words).size).toBe(4899);
  expect(words.every((word) => /^([bdfgjklmnprstv][aeiou]){3}$/.test(word))).toBe(true);
  const all = new Set(words);
  for (const word of words.slice(0, 200))
    for (const at of [0, 1, 2, 3, 4, 5])
      for (const letter of 'abdefgijklmnoprstuv') {
        const slip = word.slice(0, at) + letter + word.slice(at + 1);
        if (slip !== word) expect(all.has(slip)).toBe(false);
      }
});

test('a reference is found however it is spaced, and two of them are none', () => {
  const [one, two] = [paymentReference(1), paymentReference(2)];
  const spaced = `${one.slice(0, 2)}-${one.slice(2).toUpperCase()}`;
  expect(findReference(`SEPA ${spaced} thanks`, [one, two])).toBe(one);
  expect(findReference(`${one} ${two}`, [one, two])).toBeUndefined();
  expect(findReference('rent', [one, two])).toBeUndefined();
});

const household = (id: string, seat: number, people: string[] = []): KnownParty => ({
  ...{ id, kind: 'household', name: id, seat, people },
});
const parties: KnownParty[] = [
  household('Ashdown', 1, ['Ada Ashdown']),
  household('Ash', 2),
  household('Muñoz', 3, ['Inés Muñoz']),
  { id: 'Quarry Mill', kind: 'supplier', name: 'Quarry Mill', seat: null, people: [] },
];
const earlier = [{ words: 'TRANSFER 4711 K SMITH', partyId: 'Ash' }];

test.for([
  { words: `food ${paymentReference(3)}`, minorUnits: 100, partyId: 'Muñoz', by: 'reference' },
  { words: 'ZELLE FROM ADA ASHDOWN', minorUnits: 100, partyId: 'Ashdown', by: 'name' },
  { words: 'INES MUNOZ 09/03', minorUnits: 100, partyId: 'Muñoz', by: 'name' },
  { words: 'Transfer 9982 K Smith', minorUnits: 100, partyId: 'Ash', by: 'earlier' },
  { words: 'QUARRY MILL INV 77', minorUnits: -100, partyId: 'Quarry Mill', by: 'name' },
  { words: 'Monthly service fee', minorUnits: -100, partyId: null, by: 'words' },
])('“$words” is recognised by $by', ({ words, minorUnits, partyId, by }) => {
  expect(recogniseLine({ words, minorUnits }, { parties, earlier })).toMatchObject({ partyId, by });
});

test.for([
  { words: 'ash ashdown', minorUnits: 100, because: 'a longer name counts for more', partyId: 'Ashdown' },
  {
    words: 'quarry mill refund',
    minorUnits: 100,
    because: 'a supplier that pays is no payment',
    partyId: undefined,
  },
  { words: 'ashes', minorUnits: 100, because: 'part of a word is no name', partyId: undefined },
  { words: 'ash muñoz', minorUnits: 100, because: 'the longer of two names is taken', partyId: 'Muñoz' },
])('“$words”: $because', ({ words, minorUnits, partyId }) => {
  expect(recogniseLine({ words, minorUnits }, { parties, earlier: [] })?.partyId).toBe(partyId);
});

test('two names of one length are not guessed between, and neither are two earlier payers', () => {
  const two = [household('Cole', 4), household('Dell', 5)];
  expect(recogniseLine({ words: 'cole dell', minorUnits: 1 }, { parties: two, earlier: [] })).toBeUndefined();
  const both = ['Cole', 'Dell'].map((partyId) => ({ words: 'ATM deposit', partyId }));
  expect(
    recogniseLine({ words: 'ATM deposit', minorUnits: 1 }, { parties: two, earlier: both }),
  ).toBeUndefined();
  expect(lastingWords('Transfer 4711 from K. Smith 09/03')).toBe('from smith transfer');
});

const receipt = { onDay: '2026-09-20', minorUnits: 7200 };
const booked = {
  entryId: 'x',
  onDay: '2026-09-18',
  minorUnits: 7200,
  what: 'payment',
  isAtBank: true,
  isInTin: false,
} as const;
test.for([
  { is: [], because: undefined },
  { is: [{ ...booked, minorUnits: 7201 }], because: undefined },
  { is: [{ ...booked, onDay: '2026-08-19' }], because: undefined }, // 32 days before
  { is: [{ ...booked, onDay: '2026-08-20' }], because: 'in-book-with-line' }, // 31 days before
  { is: [{ ...booked, isAtBank: false }], because: 'in-book-without-line' },
  { is: [{ ...booked, isAtBank: false, isInTin: true }], because: 'in-tin' },
  { is: [{ ...booked, what: 'deposit' as const }], because: 'deposit-already-paid' },
])('a receipt is asked about as $because', ({ is, because }) => {
  expect(questionReceipt(receipt, is)?.because).toBe(because);
});

test('the entry that waits for a line of the bank is asked about first', () => {
  const waiting = { ...booked, entryId: 'y', onDay: '2026-09-01', isAtBank: false };
  const cash = { ...booked, entryId: 'a', isAtBank: false, isInTin: true };
  expect(questionReceipt(receipt, [cash, booked, waiting])).toEqual({
    entryId: 'y',
    because: 'in-book-without-line',
  });
});

// Book through the 30th: 500 brought over, 72 in at the bank, 40 paid but not yet at the bank: 532. The bank says 568.50:
// it has a fee of 3.50 that is in no entry, and not yet the 40. 572 − 3.50 = 568.50, and 532 + 40 − 3.50 = 568.50.
test('the bank agrees once what is under way and what is not booked is counted', () => {
  const entry = { isBeforeLines: false, clearedOn: null, onDay: '2026-09-03' };
  const reconciliation = reconcileBank({
    throughOn: '2026-09-30',
    statementMinorUnits: 56_850,
    entries: [
      { ...entry, entryId: 'opening', minorUnits: 50_000, isBeforeLines: true },
      { ...entry, entryId: 'payment', minorUnits: 7200, clearedOn: '2026-09-04' },
      { ...entry, entryId: 'cheque', minorUnits: -4000, clearedOn: '2026-10-02' },
      { ...entry, entryId: 'october', minorUnits: -100, onDay: '2026-10-01' },
    ],
    openLines: [
      { lineId: 'fee', onDay: '2026-09-30', minorUnits: -350 },
      { lineId: 'later', onDay: '2026-10-02', minorUnits: 9 },
    ],
  });
  expect(reconciliation).toMatchObject({
    ...{ bookMinorUnits: 53_200, unclearedMinorUnits: -4000, notInBookMinorUnits: -350 },
    ...{ bookedLaterMinorUnits: 0, differenceMinorUnits: 0 },
  });
  expect(reconciliation.uncleared.map(({ entryId }) => entryId)).toEqual(['cheque']);
});

test('while each match has its line’s amount, the difference is what the statement has beyond its lines', () => {
  const someLine = fc.record({
    day: fc.integer({ min: 1, max: 30 }),
    minorUnits: fc.integer({ min: -900, max: 900 }),
    bookedDay: fc.option(fc.integer({ min: 1, max: 30 })),
  });
  fc.assert(
    fc.property(fc.array(someLine), fc.integer({ min: 1, max: 30 }), fc.integer(), (rows, through, slip) => {
      const throughOn = dayOf(through);
      const entries = rows.flatMap(({ day, minorUnits, bookedDay }, at) =>
        bookedDay === null
          ? []
          : [
              {
                entryId: `${at}`,
                onDay: dayOf(bookedDay),
                minorUnits,
                clearedOn: dayOf(day),
                isBeforeLines: false,
              },
            ],
      );
      const openLines = rows.flatMap(({ day, minorUnits, bookedDay }, at) =>
        bookedDay === null ? [{ lineId: `${at}`, onDay: dayOf(day), minorUnits }] : [],
      );
      const said = rows
        .filter(({ day }) => day <= through)
        .reduce((sum, { minorUnits }) => sum + minorUnits, 0);
      const { differenceMinorUnits } = reconcileBank({
        ...{ throughOn, statementMinorUnits: said + slip, entries, openLines },
      });
      expect(differenceMinorUnits).toBe(slip);
    }),
  );
});

// 100.00 in the bank, 60.00 due in by the 20th, 498.50 due out by the 25th and 10.00 on the 26th.
test('a bank that can’t pay by its day is told how much is short', () => {
  const money = {
    bankMinorUnits: 10_000,
    receipts: [
      { dueOn: '2026-09-20', minorUnits: 6000 },
      { dueOn: '2026-09-26', minorUnits: 99_999 },
    ],
    payments: [
      { dueOn: '2026-09-25', minorUnits: 49_850 },
      { dueOn: '2026-09-26', minorUnits: 1000 },
    ],
  };
  expect(foreseeBank({ byOn: '2026-09-25', ...money })).toEqual({
    ...{ receiptsMinorUnits: 6000, paymentsMinorUnits: 49_850 },
    ...{ leftMinorUnits: -33_850, shortMinorUnits: 33_850 },
  });
  expect(foreseeBank({ byOn: '2026-09-26', ...money }).shortMinorUnits).toBe(0);
});

test('notes and coins add up, and what is no count is refused', () => {
  expect(
    sumPieces([
      { eachMinorUnits: 2000, count: 3 },
      { eachMinorUnits: 25, count: 7 },
    ]),
  ).toBe(6175);
  expect(sumPieces([])).toBe(0);
  expect(() => sumPieces([{ eachMinorUnits: 100, count: -1 }])).toThrow('count');
  expect(piecesOf('USD')[0]).toBe(10_000);
  expect(piecesOf('XTS')).toEqual([]);
});
