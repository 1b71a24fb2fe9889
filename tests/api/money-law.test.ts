import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { balanceOf, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
let buy: TestBuy;
beforeAll(async () => {
  app = await openTestApp('2026-09-15T15:00:00Z');
  books = await theBooks(app);
  buy = await aBuy(app, books);
});
afterAll(() => app.close());

type Command = { readonly does: string; readonly minorUnits: number; readonly till: 'bank' | 'cash' };
type Sums = { readonly owes: number; readonly held: number; readonly tin: number };
type Model = {
  sums: Sums;
  undoable: { readonly entryId: string; readonly before: Sums; readonly after: Sums }[];
};

const someCommands = fc.array(
  fc.record(
    {
      does: fc.constantFrom(
        'pay',
        'refund',
        'deposit',
        'deposit-credit',
        'deposit-back',
        'bank-cash',
        'undo',
      ),
      minorUnits: fc.integer({ min: 1, max: 3000 }),
      till: fc.constantFrom<'bank' | 'cash'>('bank', 'cash'),
    },
    { noNullPrototype: true },
  ),
  { minLength: 5, maxLength: 12 },
);

test('whatever a treasurer does in whatever order, the book balances and each refusal was right', async () => {
  let runs = 0;
  await fc.assert(
    fc.asyncProperty(someCommands, async (commands) => {
      const household = await aHousehold(app, books, `Run ${++runs}`);
      const model: Model = { sums: { owes: 0, held: 0, tin: await cashInTin() }, undoable: [] };
      for (const command of commands) await carryOut(command, household, model);
      expect(await balanceOf(books, household)).toBe(model.sums.owes);
      expect(await cashInTin()).toBe(model.sums.tin);
      const balance = bodyOf(await books.treasurer.get(`${books.path}/trial-balance`));
      expect(balance.agrees).toBe(true);
    }),
    { numRuns: 12 },
  );
  const audit = bodyOf(await books.treasurer.get(`${books.path}/audit`));
  expect(audit.findings.filter((finding: { holds: boolean }) => !finding.holds)).toEqual([]);
});

/** Sends a command, and asks that it was taken exactly when the model can take it. */
async function carryOut(command: Command, { householdId }: TestHousehold, model: Model): Promise<void> {
  const request = command.does === 'undo' ? undoing(model) : asking(command, householdId, model.sums);
  if (!request) return;
  const { path, body, after } = request;
  const paysOut = command.does === 'refund' || command.does === 'deposit-credit';
  const isPossible = after.tin >= 0 && after.held >= 0 && !(paysOut && after.owes > 0);
  const answer = await books.treasurer.post(path, body);
  expect({ ...command, status: answer.status }).toEqual({ ...command, status: isPossible ? 201 : 409 });
  if (!isPossible) return;
  if (command.does === 'undo') model.undoable.pop();
  else model.undoable.push({ entryId: answer.body.entryId, before: model.sums, after });
  model.sums = after;
}

function asking({ does, minorUnits, till }: Command, householdId: string, sums: Sums) {
  const { owes, held, tin } = sums;
  const cash = till === 'cash' ? minorUnits : 0;
  const body = { householdId, minorUnits, till };
  const [deposits, more] = [`${buy.path}/deposits`, held + minorUnits];
  switch (does) {
    case 'pay': {
      const after = { ...sums, owes: owes - minorUnits, tin: tin + cash };
      return { path: `${books.path}/payments`, body: { ...body, isKnownDuplicate: true }, after };
    }
    case 'refund':
      return {
        path: `${books.path}/refunds`,
        body,
        after: { ...sums, owes: owes + minorUnits, tin: tin - cash },
      };
    case 'deposit':
      return { path: deposits, body, after: { ...sums, held: more, tin: tin + cash } };
    case 'deposit-credit': {
      const after = { ...sums, owes: owes + minorUnits, held: more };
      return { path: deposits, body: { householdId, minorUnits, fromBalance: true }, after };
    }
    case 'deposit-back':
      return {
        path: `${deposits}/refunds`,
        body,
        after: { ...sums, held: held - minorUnits, tin: tin - cash },
      };
    default:
      return {
        path: `${books.path}/cash-bankings`,
        body: { minorUnits },
        after: { ...sums, tin: tin - minorUnits },
      };
  }
}

/** Undoes the last entry that still stands; what came in between was undone before. */
function undoing({ undoable, sums }: Model) {
  const last = undoable.at(-1);
  if (!last) return undefined;
  const { entryId, before, after } = last;
  return {
    path: `${books.path}/entries/${entryId}/reversal`,
    body: { reason: 'undone' },
    after: {
      owes: sums.owes - after.owes + before.owes,
      held: sums.held - after.held + before.held,
      tin: sums.tin - after.tin + before.tin,
    },
  };
}

async function cashInTin(): Promise<number> {
  const { rows } = bodyOf(await books.treasurer.get(`${books.path}/trial-balance`));
  return rows.find((row: { number: string }) => row.number === '1010').debitMinorUnits;
}
