import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { cookieOf, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { bringOver, type SheetText, sheetFiles, WHOLE_GROUP } from '../support/import.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp('2026-10-01T15:00:00Z');
  storehouse = await aStorehouse(app);
  const persons = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/persons`)).persons;
  await storehouse.coordinator.post(`${storehouse.path}/persons/${persons[0].id}/duties`, {
    duty: 'treasurer',
  });
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const trial = (sheets: readonly SheetText[], more: Record<string, unknown> = {}) =>
  storehouse.coordinator.post(at('/import-trials'), { files: sheetFiles(sheets), ...more });
const bookState = async () =>
  JSON.stringify(
    await app.admin`select
    (select jsonb_agg(h order by h.seat) from book.household h) as households,
    (select jsonb_agg(e order by e.eater_id) from book.eater e) as eaters,
    (select count(*) from book.food) as foods, (select count(*) from book.container) as containers,
    (select jsonb_agg(a order by a.account_id) from book.account a where a.inflow <> 0 or a.outflow <> 0) as accounts,
    (select jsonb_agg(e order by e.entry_no) from book.entry e) as entries,
    (select jsonb_agg(c order by c.counter) from book.code_counter c) as counters,
    (select count(*) from book.import) as imports`,
  );
const problemsOf = (answer: {
  body: {
    files: {
      name: string;
      rows: { row: number; problems: { heading: string; read: string; code: string }[] }[];
    }[];
  };
}) =>
  answer.body.files.flatMap(({ name, rows }) =>
    rows.flatMap(({ row, problems }) =>
      problems.map(({ heading, read, code }) => [name, row, heading, read, code]),
    ),
  );

describe('before anything is brought over', () => {
  let before: string;
  beforeEach(async () => {
    before = await bookState();
  });

  test('a trial tells each row’s effect and writes nothing', async () => {
    const { status, body } = await trial(WHOLE_GROUP);
    expect(status).toBe(200);
    expect(body.isPossible).toBe(true);
    const effects = body.files.flatMap((file: { rows: { effect: unknown }[] }) =>
      file.rows.map((row) => row.effect),
    );
    expect(effects).toMatchObject([
      { code: 'new-household', name: 'Dell', seat: 2 },
      { code: 'new-household', name: 'Eames', seat: 3 },
      { code: 'new-eater', name: 'Ida', household: 'Dell', birthOn: '2015-04' },
      { code: 'new-eater', name: 'Emil', household: 'Eames', birthOn: '1980' },
      { code: 'new-food', foodCode: 'emmer' },
      { code: 'opens', name: 'Dell', balanceMinorUnits: 4120 },
      { code: 'opens', name: 'Eames', balanceMinorUnits: -1000 },
      { code: 'opens', of: 'bank', balanceMinorUnits: 151_230 },
      { code: 'opens', of: 'supplier', balanceMinorUnits: -12_000, isNew: true },
      { code: 'new-stock', owner: 'Dell', count: 2, gramsEach: 15_000, stored: '2024-03' },
      // 33 lb × 453.59237 g = 14,968.55 g
      { code: 'new-stock', owner: null, count: 1, gramsEach: 14_969, stored: '2025-10-12' },
      { code: 'new-equipment', name: 'Can sealer', valueMinorUnits: 64_000 },
    ]);
    expect(await bookState()).toBe(before);
  });

  test('all errors are told at once, each at its cell, and one of them stops everything', async () => {
    const sheets: SheetText[] = [
      { name: 'households.csv', text: 'Household\nDell\ndell\nSeat 9\n' },
      {
        name: 'eaters.csv',
        text: 'Eater,Household,Born\nIda,Nobody,2015\n,Dell,03/04/2015\nBo,Dell,1/3/15\n',
      },
      {
        name: 'balances.csv',
        text: 'Account,Owes,In credit\nDell,1.250,\nDell,5.00,5.00\nHill Mill,2.00,\nbank,5.00,\n',
      },
      {
        name: 'stock.csv',
        text: 'Owner,Food,Container,Count,Mass each,Stored\nDell,wheat of old,barrel,0,15,2027-01\nDell,rice-white-long,can-no-10,1,50 kg,2024\n',
      },
    ];
    const { tried, posted } = await bringOver(storehouse.coordinator, storehouse.path, sheets);
    expect(tried.body).toMatchObject({ isPossible: false, seen: null });
    expect(problemsOf(tried)).toEqual([
      ['households.csv', 3, 'Household', 'dell', 'twice-in-file'],
      ['households.csv', 4, 'Household', 'Seat 9', 'seat-name'],
      ['eaters.csv', 2, 'Household', 'Nobody', 'no-such-household'],
      ['eaters.csv', 3, 'Eater', '', 'missing'],
      ['eaters.csv', 3, 'Born', '03/04/2015', 'ambiguous-day'],
      ['eaters.csv', 4, 'Born', '1/3/15', 'short-year'],
      ['balances.csv', 2, 'Owes', '1.250', 'ambiguous-number'],
      ['balances.csv', 3, 'Owes', '5.00', 'one-amount'],
      ['balances.csv', 3, 'Account', 'Dell', 'twice-in-file'],
      ['balances.csv', 4, 'Account', 'Hill Mill', 'no-such-account'],
      ['balances.csv', 5, 'Owes', '5.00', 'wrong-side'],
      ['stock.csv', 2, 'Food', 'wheat of old', 'no-such-food'],
      ['stock.csv', 2, 'Container', 'barrel', 'no-such-kind'],
      ['stock.csv', 2, 'Count', '0', 'not-whole'],
      ['stock.csv', 2, 'Mass each', '15', 'unit-missing'],
      ['stock.csv', 2, 'Stored', '2027-01', 'day-to-come'],
      ['stock.csv', 3, 'Mass each', '50 kg', 'over-capacity'],
    ]);
    expect([posted.status, posted.body.code]).toEqual([409, 'import-has-errors']);
    expect(await bookState()).toBe(before);
  });

  test.for([
    {
      because: 'a workbook',
      base64: Buffer.from('PK\u0003\u0004\u0014\0\u0006\0', 'latin1').toString('base64'),
      codes: ['not-text'],
    },
    { because: 'empty', base64: Buffer.from('\n').toString('base64'), codes: ['empty-file'] },
    {
      because: 'headings nobody knows',
      base64: Buffer.from('a,b\n1,2\n').toString('base64'),
      codes: ['unknown-kind'],
    },
    {
      because: 'an open quote',
      base64: Buffer.from('Household\n"Dell\n').toString('base64'),
      codes: ['broken-quotes'],
    },
    {
      because: 'a column nobody knows',
      base64: Buffer.from('Household,Shoe size\nDell,9\n').toString('base64'),
      codes: ['unknown-heading'],
    },
    { because: 'no rows', base64: Buffer.from('Household,Person\n').toString('base64'), codes: ['no-rows'] },
  ])('a file is refused in words: $because', async ({ base64, codes }) => {
    const answer = await storehouse.coordinator.post(at('/import-trials'), {
      files: [{ name: 'x.csv', base64 }],
    });
    expect(answer.body.files[0].problems.map(({ code }: { code: string }) => code)).toEqual(codes);
    expect(answer.body.seen).toBeNull();
  });

  test('a file of an older spreadsheet keeps its letters, and a byte that stands for none is told at its cell', async () => {
    const latin = (text: string) => Buffer.from(text, 'latin1').toString('base64');
    const [read, broken] = await Promise.all(
      ['Hogar;Persona\r\nMüller;Íñigo Núñez\r\n', 'Hogar;Persona\r\nDell;D\x81ra\r\n'].map((text) =>
        storehouse.coordinator.post(at('/import-trials'), {
          files: [{ name: 'x.csv', base64: latin(text) }],
        }),
      ),
    );
    expect(read?.body.files[0]).toMatchObject({
      encoding: 'windows-1252',
      rows: [{ effect: { code: 'new-household', name: 'Müller', person: 'Íñigo Núñez' } }],
    });
    expect(broken?.body.isPossible).toBe(false);
    expect(problemsOf(broken as never)).toEqual([['x.csv', 2, 'Persona', 'D\uFFFDra', 'unreadable-byte']]);
    const chosen = await storehouse.coordinator.post(at('/import-trials'), {
      files: [{ name: 'x.csv', base64: latin('Hogar\nMÃ¼ller\n') }],
      encoding: 'windows-1252',
    });
    expect(chosen.body.files[0].rows[0].cells).toEqual(['MÃ¼ller']);
    expect(await bookState()).toBe(before);
  });

  test('a column may be left out once somebody says so', async () => {
    const text = 'Household,Shoe size\nDell,9\n';
    const { body } = await trial([{ name: 'x.csv', text, leftOut: ['Shoe size'] }]);
    expect(body.isPossible).toBe(true);
  });

  test('an error in the last row leaves everything as it was', async () => {
    const rows = Array.from({ length: 200 }, (_, at) => `House ${at + 1}x`);
    const good = await trial([{ name: 'h.csv', text: `Household\n${rows.join('\n')}\n` }]);
    expect(good.body.isPossible).toBe(true);
    const text = `Household\n${rows.join('\n')}\nSeat 4\n`;
    const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'h.csv', text }]);
    expect(posted.body.code).toBe('import-has-errors');
    expect(await bookState()).toBe(before);
  });

  test('what was not seen is not posted', async () => {
    const { body } = await trial([{ name: 'h.csv', text: 'Household\nDell\n' }]);
    const files = sheetFiles([{ name: 'h.csv', text: 'Household\nDelling\n' }]);
    const posted = await storehouse.coordinator.post(at('/imports'), { files, seen: body.seen });
    expect([posted.status, posted.body.code]).toEqual([409, 'import-not-as-seen']);
    expect(await bookState()).toBe(before);
  });
});

describe('once it is brought over', () => {
  test('of two posts at once one counts, and balances, grams and the audit hold', async () => {
    const { seen } = bodyOf(await trial(WHOLE_GROUP));
    const wish = { files: sheetFiles(WHOLE_GROUP), seen };
    const answers = await Promise.all([1, 2].map(() => storehouse.coordinator.post(at('/imports'), wish)));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
    const [money] = await app.admin`select
      (select sum(inflow - outflow)::int from book.account where kind = 'household') as owed,
      (select sum(inflow - outflow)::int from book.account where kind = 'bank') as bank,
      (select sum(inflow - outflow)::int from book.account where kind = 'supplier') as supplier,
      (select sum(inflow - outflow)::int from book.account where kind = 'store_fund') as fund`;
    // 41.20 − 10.00 owed, 1,512.30 in the bank, 120.00 to the mill; the fund is the rest: 1,423.50
    expect(money).toEqual({ owed: 3120, bank: 151_230, supplier: -12_000, fund: -142_350 });
    const grams = await app.admin`select o.kind, sum(a.inflow - a.outflow)::int as grams from book.account a
      join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id
      where a.vessel_kind = 'container' group by o.kind order by o.kind`;
    expect([...grams]).toEqual([
      { kind: 'common', grams: 14_969 },
      { kind: 'household', grams: 30_000 },
    ]);
    const audit = bodyOf(await storehouse.coordinator.get(at('/audit')));
    expect(audit.findings.filter((finding: { holds: boolean }) => !finding.holds)).toEqual([]);
    expect(audit.findings.length).toBeGreaterThan(5);
  });

  test('it is listed with its files, and the same files are refused', async () => {
    const { imports } = bodyOf(await storehouse.coordinator.get(at('/imports')));
    expect(imports).toMatchObject([{ importNo: 1, importedBy: 'Ada Ashdown', openingOn: '2026-10-01' }]);
    expect(
      imports[0].files.map((file: { kind: string; newRows: number }) => [file.kind, file.newRows]),
    ).toEqual([
      ['households', 2],
      ['eaters', 2],
      ['foods', 1],
      ['balances', 4],
      ['stock', 2],
      ['equipment', 1],
    ]);
    const { tried, posted } = await bringOver(storehouse.coordinator, storehouse.path, WHOLE_GROUP);
    expect(tried.body.files.map((file: { problems: { code: string }[] }) => file.problems[0]?.code)).toEqual(
      WHOLE_GROUP.map(() => 'posted-before'),
    );
    expect(posted.body.code).toBe('import-has-errors');
    const { items } = bodyOf(await storehouse.coordinator.get(at('/equipment')));
    expect(items).toMatchObject([
      { name: 'Can sealer', partsList: 'chuck, two rollers', valueMinorUnits: 64_000 },
    ]);
  });

  test('of a sheet with one more row only that row is new', async () => {
    const stock = WHOLE_GROUP.find(({ name }) => name === 'stock.csv')?.text ?? '';
    const sheets: SheetText[] = [
      { name: 'households.csv', text: 'Household\nDell\nEames\nFoss\n' },
      { name: 'balances.csv', text: 'Account,Owes\nDell,41.20\nFoss,1.00\n' },
      { name: 'stock.csv', text: `${stock}Eames,Emmer,pail-5-gallon-lined,1,14 kg,2024,\n` },
    ];
    const { tried } = await bringOver(storehouse.coordinator, storehouse.path, sheets.slice(0, 1));
    expect(tried.body.files[0]).toMatchObject({ newRows: 1, skippedRows: 2 });
    const { body } = await trial(sheets.slice(1));
    expect(
      body.files.map((file: { newRows: number; skippedRows: number }) => [file.newRows, file.skippedRows]),
    ).toEqual([
      [1, 1],
      [1, 2],
    ]);
    const other = await trial([{ name: 'b.csv', text: 'Account,Owes\nDell,50.00\n' }]);
    expect(problemsOf(other)).toEqual([['b.csv', 2, 'Owes', '50.00', 'opened-before']]);
  });

  test('a household sees that its eaters and shelf were looked at', async () => {
    const looks = await app.admin`select distinct h.name, r.what, r.purpose from book.private_read r
      join book.household h on h.storehouse_id = r.storehouse_id and h.household_id = r.household_id
      where r.what = 'eaters and shelf'`;
    expect(looks).toContainEqual({ name: 'Dell', what: 'eaters and shelf', purpose: 'trying an import' });
  });

  test('two thousand rows come over whole', { timeout: 60_000 }, async () => {
    const rows = Array.from(
      { length: 2000 },
      (_, at) => `common,rice-white-long,pail-6-gallon-lined,1,${10_000 + at} g,2024-01`,
    );
    const text = `Owner;Food;Container;Count;Mass each;Stored\n${rows.join('\n').replaceAll(',', ';')}\n`;
    const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'big.csv', text }]);
    expect(bodyOf(posted, 201).files).toMatchObject([{ newRows: 2000, skippedRows: 0 }]);
    const [sum] = await app.admin`select sum(a.inflow - a.outflow)::int as grams from book.account a
      join book.owner o on o.storehouse_id = a.storehouse_id and o.owner_id = a.owner_id
      where a.vessel_kind = 'container' and o.kind = 'common'`;
    // 2,000 × 10,000 g + 0 + 1 + … + 1,999 = 21,999,000 g, and the 14,969 g from before
    expect(sum?.grams).toBe(22_013_969);
  });
});

describe('telephones and addresses', () => {
  test('that can be none are told at their cells', async () => {
    const text = `Household,Phone,Address\nFenn,ask Fay,\nGarth,12,\nHale,,${'x'.repeat(301)}\n`;
    const answer = await trial([{ name: 'c.csv', text }]);
    expect(problemsOf(answer).map(([, row, heading, , code]) => [row, heading, code])).toEqual([
      [2, 'Phone', 'not-a-phone'],
      [3, 'Phone', 'not-a-phone'],
      [4, 'Address', 'too-long'],
    ]);
    expect(answer.body.isPossible).toBe(false);
  });

  test('come over with their households, and are shown to nobody by that', async () => {
    const sheet = {
      name: 'c.csv',
      text: 'Hogar;Teléfono;Dirección\r\nFenn;+1 (312) 555-0142 ext. 7;"3 Mill Lane\r\nAlder"\r\nGarth;;\r\n',
    };
    const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [sheet]);
    bodyOf(posted, 201);
    const rows =
      await app.admin`select h.household_id, h.name, c.phone, c.address, c.shown_to_members, c.version
      from book.household h left join book.household_contact c using (storehouse_id, household_id)
      where h.name in ('Fenn', 'Garth') order by h.name`;
    expect([...rows]).toMatchObject([
      {
        ...{ name: 'Fenn', phone: '+1 (312) 555-0142 ext. 7', address: '3 Mill Lane\r\nAlder' },
        ...{ shown_to_members: false, version: 1 },
      },
      { name: 'Garth', phone: null },
    ]);
    const path = at(`/households/${rows[0]?.household_id}/contact`);
    const unasked = await storehouse.coordinator.get(path); // not even whoever brought it, without a purpose
    expect([unasked.status, unasked.body.code]).toEqual([400, 'invalid-input']);
    const { caller } = await aHousehold(app, storehouse, 'Ives');
    const neighbour = await caller.get(path);
    expect([neighbour.status, neighbour.body.code]).toEqual([403, 'not-your-household']);
  });

  test('of a household that is there already stay as they are', async () => {
    const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [
      { name: 'd.csv', text: 'Household,Phone\nFenn,555 9999\nHale,555 0100\n' },
    ]);
    expect(bodyOf(posted, 201).files).toMatchObject([{ newRows: 1, skippedRows: 1 }]);
    const phones = await app.admin`select phone from book.household_contact order by phone`;
    expect(phones.map(({ phone }) => phone)).toEqual(['+1 (312) 555-0142 ext. 7', '555 0100']);
  });

  test('go when the import is taken back', async () => {
    const [newest] = bodyOf(await storehouse.coordinator.get(at('/imports'))).imports;
    const reason = { reason: 'the wrong file' };
    bodyOf(await storehouse.coordinator.post(at(`/imports/${newest.id}/undoing`), reason), 201);
    const phones = await app.admin`select phone from book.household_contact`;
    expect(phones.map(({ phone }) => phone)).toEqual(['+1 (312) 555-0142 ext. 7']);
  });

  test('an e-mail address is kept for the invitation, and the household finds who sent one there', async () => {
    const text = 'Household,E-mail\nLund,Lena.Lund@Example.org\nMoss,\n';
    const { tried, posted } = await bringOver(storehouse.coordinator, storehouse.path, [
      { name: 'm.csv', text },
    ]);
    const [file] = tried.body.files;
    expect(file.rows.map(({ effect }: { effect: { email: string } }) => effect.email)).toEqual([
      'lena.lund@example.org',
      '',
    ]);
    bodyOf(posted, 201);
    const found = await app.admin`select household_id, name from book.household
      where name in ('Lund', 'Moss') order by name`;
    const [lund, moss] = found.map(({ household_id: householdId }) => String(householdId));
    const invite = async (wish: object) =>
      bodyOf(await storehouse.coordinator.post(at('/invitations'), wish), 201);
    expect((await invite({ householdId: lund })).email).toBe(null);
    expect((await invite({ householdId: moss, withEmail: true })).email).toBe(null);
    const made = await invite({ householdId: lund, withEmail: true });
    expect(made.email).toBe('lena.lund@example.org');
    const looks = await app.admin`select household_id, what, purpose from book.private_read
      where household_id = any(${[lund ?? '', moss ?? '']})`;
    expect([...looks]).toEqual([{ household_id: lund, what: 'contact', purpose: 'sending an invitation' }]);
    // Whoever holds the link is not told the address; only the household that joined by it is.
    const link = `/api/invitations/${storehouse.storehouseId}/${made.token}`;
    expect(JSON.stringify((await app.as().get(link)).body)).not.toContain('lena.lund');
    const login = { email: 'other@example.org', password: A_PASSWORD };
    const joined = await app.as().post(link, { personName: 'Lena Lund', login });
    const contact = await app.as(cookieOf(joined)).get(at(`/households/${lund}/contact`));
    expect(contact.body).toMatchObject({ email: 'lena.lund@example.org', shownToMembers: false });
  });
});

test.for(['households', 'eaters', 'foods', 'balances', 'stock', 'equipment'])(
  'the template of %s is read as a sheet of its kind, in both languages',
  async (kind) => {
    for (const language of ['en', 'es']) {
      const { body } = await storehouse.coordinator.get(at(`/import-templates/${kind}?language=${language}`));
      const answer = await trial([{ name: `${kind}.csv`, text: body }]);
      expect(answer.body.files[0]).toMatchObject({ kind, problems: [] });
    }
  },
);
