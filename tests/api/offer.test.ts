import { commonStockAccount, debitCredit, storeFundAccount } from '@sheafbook/ledger';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { listForGiving } from '../../apps/api/src/features/offer/queries.ts';
import { withTx } from '../../apps/api/src/platform/with-tx.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bringOver } from '../support/import.ts';
import { type offerBody, offersOf } from '../support/offer.ts';
import { aContext, postDrafts } from '../support/posting.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let households: GrainHouseholds;
let eames: TestHousehold;
let shelves: Shelves;
let offers: ReturnType<typeof offersOf>;
let wheat: TestPiece;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  households = buy.households;
  eames = await aHousehold(app, storehouse, 'Eames');
  shelves = await shelvesOf(app, storehouse);
  offers = offersOf(app, storehouse);
  wheat = await wheatOf(storehouse, buy, households.Birchall);
  // Three eat wheat; at Eames' table nobody may. Dell has least of it for its eater, Ashdown most.
  for (const { caller, householdId } of [households.Ashdown, households.Corran, households.Dell])
    bodyOf(await addEater({ caller, householdId }, { name: 'Ida', birthOn: '1990' }), 201);
  bodyOf(await addEater(eames, { name: 'Emil', birthOn: '1980', excludedAllergens: ['wheat'] }), 201);
});
beforeEach(() => offers.after(0));
afterAll(() => app.close());

const addEater = (
  { caller, householdId }: Pick<TestHousehold, 'caller' | 'householdId'>,
  facts: Record<string, unknown>,
) => caller.post(`${storehouse.path}/households/${householdId}/eaters`, facts);
const at = (rest: string) => `${storehouse.path}${rest}`;
const giver = () => households.Birchall.caller;
const aCan = (grams = 500) => shelves.aCan(giver(), wheat, grams);
const balanceOf = async ({ caller, householdId }: TestHousehold): Promise<number> =>
  bodyOf(await caller.get(at(`/households/${householdId}/balance`))).balanceMinorUnits;
const anOffer = async (cans: number, wish: Parameters<typeof offerBody>[1] = {}) => {
  const made = [];
  for (let count = 0; count < cans; count += 1) made.push((await aCan()).id);
  return bodyOf(await offers.offer(giver(), made, wish), 201);
};
const idsOf = (offer: { containers: { id: string }[] }) => offer.containers.map(({ id }) => id);
const codeOf = async (call: Promise<{ body: { code?: string }; status: number }>) => {
  const { body, status } = await call;
  return status < 300 ? 'done' : body.code;
};

const foodId = async (code: string): Promise<string | undefined> => {
  const { foods } = bodyOf(await giver().get(at('/foods?limit=200')));
  return foods.find(({ foodCode }: { foodCode: string }) => foodCode === code)?.id;
};

describe('taking what a neighbour offers', () => {
  test('moves grams and price in one entry, and the container is the taker’s from then on', async () => {
    const { Dell, Birchall } = households;
    const offer = await anOffer(2, { price: { kind: 'named', minorUnitsEach: 450 } });
    const [first, second] = idsOf(offer);
    const before = { dell: await balanceOf(Dell), birchall: await balanceOf(Birchall) };
    const claimed = bodyOf(await offers.claim(Dell.caller, offer.id, [first ?? ''], 450), 201);
    expect(claimed).toMatchObject({ giver: 'Birchall', standing: 'your-turn' });
    expect(await balanceOf(Dell)).toBe(before.dell + 450);
    expect(await balanceOf(Birchall)).toBe(before.birchall - 450);
    expect(await shelves.gramsIn(first ?? '', Dell.householdId)).toBe(500);
    expect(await shelves.gramsIn(first ?? '', Birchall.householdId)).toBe(0);
    expect(bodyOf(await Dell.caller.get(at(`/containers/${first}`)))).toMatchObject({ grams: 500 });
    expect((await giver().get(at(`/containers/${first}`))).status).toBe(404);
    const used = await Dell.caller.post(at(`/containers/${first}/uses`), { grams: 300, to: 'eaten' });
    expect(bodyOf(used, 201)).toMatchObject({ grams: 200 });
    const mine = (await offers.all(giver())).mine.find(({ id }: { id: string }) => id === offer.id);
    expect(mine.containers.map(({ state, takenBy }: Record<string, unknown>) => [state, takenBy])).toEqual(
      expect.arrayContaining([
        ['taken', 'Dell'],
        ['offered', null],
      ]),
    );
    expect(await codeOf(offers.claim(Dell.caller, offer.id, [first ?? ''], 450))).toBe('offer-taken');
    expect(await codeOf(offers.claim(Dell.caller, offer.id, [second ?? ''], 450))).toBe('done');
    const audit = bodyOf(await buy.treasurer.get(at('/audit')));
    expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
  });

  test('as a gift moves grams alone', async () => {
    const { Dell } = households;
    const offer = await anOffer(1);
    const before = await balanceOf(Dell);
    bodyOf(await offers.claim(Dell.caller, offer.id, idsOf(offer)), 201);
    expect(await balanceOf(Dell)).toBe(before);
    const { taken } = await offers.all(Dell.caller);
    expect(taken[0]).toMatchObject({ id: offer.id, giver: 'Birchall', containers: [{ takenBy: 'Dell' }] });
  });

  // The wheat of the grain buy cost Birchall the same per gram in every bag, so 500 g are its charge by its grams.
  test('at cost, for what the giver’s own food of that kind cost landed', async () => {
    const { foods } = bodyOf(await giver().get(at('/coverage')));
    const own = foods.find(({ foodCode }: { foodCode: string }) => foodCode === 'wheat-hard-red-winter');
    const offer = await anOffer(1, { price: { kind: 'cost' } });
    const cents = Math.round((own.landedMinorUnits * 500) / own.landedGrams);
    expect(cents).toBeGreaterThan(0);
    expect(offer.containers[0].priceMinorUnits).toBe(cents);
  });

  test('is refused at another price than was shown', async () => {
    const offer = await anOffer(1, { price: { kind: 'named', minorUnitsEach: 450 } });
    const call = () => offers.claim(households.Dell.caller, offer.id, idsOf(offer), 449);
    expect(await refusalOf(app, call)).toEqual(refused(422, 'does-not-add-up', 'minorUnits'));
  });

  test('tells who at the taker’s table may not eat it, and nobody else', async () => {
    const offer = await anOffer(1);
    offers.after(200);
    expect(bodyOf(await offers.look(eames.caller, offer.id)).mayNotEat).toEqual(['Emil']);
    expect(bodyOf(await offers.look(households.Dell.caller, offer.id)).mayNotEat).toEqual([]);
    expect(bodyOf(await offers.look(giver(), offer.id)).mayNotEat).toEqual([]);
  });
});

describe('who is asked first', () => {
  test('three who can use it are asked at once, and whoever can’t only when it is everybody’s', async () => {
    const offer = await anOffer(1);
    const seenBy = async (hours: number) => {
      offers.after(hours);
      const all = [households.Ashdown, households.Corran, households.Dell, eames];
      return Promise.all(
        all.map(async ({ caller }) => {
          const seen = (await offers.all(caller)).toMe.find(({ id }: { id: string }) => id === offer.id);
          return seen?.standing ?? null;
        }),
      );
    };
    expect(await seenBy(0)).toEqual(['your-turn', 'your-turn', 'your-turn', null]);
    expect(await seenBy(47.9)).toEqual(['your-turn', 'your-turn', 'your-turn', null]);
    expect(await seenBy(48)).toEqual(['for-all', 'for-all', 'for-all', 'for-all']);
    expect(await seenBy(24 * 21)).toEqual([null, null, null, null]);
  });

  test('before its turn a household is told of no offer, by any way in', async () => {
    const offer = await anOffer(1);
    const id = idsOf(offer);
    expect((await offers.look(eames.caller, offer.id)).status).toBe(404);
    expect(await refusalOf(app, () => offers.claim(eames.caller, offer.id, id))).toEqual(
      refused(404, 'thing-not-found'),
    );
    expect(await refusalOf(app, () => offers.pass(eames.caller, offer.id))).toEqual(
      refused(404, 'thing-not-found'),
    );
    offers.after(48);
    expect(await codeOf(offers.claim(eames.caller, offer.id, id))).toBe('done');
  });

  test('each household whose days were read finds that in its record, and its turn in its notices', async () => {
    const { Dell } = households;
    const reads = async () => {
      const log = bodyOf(await Dell.caller.get(at(`/households/${Dell.householdId}/private-reads`)));
      return log.privateReads.filter(({ purpose }: { purpose: string }) => purpose === 'an offer to members')
        .length;
    };
    const before = await reads();
    await anOffer(1);
    expect(await reads()).toBe(before + 1);
    const { notices } = bodyOf(await Dell.caller.get(at('/notices')));
    expect(notices[0]).toMatchObject({ kind: 'offer', about: 'Hard red winter wheat' });
  });

  test('once all of a group have passed it goes on at once, and the giver hears of it', async () => {
    const offer = await anOffer(1);
    offers.after(5);
    const { Ashdown, Corran, Dell } = households;
    for (const { caller } of [Ashdown, Corran]) bodyOf(await offers.pass(caller, offer.id));
    expect((await offers.look(eames.caller, offer.id)).status).toBe(404);
    bodyOf(await offers.pass(Dell.caller, offer.id));
    expect(bodyOf(await offers.look(eames.caller, offer.id)).standing).toBe('for-all');
    const { notices } = bodyOf(await giver().get(at('/notices')));
    expect(notices[0].words).toContain('has let your offer pass');
    expect(await codeOf(offers.claim(Dell.caller, offer.id, idsOf(offer)))).toBe('done');
  });
});

describe('what is offered', () => {
  test('stays whole until the offer is taken back or closes', async () => {
    const can = await aCan();
    const offer = bodyOf(await offers.offer(giver(), [can.id]), 201);
    const use = () => giver().post(at(`/containers/${can.id}/uses`), { grams: 100, to: 'eaten' });
    const pour = () => giver().post(at(`/containers/${can.id}/pours`), { bagId: wheat.bagId, grams: 10 });
    const undo = () => giver().post(at(`/pours/${can.entryId}/undoing`), { reason: 'a slip' });
    for (const call of [use, pour, undo])
      expect(await refusalOf(app, call)).toEqual(refused(409, 'container-offered'));
    bodyOf(await offers.takeBack(giver(), offer.id));
    expect((await use()).status).toBe(201);
    const next = await aCan();
    bodyOf(await offers.offer(giver(), [next.id], { closesAt: '2026-09-01T16:00:00Z' }), 201);
    offers.after(1);
    expect((await giver().post(at(`/containers/${next.id}/uses`), { grams: 1, to: 'eaten' })).status).toBe(
      201,
    );
  });

  test('can be taken back before anybody takes it, and not after', async () => {
    const offer = await anOffer(1);
    expect(await codeOf(offers.takeBack(households.Dell.caller, offer.id))).toBe('thing-not-found');
    expect(bodyOf(await offers.takeBack(giver(), offer.id)).containers[0].state).toBe('taken-back');
    expect(await codeOf(offers.claim(households.Dell.caller, offer.id, idsOf(offer)))).toBe('offer-over');
    const other = await anOffer(1);
    bodyOf(await offers.claim(households.Dell.caller, other.id, idsOf(other)), 201);
    expect(await codeOf(offers.takeBack(giver(), other.id))).toBe('offer-taken');
    const shut = await anOffer(1, { closesAt: '2026-09-01T16:00:00Z' });
    offers.after(1);
    expect(await codeOf(offers.takeBack(giver(), shut.id))).toBe('offer-over');
    expect(await codeOf(offers.claim(households.Dell.caller, shut.id, idsOf(shut)))).toBe('offer-over');
  });

  test('and given on: whoever took it can offer it again', async () => {
    const { Dell, Corran } = households;
    const offer = await anOffer(1);
    bodyOf(await offers.claim(Dell.caller, offer.id, idsOf(offer)), 201);
    const again = bodyOf(await offers.offer(Dell.caller, idsOf(offer)), 201);
    expect(await codeOf(offers.claim(Corran.caller, again.id, idsOf(offer)))).toBe('done');
    expect(await shelves.gramsIn(idsOf(offer)[0] ?? '', Corran.householdId)).toBe(500);
  });

  test('is not somebody else’s, opened, empty, offered already, of two foods, or of a time that is past', async () => {
    const { Dell } = households;
    const can = await aCan();
    const opened = await aCan();
    bodyOf(await giver().post(at(`/containers/${opened.id}/uses`), { grams: 1, to: 'eaten' }), 201);
    const twice = idsOf(await anOffer(1));
    const oats = bodyOf(
      await giver().post(at('/stock'), {
        ...{ foodId: (await foodId('oats-rolled')) ?? '', containerKindId: shelves.kinds['can-no-10'] },
        ...{ count: 1, gramsEach: 500, packedOn: '2020-05-01', originNote: 'an aunt’s cellar' },
      }),
      201,
    ).containers[0].id;
    const refusals = [
      [() => offers.offer(Dell.caller, [can.id]), refused(404, 'thing-not-found')],
      [() => offers.offer(giver(), [opened.id]), refused(409, 'container-opened', 'containerIds')],
      [() => offers.offer(giver(), twice), refused(409, 'container-offered')],
      [() => offers.offer(giver(), [can.id, oats]), refused(400, 'invalid-input', 'containerIds')],
      [
        () => offers.offer(giver(), [can.id], { closesAt: '2026-09-01T15:00:00Z' }),
        refused(400, 'invalid-input', 'closesAt'),
      ],
      [
        () => offers.offer(giver(), [can.id], { closesAt: '2027-09-01T15:00:00Z' }),
        refused(400, 'invalid-input', 'closesAt'),
      ],
      [
        () => offers.offer(giver(), [oats], { price: { kind: 'cost' } }),
        refused(409, 'cost-unknown', 'price'),
      ],
      [() => offers.offer(giver(), [can.id], { of: 'store' }), refused(403, 'duty-missing')],
    ] as const;
    for (const [call, expected] of refusals) expect(await refusalOf(app, call)).toEqual(expected);
    const own = await anOffer(1);
    expect(await refusalOf(app, () => offers.claim(giver(), own.id, idsOf(own)))).toEqual(
      refused(409, 'offer-is-yours'),
    );
  });

  test('and taken by nobody may go to a pantry, if its owner said so and it is still whole', async () => {
    const context = aContext(app, storehouse, households.Birchall);
    const { storehouseId } = storehouse;
    const listed = async () =>
      (await withTx(context, (tx) => listForGiving(tx, storehouseId, context.now()))).map(
        (row) => row.containerId,
      );
    const closesAt = '2026-09-04T15:00:00Z';
    const yes = await anOffer(4, { closesAt, goesToPantry: true });
    await anOffer(1, { closesAt });
    const [taken = '', eaten = '', again = '', left = ''] = idsOf(yes);
    expect(await listed()).toEqual([]);
    bodyOf(await offers.claim(households.Dell.caller, yes.id, [taken]), 201);
    offers.after(72);
    expect((await listed()).toSorted()).toEqual([eaten, again, left].toSorted());
    bodyOf(await giver().post(at(`/containers/${eaten}/uses`), { grams: 1, to: 'eaten' }), 201);
    bodyOf(await offers.offer(giver(), [again]), 201);
    expect(await listed()).toEqual([left]);
    bodyOf(await offers.takeBack(giver(), yes.id));
    expect(await listed()).toEqual([]);
  });
});

describe('common stock', () => {
  /** Cans of rice, a lot each, that the book's common stock stands at 12.00 for; only a sheet brings such cans so far. */
  const cans: string[] = [];
  beforeAll(async () => {
    const rows = ['01', '02', '03', '04'].map(
      (month) => `common,rice-white-long,can-no-10,1,2 kg,2025-${month}`,
    );
    const text = `Owner,Food,Container,Count,Mass each,Stored\n${rows.join('\n')}\n`;
    const sheets = [{ name: 'stock.csv', text }];
    bodyOf((await bringOver(storehouse.coordinator, storehouse.path, sheets)).posted, 201);
    const made = await app.admin<{ id: string; lot: string }[]>`
      select container_id as id, lot_id as lot from book.container where household_id is null`;
    for (const { id, lot } of made) {
      cans.push(id);
      const [debit, credit] = [commonStockAccount(lot), storeFundAccount()];
      await postDrafts(aContext(app, storehouse, households.Birchall), [
        debitCredit({ debit, credit, amountMinorUnits: 1200 }),
      ]);
    }
  });
  const worthOfCommon = async () => {
    const accounts = await app.admin<{ kind: string; balance: number }[]>`
      select kind, sum(inflow - outflow)::int as balance from book.account
      where kind in ('common_stock', 'given_value', 'store_fund') group by kind`;
    return Object.fromEntries(accounts.map(({ kind, balance }) => [kind, balance]));
  };
  const change = async (work: () => Promise<unknown>) => {
    const before = await worthOfCommon();
    await work();
    const after = await worthOfCommon();
    return ['common_stock', 'given_value', 'store_fund'].map(
      (kind) => (after[kind] ?? 0) - (before[kind] ?? 0),
    );
  };

  test.for([
    { price: { kind: 'cost' }, pays: 1200, posted: [-1200, 0, 0] },
    { price: { kind: 'gift' }, pays: 0, posted: [-1200, 1200, 0] },
    { price: { kind: 'named', minorUnitsEach: 500 }, pays: 500, posted: [-1200, 700, 0] },
    { price: { kind: 'named', minorUnitsEach: 1500 }, pays: 1500, posted: [-1200, 0, -300] },
  ] as const)(
    'is offered by the coordinator: $price leaves account 1400 whole',
    async ({ price, pays, posted }) => {
      const { Dell } = households;
      const can = cans.pop() ?? '';
      expect(await refusalOf(app, () => offers.offer(Dell.caller, [can], { of: 'store' }))).toEqual(
        refused(403, 'duty-missing'),
      );
      const offer = bodyOf(await offers.offer(storehouse.coordinator, [can], { of: 'store', price }), 201);
      const before = await balanceOf(Dell);
      const taking = () => offers.claim(Dell.caller, offer.id, [can], pays);
      expect(await change(async () => bodyOf(await taking(), 201))).toEqual(posted);
      expect(await balanceOf(Dell)).toBe(before + pays);
      expect(await shelves.gramsIn(can, Dell.householdId)).toBe(2000);
      // Job map 14, "offers taken": the coordinator learns that it was taken, not by whom.
      const { ofStore } = await offers.all(storehouse.coordinator);
      expect(ofStore[0].containers[0]).toMatchObject({ state: 'taken', takenBy: null });
    },
  );
});
