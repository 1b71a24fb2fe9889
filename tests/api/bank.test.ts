import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { BANK_COLUMNS, bankText, giveBankLines, readLines } from '../support/bank.ts';
import { aSupplier, bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aHousehold } from '../support/household.ts';
import { anOpeningBalance, balanceOf, type TestBooks, theBooks } from '../support/money-books.ts';

let app: TestApp;
let books: TestBooks;
beforeAll(async () => {
  app = await openTestApp('2026-09-30T15:00:00Z');
  books = await theBooks(app);
});
afterAll(() => app.close());

const at = (rest: string) => `${books.path}${rest}`;
const post = (rest: string, body: unknown) => books.treasurer.post(at(rest), body);
const get = async (rest: string) => bodyOf(await books.treasurer.get(at(rest)));
const refusal = (rest: string, body: unknown) => refusalOf(app, () => post(rest, body));
const give = (...lines: Parameters<typeof giveBankLines>[2][number][]) =>
  giveBankLines(books.treasurer, books.path, lines);
const posting = (id: string) => `/bank/lines/${id}/posting`;
let names = 0;
const aMember = () => aHousehold(app, books, `Member ${++names}`);

const SPANISH = [
  'Cuenta;12-34;;;',
  'Fecha;Concepto;Cargo;Abono;Saldo',
  '14/09/2026;Comisión de cuenta;4,50;;1.067,50',
  '03/09/2026;Transferencia Dell;;1.072,00;1.072,00',
].join('\r\n');

test('a preview says how a file is read, and changes nothing', async () => {
  const before = await refusal('/bank/previews', { text: SPANISH });
  expect(before).toMatchObject({ status: 200, isUnchanged: true });
  const preview = bodyOf(await post('/bank/previews', { text: `\ufeff${SPANISH}` }));
  expect(preview).toMatchObject({
    ...{ from: 'guessed', lineCount: 2, knownCount: 0, firstOn: '2026-09-03', lastOn: '2026-09-14' },
    ...{ cameInMinorUnits: 107_200, wentOutMinorUnits: 450, problems: [] },
    columns: { firstRow: 2, dayColumn: 0, dayOrder: 'dmy', outColumn: 2, inColumn: 3, decimalMark: ',' },
    closing: { onDay: '2026-09-14', minorUnits: 106_750 },
  });
});

test('a file is taken in, and the next one of the bank is read by the columns that were confirmed', async () => {
  const { columns } = bodyOf(await post('/bank/previews', { text: SPANISH }));
  const corrected = { ...columns, wordColumns: [1, 0] };
  const file = { name: 'septiembre.csv', text: SPANISH, columns: corrected };
  expect(bodyOf(await post('/bank/files', file), 201)).toMatchObject({ newCount: 2, knownCount: 0 });
  const next = bodyOf(await post('/bank/previews', { text: SPANISH }));
  expect(next).toMatchObject({ from: 'remembered', knownCount: 2, columns: { wordColumns: [1, 0] } });
  const said = bodyOf(await post('/bank/previews', { text: SPANISH, columns }));
  expect(said).toMatchObject({ from: 'said', columns: { wordColumns: [1] } });
  expect((await get('/bank/files')).files[0]).toMatchObject({ name: 'septiembre.csv', newLines: 2 });
});

test('overlapping files bring each line once, and two equal payments of a day stay two', async () => {
  const twice = ['2026-09-05', 'CASH MACHINE DEPOSIT', '20.00'] as const;
  const file = (lines: (readonly [string, string, string])[]) => ({
    ...{ name: 'overlap.csv', text: bankText(lines), columns: BANK_COLUMNS },
  });
  const first = bodyOf(await post('/bank/files', file([twice, twice])), 201);
  expect(first).toMatchObject({ newCount: 2, knownCount: 0 });
  const second = bodyOf(
    await post('/bank/files', file([twice, twice, ['2026-09-06', 'LATER', '1.00'], twice])),
    201,
  );
  expect(second).toMatchObject({ newCount: 2, knownCount: 2 });
});

test.for([
  { text: 'nothing but words', because: 'no table at all' },
  { text: 'a,b\nc,d\n', because: 'no day and no amount' },
])('$because is refused at the file, and nothing is kept', async ({ text }) => {
  const answer = await refusal('/bank/files', { name: 'x.csv', text, columns: BANK_COLUMNS });
  expect(answer).toMatchObject({ fields: ['text'], isUnchanged: true });
});

test('a row that can’t be read is named, and the file waits until it is left out', async () => {
  const text = `${bankText([['2026-09-07', 'GOOD', '5.00']])}2026-09-07,BAD,five\n2026-10-09,EARLY,1.00\n`;
  const file = { name: 'bad.csv', text, columns: BANK_COLUMNS };
  const { problems } = bodyOf(await post('/bank/previews', { text, columns: BANK_COLUMNS }));
  expect(
    problems.map((problem: { rowNo: number; because: string }) => [problem.rowNo, problem.because]),
  ).toEqual([
    [3, 'no-amount'],
    [4, 'still-to-come'],
  ]);
  expect(await refusal('/bank/files', file)).toMatchObject({
    ...{ status: 400, code: 'invalid-input', fields: ['rows.3', 'rows.4'], isUnchanged: true },
  });
  expect(bodyOf(await post('/bank/files', { ...file, leaveOutRows: [3, 4] }), 201).newCount).toBe(1);
});

test('a line is taken for the entry that is in the book, once', async () => {
  const member = await aMember();
  const paid = { householdId: member.householdId, minorUnits: 7201, till: 'bank', onDay: '2026-09-08' };
  const { entryId } = bodyOf(await post('/payments', paid), 201);
  const lines = await give(['2026-09-10', 'TRANSFER 881', '72.01'], ['2026-09-11', 'TRANSFER 882', '72.01']);
  const [line, other] = [lines['TRANSFER 881'], lines['TRANSFER 882']];
  expect(line.suggestion.entry).toMatchObject({ id: entryId, what: 'payment-received' });
  expect(other.suggestion.entry).toBeNull();
  expect(bodyOf(await post(`/bank/lines/${line.id}/match`, { entryId }), 201)).toMatchObject({
    how: 'in-book',
  });
  expect(await refusal(`/bank/lines/${line.id}/match`, { entryId })).toMatchObject({
    ...{ status: 409, code: 'line-already-matched', isUnchanged: true },
  });
  expect(await refusal(`/bank/lines/${other.id}/match`, { entryId })).toMatchObject({
    ...{ status: 409, code: 'entry-already-matched', isUnchanged: true },
  });
  expect(await balanceOf(books, member)).toBe(-7201);
});

test('a line is not taken for an entry of another amount, or one that was taken back', async () => {
  const { householdId } = await aMember();
  const paid = { householdId, minorUnits: 6001, till: 'bank', onDay: '2026-09-08' };
  const { entryId } = bodyOf(await post('/payments', paid), 201);
  const lines = await give(['2026-09-10', 'A CENT LESS', '60.00'], ['2026-09-10', 'THE SAME', '60.01']);
  expect(await refusal(`/bank/lines/${lines['A CENT LESS'].id}/match`, { entryId })).toMatchObject({
    ...{ status: 422, code: 'does-not-add-up', fields: ['entryId'], isUnchanged: true },
  });
  bodyOf(await post(`/entries/${entryId}/reversal`, { reason: 'typed twice' }), 201);
  expect(await refusal(`/bank/lines/${lines['THE SAME'].id}/match`, { entryId })).toMatchObject({
    ...{ status: 404, code: 'thing-not-found', fields: ['entryId'], isUnchanged: true },
  });
});

test('an entry is not taken back under a matched line; letting the line go opens the way', async () => {
  const { householdId } = await aMember();
  const paid = { householdId, minorUnits: 6100, till: 'bank', onDay: '2026-09-08' };
  const { entryId } = bodyOf(await post('/payments', paid), 201);
  const lines = await give(['2026-09-10', 'BOUND', '61.00']);
  const { id } = lines.BOUND;
  bodyOf(await post(`/bank/lines/${id}/match`, { entryId }), 201);
  const taking = `/entries/${entryId}/reversal`;
  expect(await refusal(taking, { reason: 'a slip' })).toMatchObject({
    code: 'cannot-reverse',
    isUnchanged: true,
  });
  expect(await refusal(`/bank/lines/${id}/undoing`, { reason: 'a slip', takesBack: true })).toMatchObject({
    ...{ code: 'cannot-reverse', fields: ['takesBack'], isUnchanged: true },
  });
  expect(bodyOf(await post(`/bank/lines/${id}/undoing`, { reason: 'a slip' }), 201).isOpen).toBe(true);
  bodyOf(await post(taking, { reason: 'a slip' }), 201);
});

test('a line becomes a payment of the household that its words name, and can be taken back with it', async () => {
  const member = await aMember();
  await anOpeningBalance(books, member, { balanceMinorUnits: 5500 });
  const { balances } = await get('/balances?limit=200');
  const { reference } = balances.find(
    (row: { householdId: string }) => row.householdId === member.householdId,
  );
  const words = `SEPA ${reference.toUpperCase()} THANKS`;
  const { id, suggestion } = (await give(['2026-09-12', words, '55.00']))[words];
  expect(suggestion.guess).toMatchObject({ as: 'payment', by: 'reference', partyId: member.householdId });
  const wish = { as: 'payment', householdId: member.householdId };
  const { entryId } = bodyOf(await post(posting(id), wish), 201);
  expect(await get(`/entries/${entryId}`)).toMatchObject({
    what: 'payment-received',
    onDay: '2026-09-12',
    note: words,
  });
  expect(await balanceOf(books, member)).toBe(0);
  bodyOf(await post(`/bank/lines/${id}/undoing`, { reason: 'the wrong household', takesBack: true }), 201);
  expect(await balanceOf(books, member)).toBe(5500);
  expect((await readLines(books.treasurer, books.path, 'state=open'))[words].id).toBe(id);
});

test('whoever paid like this before is recognised the next month', async () => {
  const { householdId } = await aMember();
  const lines = await give(['2026-08-02', 'PAYPOINT 771 OMA MARTA', '31.00']);
  bodyOf(await post(posting(lines['PAYPOINT 771 OMA MARTA'].id), { as: 'payment', householdId }), 201);
  const next = await give(['2026-09-02', 'PAYPOINT 882 OMA MARTA', '33.00']);
  expect(next['PAYPOINT 882 OMA MARTA'].suggestion.guess).toMatchObject({
    by: 'earlier',
    partyId: householdId,
  });
});

test('a second receipt for the same thing is asked about, and posts once that is answered', async () => {
  const member = await aMember();
  const { householdId } = member;
  const cash = bodyOf(
    await post('/payments', { householdId, minorUnits: 4400, till: 'cash', onDay: '2026-09-01' }),
    201,
  );
  const { id } = (await give(['2026-09-15', 'AGAIN', '44.00'])).AGAIN;
  const wish = { as: 'payment', householdId };
  const asked = await post(posting(id), wish);
  expect(asked.body).toMatchObject({
    ...{ status: 409, code: 'second-receipt', because: 'in-tin', mayBeThis: false, entryNo: cash.entryNo },
    fields: [{ field: 'answer' }],
  });
  expect(asked.body.detail).toContain('44.00 USD from this household');
  expect(await refusal(posting(id), { ...wish, answer: '   ' })).toMatchObject({ isUnchanged: true });
  const answer = 'August in the tin, September by bank.';
  expect(bodyOf(await post(posting(id), { ...wish, answer }), 201)).toMatchObject({ reason: answer });
  expect(await balanceOf(books, member)).toBe(-8800);
  const { id: third } = (await give(['2026-09-16', 'AND AGAIN', '44.00']))['AND AGAIN'];
  expect((await post(posting(third), wish)).body).toMatchObject({
    because: expect.stringContaining('in-book'),
  });
});

test('what waits for its line in the book is offered before what was paid otherwise', async () => {
  const { householdId } = await aMember();
  const pay = async (till: string, onDay: string) =>
    bodyOf(await post('/payments', { householdId, minorUnits: 4600, till, onDay }), 201).entryId;
  await pay('cash', '2026-09-14');
  const waiting = await pay('bank', '2026-09-01');
  const { id } = (await give(['2026-09-15', 'WHICH OF THEM', '46.00']))['WHICH OF THEM'];
  const asked = await post(posting(id), { as: 'payment', householdId });
  expect(asked.body).toMatchObject({ because: 'in-book-without-line', mayBeThis: true, entryId: waiting });
  expect(bodyOf(await post(`/bank/lines/${id}/match`, { entryId: waiting }), 201).how).toBe('in-book');
});

test('every other kind of line finds its account', async () => {
  const member = await aMember();
  const { householdId } = member;
  const supplierId = await aSupplier(books);
  bodyOf(await post('/payments', { householdId, minorUnits: 9000, till: 'cash' }), 201);
  const lines = await give(
    ['2026-09-17', 'MONTHLY SERVICE FEE', '-4.50'],
    ['2026-09-17', 'CARD PARTS SHOP', '-12.00'],
    ['2026-09-17', 'OUT TO THE MILL', '-30.00'],
    ['2026-09-17', 'BACK TO THEM', '-15.00'],
    ['2026-09-17', 'COUNTER', '50.00'],
    ['2026-09-17', 'A FRIEND', '25.00'],
  );
  expect(lines['MONTHLY SERVICE FEE'].suggestion.guess).toMatchObject({ as: 'bank-charge', by: 'words' });
  const wishes = {
    'MONTHLY SERVICE FEE': { as: 'bank-charge' },
    'CARD PARTS SHOP': { as: 'repairs' },
    'OUT TO THE MILL': { as: 'supplier-payment', supplierId, isPrepayment: true },
    'BACK TO THEM': { as: 'refund', householdId },
    COUNTER: { as: 'cash-banked' },
    'A FRIEND': { as: 'gift' },
  };
  const whats: Record<string, string> = {};
  for (const [words, wish] of Object.entries(wishes)) {
    const { entryId } = bodyOf(await post(posting(lines[words].id), wish), 201);
    whats[words] = (await get(`/entries/${entryId}`)).what;
  }
  expect(Object.values(whats)).toEqual([
    ...['bank-charge', 'fund-spent', 'supplier-paid', 'payment-refunded', 'cash-banked', 'fund-received'],
  ]);
  expect(await balanceOf(books, member)).toBe(-7500);
});

test.for([
  { wish: { as: 'bank-charge' }, field: 'as', because: 'what came in is no charge' },
  { wish: { as: 'payment' }, field: 'householdId', because: 'a payment names its household' },
  {
    wish: { as: 'gift', supplierId: '01996b1e-5a3c-7c2e-8f4b-3d9a1c2b4e5f' },
    field: 'supplierId',
    because: 'a gift has no supplier',
  },
  {
    wish: { as: 'deposit', householdId: '01996b1e-5a3c-7c2e-8f4b-3d9a1c2b4e5f' },
    field: 'buyId',
    because: 'a deposit names its buy',
  },
])('a line is not posted where $because', async ({ wish, field, because }) => {
  const { id } = (await give(['2026-09-18', because, '9.00']))[because];
  expect(await refusal(posting(id), wish)).toMatchObject({
    code: 'invalid-input',
    fields: [field],
    isUnchanged: true,
  });
});

test('a line that is none of the book’s is set aside with its reason, and comes back', async () => {
  const { id } = (await give(['2026-09-19', 'OTHER ACCOUNT', '8.00']))['OTHER ACCOUNT'];
  const path = `/bank/lines/${id}/setting-aside`;
  expect(await refusal(path, { reason: ' ' })).toMatchObject({ fields: ['reason'], isUnchanged: true });
  bodyOf(await post(path, { reason: 'The garden club’s.' }), 201);
  expect(
    (await readLines(books.treasurer, books.path, 'state=set-aside'))['OTHER ACCOUNT'].match,
  ).toMatchObject({
    reason: 'The garden club’s.',
  });
  expect((await refusal(path, { reason: 'again' })).code).toBe('line-already-matched');
  bodyOf(await post(`/bank/lines/${id}/undoing`, { reason: 'It was ours.' }), 201);
  expect((await refusal(`/bank/lines/${id}/undoing`, { reason: 'x' })).code).toBe('thing-not-found');
});

test('lines are found by their words and by their amount, and come as CSV', async () => {
  await give(['2026-09-20', '=Sum of Needles', '123.45']);
  for (const search of ['needles', '123.45', '123,45'])
    expect(Object.keys(await readLines(books.treasurer, books.path, `state=all&search=${search}`))).toEqual([
      '=Sum of Needles',
    ]);
  const csv = await books.treasurer.get(at('/bank/lines?state=all&search=needles&format=csv'));
  expect(csv.body.split('\r\n').slice(0, 2)).toEqual([
    'onDay,minorUnits,words,state,entryNo,what,party,reason',
    "2026-09-20,12345,'=Sum of Needles,open,,,,",
  ]);
});

test('the reviewer reads and changes nothing, and the household sees who looked', async () => {
  const { id } = (await give(['2026-09-21', 'FOR THE REVIEWER', '7.77']))['FOR THE REVIEWER'];
  const member = await aMember();
  bodyOf(await post(posting(id), { as: 'payment', householdId: member.householdId }), 201);
  const read = await readLines(books.reviewer, books.path, 'state=done&search=reviewer');
  expect(read['FOR THE REVIEWER'].match.party).toMatch(/^Member/);
  const denied = await refusalOf(app, () =>
    books.reviewer.post(at(`/bank/lines/${id}/undoing`), { reason: 'x' }),
  );
  expect(denied).toMatchObject({ status: 403, code: 'duty-missing', isUnchanged: true });
  const { privateReads: reads } = bodyOf(
    await member.caller.get(at(`/households/${member.householdId}/private-reads`)),
  );
  expect(reads.map(({ purpose }: { purpose: string }) => purpose)).toContain('matching the bank');
});

test('the audit counts what is matched', async () => {
  const { findings } = bodyOf(await books.reviewer.get(at('/audit')));
  const matched = findings.find(({ invariant }: { invariant: string }) =>
    invariant.includes('line of the bank'),
  );
  expect(matched).toMatchObject({ holds: true, figure: expect.stringMatching(/^lines matched: [1-9]/) });
});
