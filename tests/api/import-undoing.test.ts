import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold } from '../support/household.ts';
import { bringOver, type SheetText, WHOLE_GROUP } from '../support/import.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp('2026-10-01T15:00:00Z');
  storehouse = await aStorehouse(app);
  const persons = bodyOf(await storehouse.coordinator.get(at('/persons'))).persons;
  await storehouse.coordinator.post(at(`/persons/${persons[0].id}/duties`), { duty: 'treasurer' });
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const bring = async (sheets: readonly SheetText[]): Promise<string> => {
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, sheets);
  return bodyOf(posted, 201).id;
};
const preview = (id: string) => storehouse.coordinator.get(at(`/imports/${id}/undoing`));
const takeBack = (id: string) =>
  storehouse.coordinator.post(at(`/imports/${id}/undoing`), { reason: 'the wrong file' });
const listHouseholds = async () => bodyOf(await storehouse.coordinator.get(at('/households'))).households;
const holdings = async () => [
  ...(await app.admin`select a.kind, sum(a.inflow - a.outflow)::int as rest from book.account a
    where a.kind <> 'mass' or a.vessel_kind = 'container' group by a.kind having sum(a.inflow - a.outflow) <> 0`),
];
const refuses = async (id: string, code: string) => {
  const seen = bodyOf(await preview(id));
  expect(seen.isPossible).toBe(false);
  expect(seen.leaning.map((one: { code: string }) => one.code)).toContain(code);
  const before = await app.admin`select last_entry_no from book.book_state`;
  const answer = await takeBack(id);
  expect([answer.status, answer.body.code]).toEqual([409, 'import-leaned-on']);
  expect(await app.admin`select last_entry_no from book.book_state`).toEqual(before);
};

describe('while nothing leans on it', () => {
  test('a whole group is taken back as one, and its files can be brought over again', async () => {
    expect(await holdings()).toEqual([]);
    const id = await bring(WHOLE_GROUP);
    const seen = bodyOf(await preview(id));
    // Dell, Eames; four balances and the stock of Dell and of common stock; two pails and one
    expect(seen).toMatchObject({ importNo: 1, entries: 6, leaning: [], isPossible: true });
    expect(seen.things).toEqual({
      ...{ household: 2, person: 2, eater: 2, food: 1, supplier: 1, lot: 2, container: 3, equipment_item: 1 },
    });
    expect((await listHouseholds()).map(({ name }: { name: string }) => name)).toContain('Dell');
    bodyOf(await takeBack(id), 201);
    expect(await holdings()).toEqual([]);
    const left =
      await app.admin`select name, left_on::text from book.household where left_on is not null order by seat`;
    expect([...left]).toEqual([
      { name: 'Seat 2', left_on: '2026-10-01' },
      { name: 'Seat 3', left_on: '2026-10-01' },
    ]);
    const rest = await app.admin`select (select count(*)::int from book.eater) as eaters,
      (select count(*)::int from book.equipment_item) as items,
      (select count(*)::int from book.person where name in ('Dora Dell', 'Ed Eames')) as persons`;
    expect([...rest]).toEqual([{ eaters: 0, items: 0, persons: 0 }]);
    const [listed] = bodyOf(await storehouse.coordinator.get(at('/imports'))).imports;
    expect(listed.takenBack).toEqual({ at: '2026-10-01T15:00:00.000Z', reason: 'the wrong file' });
    expect((await takeBack(id)).body.code).toBe('import-taken-back');
    // Seats are given once: where a sheet named one, it now names the household.
    const again = await bring(
      WHOLE_GROUP.map(({ text, ...sheet }) => ({ ...sheet, text: text.replace('Emil;3;', 'Emil;Eames;') })),
    );
    const { findings } = bodyOf(await storehouse.coordinator.get(at('/audit')));
    expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
    expect(
      (await listHouseholds()).map(({ name, seat }: { name: string; seat: number }) => [name, seat]),
    ).toContainEqual(['Dell', 4]);
    bodyOf(await takeBack(again), 201);
  });

  test('of two at once one counts', async () => {
    const id = await bring([{ name: 'h.csv', text: 'Household\nFoss\n' }]);
    const answers = await Promise.all([takeBack(id), takeBack(id)]);
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
  });

  test('a balance that the treasurer took back alone is not taken back twice', async () => {
    const id = await bring([{ name: 'b.csv', text: 'Account,Owes,Holds\nAshdown,9.00,\nbank,,7.00\n' }]);
    const { entries } = bodyOf(await storehouse.coordinator.get(at('/entries?newestFirst=true&limit=1')));
    bodyOf(
      await storehouse.coordinator.post(at(`/entries/${entries[0].id}/reversal`), { reason: 'typed wrong' }),
      201,
    );
    expect(bodyOf(await takeBack(id), 201).entries).toBe(1);
    expect(await holdings()).toEqual([]);
  });
});

describe('once something leans on it', () => {
  test('an invitation to a household that it brought is named', async () => {
    const id = await bring([{ name: 'h.csv', text: 'Household\nGale\nHolt\n' }]);
    const gale = (await listHouseholds()).find(({ name }: { name: string }) => name === 'Gale');
    bodyOf(await storehouse.coordinator.post(at('/invitations'), { householdId: gale.id }), 201);
    await refuses(id, 'invitation');
    expect((await takeBack(id)).body.detail).toContain('Gale (invitation)');
  });

  test('a payment into a household that it brought is named by its entry', async () => {
    const id = await bring([
      { name: 'h.csv', text: 'Household\nIvers\n' },
      { name: 'b.csv', text: 'Account,Owes\nIvers,41.20\n' },
    ]);
    const ivers = (await listHouseholds()).find(({ name }: { name: string }) => name === 'Ivers');
    const payment = {
      householdId: ivers.id,
      minorUnits: 1000,
      currency: 'USD',
      onDay: '2026-10-01',
      till: 'bank',
      note: '',
    };
    bodyOf(await storehouse.coordinator.post(at('/payments'), payment), 201);
    await refuses(id, 'entry');
  });

  test('money that was spent from the tin since is refused by the book itself', async () => {
    const id = await bring([{ name: 't.csv', text: 'Account,Holds\ncash,50.00\n' }]);
    const spent = { minorUnits: 2000, currency: 'USD', onDay: '2026-10-01', till: 'cash', note: 'stamps' };
    bodyOf(await storehouse.coordinator.post(at('/fund-spendings'), spent), 201);
    expect((await takeBack(id)).body.code).toBe('import-leaned-on');
  });

  test('a food that the stock of another sheet took up', async () => {
    const id = await bring([
      {
        name: 'f.csv',
        text: 'Food,Group,Allergens,Gluten,Source\nHill barley,grains,wheat,yes,label of the sack\n',
      },
    ]);
    await bring([
      {
        name: 's.csv',
        text: 'Owner,Food,Container,Count,Mass each,Stored\ncommon,Hill barley,pail-5-gallon-lined,1,14 kg,2024-03\n',
      },
    ]);
    await refuses(id, 'lot');
  });

  test('whoever may not bring balances over may not take them back', async () => {
    const id = await bring([{ name: 'b2.csv', text: 'Account,Holds\nbank,11.00\n' }]);
    const packer = await aHousehold(app, storehouse, 'Jory', { duties: ['coordinator'] });
    const answer = await packer.caller.post(at(`/imports/${id}/undoing`), { reason: 'the wrong file' });
    expect([answer.status, answer.body.code]).toEqual([403, 'duty-missing']);
  });
});
