import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { BANK_COLUMNS, bankText, giveBankLines } from '../support/bank.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { balanceOf, type TestBooks, theBooks } from '../support/money-books.ts';

// Two treasurers at the same desk on the same evening: whatever both press, each line and each entry finds one place.
let app: TestApp;
let books: TestBooks;
let second: TestBooks['treasurer'];
beforeAll(async () => {
  app = await openTestApp('2026-09-30T15:00:00Z');
  books = await theBooks(app);
  const other = await aHousehold(app, books, 'Hale', { duties: ['treasurer'] });
  second = other.caller;
});
afterAll(() => app.close());

const both = (rest: string, body: unknown, times = 3): Promise<Answer[]> =>
  Promise.all(
    Array.from({ length: times }, () => [books.treasurer, second])
      .flat()
      .map((caller) => caller.post(`${books.path}${rest}`, body)),
  );
const outcome = (answers: readonly Answer[]) => ({
  done: answers.filter(({ status }) => status < 300).length,
  refusals: [
    ...new Set(answers.filter(({ status }) => status >= 300).map(({ body }) => String(body.code))),
  ].toSorted(),
});
const aPayment = async (minorUnits: number) => {
  const wish = { householdId: books.dell.householdId, minorUnits, till: 'bank', onDay: '2026-09-01' };
  return bodyOf(await books.treasurer.post(`${books.path}/payments`, wish), 201).entryId as string;
};
const aLine = async (words: string, amount: string): Promise<string> =>
  (await giveBankLines(books.treasurer, books.path, [['2026-09-02', words, amount]]))[words].id;
const expectSound = async () => {
  const { findings } = bodyOf(await books.reviewer.get(`${books.path}/audit`));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
};

test('the same file that many give is taken in once', async () => {
  const text = bankText([
    ['2026-09-01', 'ONE', '1.00'],
    ['2026-09-01', 'ONE', '1.00'],
    ['2026-09-02', 'TWO', '-2.00'],
  ]);
  const answers = await both('/bank/files', { name: 'same.csv', text, columns: BANK_COLUMNS });
  expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 201));
  expect(answers.reduce((sum, { body }) => sum + body.newCount, 0)).toBe(3);
});

test('a line that many match is matched once', async () => {
  const entryId = await aPayment(4100);
  const line = await aLine('MATCHED BY ALL', '41.00');
  const { done, refusals } = outcome(await both(`/bank/lines/${line}/match`, { entryId }));
  expect([done, refusals]).toEqual([1, ['line-already-matched']]);
  await expectSound();
});

test('one entry that many lines want is one line’s', async () => {
  const entryId = await aPayment(4200);
  const lines = await giveBankLines(
    books.treasurer,
    books.path,
    ['A', 'B', 'C', 'D'].map((words) => ['2026-09-02', `WANTS ${words}`, '42.00'] as const),
  );
  const answers = await Promise.all(
    ['A', 'B', 'C', 'D'].map((words, at) =>
      [books.treasurer, second][at % 2]?.post(
        `${books.path}/bank/lines/${lines[`WANTS ${words}`].id}/match`,
        { entryId },
      ),
    ),
  );
  expect(outcome(answers.flatMap((answer) => answer ?? []))).toEqual({
    done: 1,
    refusals: ['entry-already-matched'],
  });
  await expectSound();
});

test('a line that many post is posted once, and the household is credited once', async () => {
  const line = await aLine('POSTED BY ALL', '43.00');
  const before = await balanceOf(books, books.dell);
  const wish = { as: 'payment', householdId: books.dell.householdId, answer: 'one payment' };
  const { done, refusals } = outcome(await both(`/bank/lines/${line}/posting`, wish));
  expect([done, refusals]).toEqual([1, ['line-already-matched']]);
  expect(await balanceOf(books, books.dell)).toBe(before - 4300);
  await expectSound();
});

test('of two lines that could be one receipt, the second is asked about even when both come at once', async () => {
  const lines = await giveBankLines(books.treasurer, books.path, [
    ['2026-09-02', 'TWIN ONE', '44.00'],
    ['2026-09-02', 'TWIN TWO', '44.00'],
  ]);
  const wish = { as: 'payment', householdId: books.dell.householdId };
  const answers = await Promise.all([
    books.treasurer.post(`${books.path}/bank/lines/${lines['TWIN ONE'].id}/posting`, wish),
    second.post(`${books.path}/bank/lines/${lines['TWIN TWO'].id}/posting`, wish),
  ]);
  expect(outcome(answers)).toEqual({ done: 1, refusals: ['second-receipt'] });
});

test('matching an entry and taking it back at once: one of the two happens', async () => {
  for (const minorUnits of [5100, 5200, 5300, 5400]) {
    const entryId = await aPayment(minorUnits);
    const line = await aLine(`RACE ${minorUnits}`, `${minorUnits / 100}.00`);
    const answers = await Promise.all([
      books.treasurer.post(`${books.path}/bank/lines/${line}/match`, { entryId }),
      second.post(`${books.path}/entries/${entryId}/reversal`, { reason: 'a slip' }),
    ]);
    expect(answers.filter(({ status }) => status === 201)).toHaveLength(1);
  }
  await expectSound();
});

test('a line that many let go is let go once, and its entry taken back once', async () => {
  const line = await aLine('LET GO BY ALL', '45.00');
  const wish = { as: 'payment', householdId: books.dell.householdId };
  bodyOf(await books.treasurer.post(`${books.path}/bank/lines/${line}/posting`, wish), 201);
  const before = await balanceOf(books, books.dell);
  const { done } = outcome(await both(`/bank/lines/${line}/undoing`, { reason: 'wrong', takesBack: true }));
  expect(done).toBe(1);
  expect(await balanceOf(books, books.dell)).toBe(before + 4500);
  await expectSound();
});

test('a count that many send posts its difference once', async () => {
  const cash = { householdId: books.corran.householdId, minorUnits: 1000, till: 'cash' };
  bodyOf(await books.treasurer.post(`${books.path}/payments`, cash), 201);
  const count = { countedMinorUnits: 990, expectedMinorUnits: 1000, reason: 'a dime' };
  expect(outcome(await both('/tin/counts', count))).toEqual({ done: 1, refusals: ['stale-version'] });
  await expectSound();
});
