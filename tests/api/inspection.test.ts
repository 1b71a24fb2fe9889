import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { fingerprintOf, refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { grantDuty } from '../support/household.ts';
import { aSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestCan, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let shelves: Shelves;
let ashdowns: TestPiece;
let birchalls: TestPiece;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  const buy = await aSharedBuy(app, storehouse);
  households = buy.households;
  shelves = await shelvesOf(app, storehouse);
  await grantDuty(storehouse, households.Corran.personId, 'packing_lead');
  ashdowns = await wheatOf(storehouse, buy, households.Ashdown);
  birchalls = await wheatOf(storehouse, buy, households.Birchall);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const aCan = (): Promise<TestCan> => shelves.aCan(households.Ashdown.caller, ashdowns, 500);
const look = (caller: Caller, { id }: { id: string }, wish: Record<string, unknown> = {}) =>
  caller.post(at(`/containers/${id}/inspections`), {
    ...{ how: 'outside', findings: ['nothing-wrong'], outcome: 'table', ...wish },
  });
const toLookAt = async (caller: Caller, of = 'household') =>
  bodyOf(await caller.get(at(`/inspections/due?of=${of}`)));
const codesOf = (rows: { container: { code: string } }[]) => rows.map(({ container }) => container.code);

describe('a look at one’s own can', () => {
  test('is kept with what it found, what follows and why', async () => {
    const can = await aCan();
    const { caller } = households.Ashdown;
    const opened = bodyOf(
      await look(caller, can, {
        how: 'opened',
        findings: ['absorber-hard', 'rancid-smell'],
        outcome: 'animals',
      }),
      201,
    );
    expect(opened).toMatchObject({
      judgement: {
        best: 'animals',
        allowed: ['animals', 'compost', 'discard'],
        why: [{ code: 'rancid-smell' }],
      },
      container: { openedOn: '2026-09-01', lastInspectedOn: '2026-09-01', grams: 500 },
    });
    const { inspections } = bodyOf(await caller.get(at(`/containers/${can.id}/inspections`)));
    expect(inspections).toMatchObject([{ outcome: { code: 'animals' }, best: 'animals', entryId: null }]);
  });

  test('lets the food go where its outcome allows, until a later look says otherwise', async () => {
    const can = await aCan();
    const { caller } = households.Ashdown;
    bodyOf(await look(caller, can, { findings: ['webbing'], outcome: 'animals' }), 201);
    const eat = () => caller.post(at(`/containers/${can.id}/uses`), { grams: 10, to: 'eaten' });
    expect(await refusalOf(app, eat)).toEqual(refused(409, 'inspection-forbids', 'to'));
    expect((await caller.post(at(`/containers/${can.id}/uses`), { grams: 10, to: 'animals' })).status).toBe(
      201,
    );
    bodyOf(await look(caller, can), 201);
    expect((await eat()).status).toBe(201);
  });

  test('may be stricter than what was found, never laxer', async () => {
    const can = await aCan();
    const { caller } = households.Ashdown;
    bodyOf(await look(caller, can, { findings: ['surface-rust'], outcome: 'compost' }), 201);
    const laxer = () => look(caller, can, { findings: ['mould', 'surface-rust'], outcome: 'compost' });
    expect(await refusalOf(app, laxer)).toEqual(refused(422, 'outcome-contradicts', 'outcome'));
    expect((await laxer()).body).toMatchObject({ allowed: ['discard'], deciding: ['mould'] });
  });

  test.for([
    [{ findings: [] }, 'findings'],
    [{ findings: ['mould', 'mould'] }, 'findings'],
    [{ findings: ['nothing-wrong', 'mould'], outcome: 'discard' }, 'findings'],
    [{ findings: ['stale-taste'], outcome: 'animals' }, 'how'],
    [{ isMovedOut: true }, 'isMovedOut'],
    [{ kernels: { damaged: 40, sampleGrams: 0 } }, 'kernels.sampleGrams'],
  ] as const)('is refused with %o', async ([wish, field]) => {
    const can = await aCan();
    const call = () => look(households.Ashdown.caller, can, wish);
    expect(await refusalOf(app, call)).toEqual(refused(400, 'invalid-input', field));
  });

  // 7 CFR 810.2204, FDA CPG 578.300: 32 damaged kernels in 100 g.
  test('takes counted kernels at their word: 64 in 200 g are for animals, 62 are not', async () => {
    const { caller } = households.Ashdown;
    const count = (can: TestCan, damaged: number) =>
      look(caller, can, { how: 'opened', kernels: { damaged, sampleGrams: 200 } });
    expect((await count(await aCan(), 64)).body).toMatchObject({ deciding: ['insect-damaged-kernels'] });
    const fine = bodyOf(await count(await aCan(), 62), 201);
    expect(fine).toMatchObject({ judgement: { best: 'table' }, inspection: { kernels: { damaged: 62 } } });
  });

  test('is nobody else’s: neither a neighbour nor a packing lead finds it', async () => {
    const can = await aCan();
    for (const caller of [households.Birchall.caller, households.Corran.caller]) {
      expect((await look(caller, can)).body.code).toBe('thing-not-found');
      expect((await caller.get(at(`/containers/${can.id}/inspections`))).body.code).toBe('thing-not-found');
    }
  });
});

describe('what is thrown away', () => {
  test('is booked out in the same step, and put back by undoing it once', async () => {
    const can = await aCan();
    const { caller, householdId } = households.Ashdown;
    const wish = { findings: ['leak'], outcome: 'discard', isMovedOut: true };
    const { inspection, container } = bodyOf(await look(caller, can, wish), 201);
    expect([container.grams, await shelves.gramsIn(can.id, householdId)]).toEqual([0, 0]);
    const undo = () => caller.post(at(`/inspections/${inspection.id}/undoing`), { reason: 'The wrong can' });
    expect(
      (await households.Birchall.caller.post(at(`/inspections/${inspection.id}/undoing`), { reason: 'x' }))
        .body.code,
    ).toBe('thing-not-found');
    expect(bodyOf(await undo(), 201).grams).toBe(500);
    expect(await refusalOf(app, undo)).toEqual(refused(409, 'already-reversed'));
    bodyOf(await look(caller, can, wish), 201);
    const again = () => look(caller, can, wish);
    expect(await refusalOf(app, again)).toEqual(refused(409, 'not-enough-left', 'isMovedOut'));
  });
});

describe('what stood beside it', () => {
  test('is on watch until it is looked at, and its owners are told without the finder’s name', async () => {
    const found = await aCan();
    const own = await aCan();
    const theirs = await shelves.aCan(households.Birchall.caller, birchalls, 500);
    const { caller } = households.Ashdown;
    const wish = { findings: ['loose-seal'], outcome: 'kitchen-soon' };
    const { onWatch } = bodyOf(await look(caller, found, wish), 201);
    expect(onWatch).toBeGreaterThanOrEqual(2);
    expect(codesOf((await toLookAt(caller)).watches)).toContain(own.code);
    const before = await toLookAt(households.Birchall.caller);
    expect(before.watches).toMatchObject([
      { container: { code: theirs.code }, finding: { code: 'loose-seal' } },
    ]);
    expect(JSON.stringify(before)).not.toMatch(/Ashdown/);
    const { notices } = bodyOf(await households.Birchall.caller.get(at('/notices')));
    expect(notices[0]).toMatchObject({
      isSafety: false,
      words: expect.stringContaining(theirs.code.slice(0, 3)),
    });
    expect(JSON.stringify(notices[0])).not.toMatch(/Ashdown/);
    bodyOf(await look(households.Birchall.caller, theirs), 201);
    expect((await toLookAt(households.Birchall.caller)).watches).toEqual([]);
  });

  test('is told to nobody when it is only rust that wipes off', async () => {
    const can = await aCan();
    const { onWatch } = bodyOf(
      await look(households.Ashdown.caller, can, { findings: ['surface-rust'] }),
      201,
    );
    expect(onWatch).toBe(0);
  });
});

test('live insects put on watch what stands in the same place, whatever its lot, and nothing in another', async () => {
  const { caller } = households.Dell;
  const foodId = (await foodIdsOf(storehouse))['rice-white-long'];
  const aJar = async () =>
    bodyOf(
      await caller.post(at('/stock'), {
        ...{ foodId, originNote: 'a shop', containerKindId: shelves.kinds['can-no-10'], count: 1 },
        ...{ gramsEach: 500, packedOn: '2026-08-01' },
      }),
      201,
    ).containers[0];
  const aPlace = async (name: string) =>
    bodyOf(
      await caller.post(at('/places'), {
        ...{ of: 'household', name, kind: 'pantry', isLit: false, isDamp: false, isRodentProof: true },
      }),
      201,
    ).id;
  const [infested, near, far] = [await aJar(), await aJar(), await aJar()];
  const [pantry, cellar] = [await aPlace('Pantry'), await aPlace('Cellar')];
  const move = async (placeId: string, containerIds: string[]) =>
    bodyOf(await caller.post(at('/container-moves'), { containerIds, placeId, movedOn: '2026-08-02' }), 201);
  await move(pantry, [infested.id, near.id]);
  await move(cellar, [far.id]);
  const wish = { findings: ['live-insects'], outcome: 'freeze-and-repack' };
  bodyOf(await look(caller, infested, wish), 201);
  expect(codesOf((await toLookAt(caller)).watches)).toEqual([near.code]);
});

test('the due list names what is open for 30 days; common stock’s is for who packs or runs the store', async () => {
  const { caller } = households.Dell;
  const kinds = shelves.kinds;
  const brought = bodyOf(
    await caller.post(at('/stock'), {
      ...{
        foodId: (await foodIdsOf(storehouse))['wheat-hard-red-winter'],
        originNote: 'a cellar',
        containerKindId: kinds['jar-half-gallon'] ?? kinds['jar-quart'],
      },
      ...{ count: 1, gramsEach: 500, packedOn: '2026-01-01' },
    }),
    201,
  );
  const { due } = await toLookAt(caller);
  expect(due).toMatchObject([
    { container: { code: brought.containers[0].code }, why: 'pouch-or-jar', dueOn: '2026-06-30' },
  ]);
  const call = () => caller.get(at('/inspections/due?of=common'));
  expect(await refusalOf(app, call)).toEqual(refused(403, 'duty-missing'));
  expect(await toLookAt(households.Corran.caller, 'common')).toMatchObject({ of: 'common' });
});

test('the book itself refuses a laxer outcome, a changed row and a neighbour’s eyes', async () => {
  const before = await fingerprintOf(app);
  const [row] = await app.admin`select * from book.inspection where outcome = 'discard' limit 1`;
  const laxer = app.admin`insert into book.inspection ${app.admin({ ...row, inspection_id: crypto.randomUUID(), entry_id: null, outcome: 'table' })}`;
  await expect(laxer).rejects.toMatchObject({ constraint_name: 'inspection_outcome_never_laxer' });
  const seen = await app.sql.begin(async (sql) => {
    await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true),
      set_config('app.household', ${households.Corran.householdId}, true)`;
    await sql`select 1 from book.inspection`;
    return [(await sql`select 1 from book.inspection`).length, (await sql`select 1 from book.watch`).length];
  });
  expect(seen).toEqual([0, 0]);
  const change = app.sql.begin(async (sql) => {
    await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
    await sql`update book.inspection set note = 'never'`;
  });
  await expect(change).rejects.toMatchObject({ code: '42501' });
  expect(await fingerprintOf(app)).toEqual(before);
});
