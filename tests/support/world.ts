import { checkCharacter } from '@sheafbook/units';
import type { Caller, TestApp } from './app.ts';
import { aBankLine } from './bank.ts';
import { aBuy, aPledge, bodyOf, foodIdsOf, type TestBuy } from './buy.ts';
import { anItem, book } from './equipment.ts';
import { FUND_BODIES } from './fund-routes.ts';
import { aPantryWish } from './giving.ts';
import { anInvitation } from './household.ts';
import { bringOver } from './import.ts';
import { anIntake } from './inspection-bodies.ts';
import { aJpeg } from './jpeg.ts';
import { offerBody } from './offer.ts';
import { aSharedBuy, type TestSharedBuy } from './shared-buy.ts';
import { type Shelves, shelvesOf, type TestCan, wheatOf } from './shelf.ts';
import type { TestStorehouse } from './storehouse.ts';
import { TEN_ALIKE } from './tare.ts';

/**
 * A storehouse with one of everything, so that each route can be asked for something that is really there: a buy that
 * is shared out with all that led to it, one that gathers pledges, and what its households keep to themselves.
 */
export type TestWorld = {
  storehouse: TestStorehouse;
  buy: TestSharedBuy;
  gathering: TestBuy;
  shelves: Shelves;
  /** By the names that the routes' addresses give them. */
  ids: Record<string, string>;
};

export async function aWorld(app: TestApp, storehouse: TestStorehouse): Promise<TestWorld> {
  const { path, coordinator } = storehouse;
  const buy = await aSharedBuy(app, storehouse);
  const { Birchall, Corran, Dell } = buy.households;
  const shelves = await shelvesOf(app, storehouse);
  const gathering = await aBuy(app, storehouse, { foods: ['wheat-hard-red-winter', 'rice-white-long'] });
  const pledge = await aPledge(Dell.caller, gathering, { wanted: 10, ceilingMinorUnits: 99 });
  const can = await shelves.aCan(Dell.caller, await wheatOf(storehouse, buy, Dell));
  const offered = [
    await shelves.aCan(Dell.caller, await wheatOf(storehouse, buy, Dell)),
    await shelves.aCan(Dell.caller, await wheatOf(storehouse, buy, Dell)),
  ];
  const home = `${path}/households/${Dell.householdId}`;
  const eater = { name: 'Ida Dell', birthOn: '2019-04' };
  const helper = { personId: Corran.personId, days: 30 };
  const window = { startsAt: '2026-09-05T15:00:00Z', endsAt: '2026-09-05T16:00:00Z' };
  const debt = { householdId: Birchall.householdId, minorUnits: 9000, reason: 'moved away' };
  const own = { foodCode: 'own-oats', nameEn: 'Own oats', foodGroup: 'grains', kilocaloriesPer100Grams: 380 };
  const food = { ...own, allergens: [], gluten: 'no', source: 'a label' };
  const kind = {
    kindCode: 'crock',
    nameEn: 'Crock',
    capacityMicrolitres: 4_000_000,
    source: 'weighed with water',
  };
  const told = { audience: { to: 'everyone' }, about: 'The hall', says: 'Bring your own broom.' };
  const hold = { reason: 'A smell of mice.' };
  const photo = { shows: 'claim', thingId: buy.claims?.torn, contentBase64: aJpeg().toString('base64') };
  const idOf = async (call: Promise<{ status: number; body: { id?: string } }>): Promise<string> =>
    bodyOf((await call) as never, 201).id;
  await anInvitation(storehouse, { householdName: 'Garth' });
  const { invitations } = bodyOf(await coordinator.get(`${path}/invitations`));
  const helping = bodyOf(await Dell.caller.post(`${home}/helpers`, helper), 201);
  const sheet = await coordinator.get(`${buy.path}/papers/buy-sheet`);
  const [, paper = ''] = /-([A-Z2-9]+)\.pdf/.exec(sheet.headers.get('Content-Disposition') ?? '') ?? [];
  const claimId = buy.claims?.torn ?? '';
  const ids = {
    ...{ storehouse: storehouse.storehouseId, buy: buy.buyId, line: buy.wheat, quote: buy.quoteId },
    ...{ pledge: pledge.id, delivery: buy.deliveryId, claim: claimId, invoice: buy.invoiceId ?? '' },
    ...{ split: buy.splitIds.wheat, container: can.id, entry: can.entryId, supplier: buy.supplierId },
    ...{ household: Dell.householdId, person: Dell.personId, helper: helping.id, duty: 'coordinator' },
    ...{ bag: buy.bags.oats[0]?.id ?? '', bagOffer: buy.offers.wheat, charge: buy.charges.lines[0].id },
    paper,
    invitation: invitations[0].id,
    eater: await idOf(Dell.caller.post(`${home}/eaters`, eater)),
    pickUp: await idOf(Dell.caller.post(`${buy.path}/pick-ups`, window)),
    writeOff: await idOf(Birchall.caller.post(`${path}/write-offs`, debt)),
    fundPromise: await idOf(coordinator.post(`${path}/fund-promises`, FUND_BODIES['POST /fund-promises'])),
    food: await idOf(coordinator.post(`${path}/foods`, food)),
    shelfPrice: await idOf(
      coordinator.post(`${path}/shelf-prices`, {
        ...FUND_BODIES['POST /shelf-prices'],
        foodId: (await foodIdsOf(storehouse))['rice-white-long'],
      }),
    ),
    rice: (await foodIdsOf(storehouse))['rice-white-long'] ?? '',
    kind: await idOf(coordinator.post(`${path}/container-kinds`, kind)),
    import: await anImport(coordinator, path),
    bankLine: await aBankLine(Birchall.caller, path),
    photo: await idOf(coordinator.post(`${buy.path}/photos`, photo)),
    supply: await idOf(
      coordinator.post(`${path}/supplies`, { name: 'Gloves', kind: 'glove', packPieces: 100 }),
    ),
    notice: await idOf(coordinator.post(`${path}/notices`, told)),
    hold: await idOf(coordinator.post(`${path}/bags/${buy.bags.oats[0]?.id}/holds`, hold)),
    ...(await aPackingDay(Dell.caller, { coordinator, path, can: shelves.kinds['can-no-10'] ?? '' })),
    feed: await idOf(Dell.caller.post(`${path}/calendar-feeds`, { scope: 'mine' })),
    ...(await someEquipment(storehouse, Dell.caller)),
    ...(await aLoggedPlace(Dell.caller, path, can.id)),
    lot: await aGift(Dell.caller, path, shelves.kinds['can-no-10'] ?? ''),
    inspection: await anInspection(Dell.caller, `${path}/containers/${can.id}`),
    pantry: await idOf(coordinator.post(`${path}/pantries`, aPantryWish())),
    offer: await anOfferOfTwo(path, { giver: Dell.caller, taker: Corran.caller, cans: offered }),
    appointment: `gathering-closes.${buy.buyId}`,
  };
  const ten = { containerKindId: shelves.kinds['pail-5-gallon-bare'], readings: TEN_ALIKE };
  bodyOf(await coordinator.post(`${path}/container-tares`, ten), 201);
  bodyOf(await Dell.caller.put(`${path}/notices/${ids.notice}/reading`, { isAcknowledged: true }));
  // Long before anything happened, so that nothing is closed in anybody's way.
  bodyOf(await buy.treasurer.post(`${path}/periods`, { throughOn: '2020-12-31' }), 201);
  const [counted] = await app.admin<{ id: string }[]>`
    insert into book.stock_count (storehouse_id, account_id, book_grams, counted_grams, counted_by, counted_at)
    select storehouse_id, account_id, 5, 4, ${Dell.personId}, now() from book.account
    where storehouse_id = ${storehouse.storehouseId} and unit_kind = 'lot' limit 1 returning stock_count_id as id`;
  const [dead] = await app.admin<{ id: string }[]>`
    insert into book.work (storehouse_id, task, payload, state, last_reason, ended_at)
    values (${storehouse.storehouseId}, 'remind', '{}', 'dead', 'It failed.', now()) returning work_id as id`;
  const [gift] = await app.admin<{ matching: string; manifest: string }[]>`
    with m as (insert into book.gift_matching (storehouse_id, inputs, answer, made_by, made_at)
      values (${storehouse.storehouseId}, '{"trips": [], "lots": []}',
        '{"best": {"pieces": [], "leftContainers": []}, "nearest": {}}', ${Dell.personId}, now())
      returning storehouse_id, gift_matching_id)
    insert into book.gift_manifest (storehouse_id, manifest_no, gift_matching_id, pantry_id, card_version, on_day, driver,
      signed_out_by, signed_out_at)
    select storehouse_id, 1, gift_matching_id, ${ids.pantry}, 1, '2026-09-01', 'Ruth', ${Dell.personId}, now() from m
    returning gift_matching_id as matching, gift_manifest_id as manifest`;
  await aReturnedGift(app, { manifest: gift?.manifest ?? '', container: offered[1]?.id ?? '' });
  await app.admin`
    insert into book.watch (storehouse_id, container_id, inspection_id, household_id, finding, is_same_window, since)
    values (${storehouse.storehouseId}, ${offered[0]?.id ?? ''}, ${ids.inspection}, ${Dell.householdId}, 'webbing', false, now())`;
  await app.admin`
    insert into book.packing_mix (storehouse_id, packing_session_id, line, lot_id, container_kind_id, treatment, grams_each, wish_ids,
      shares, entry_id, posted_by, posted_at)
    select c.storehouse_id, ${ids.session ?? ''}, 1, c.lot_id, c.container_kind_id, 'none', 2500, array[uuidv7(), uuidv7()], '[]',
      ${can.entryId}, ${Dell.personId}, now() from book.container c where c.container_id = ${can.id}`;
  await app.admin`
    insert into book.lid_check (storehouse_id, container_id, household_id, closed_at, says, checked_by, checked_at, recorded_at)
    values (${storehouse.storehouseId}, ${can.id}, ${Dell.householdId}, '2026-08-30', 'held', ${Dell.personId}, '2026-08-31', now())`;
  await app.admin`
    insert into book.hold_answer (storehouse_id, hold_id, household_id, has_some, eaten_on, note, answered_by, answered_at)
    values (${storehouse.storehouseId}, ${ids.hold ?? ''}, ${Dell.householdId}, true, '2026-08-30', 'two loaves', ${Dell.personId}, now())`;
  await app.admin`
    with s as (insert into book.hold_slip (storehouse_id, hold_id, household_id, signed_by, written_on, keyed_by, keyed_at)
      values (${storehouse.storehouseId}, ${ids.hold ?? ''}, ${Dell.householdId}, 'Ida', '2026-09-01', ${Dell.personId},
        '2026-09-02') returning storehouse_id, hold_slip_id)
    insert into book.hold_slip_line select storehouse_id, hold_slip_id, ${can.id}, 'aside' from s`;
  await app.admin`
    insert into book.donor_reading (storehouse_id, lot_id, purpose, read_by, read_at)
    values (${storehouse.storehouseId}, ${ids.lot}, 'a recall', ${Dell.personId}, now())`;
  await app.admin`
    insert into book.small_test (storehouse_id, container_id, lot_id, household_id, kind, laid, sprouted, tested_on, tested_by)
    select storehouse_id, container_id, lot_id, household_id, 'sprout', 20, 17, '2026-09-01', ${Dell.personId}
    from book.container where container_id = ${can.id}`;
  await app.admin`
    insert into book.packing_queue (storehouse_id, packing_session_id, line, station, waiting, said_by, said_at)
    values (${storehouse.storehouseId}, ${ids.session}, 1, 'fill', 3, ${Dell.personId}, now())`;
  await app.admin`
    insert into book.packing_stood (storehouse_id, packing_session_id, person_id, station, spells)
    values (${storehouse.storehouseId}, ${ids.session}, ${Dell.personId}, 'fill', 1)`;
  const [pack] = await app.admin<{ id: string }[]>`
    insert into book.absorber_pack (storehouse_id, packing_session_id, size_millilitres, packets, opened_at, opened_by)
    values (${storehouse.storehouseId}, ${ids.session}, 300, 25, now(), ${Dell.personId}) returning absorber_pack_id as id`;
  const reCanning = await aReCanning(app, ids, storehouse.storehouseId, Dell.personId);
  return {
    ...{ storehouse, buy, gathering, shelves },
    ids: {
      ...{ ...ids, throughOn: '2020-12-31', count: counted?.id ?? '', work: dead?.id ?? '' },
      pack: pack?.id ?? '',
      reCanning,
      matching: gift?.matching ?? '',
      manifest: gift?.manifest ?? '',
      check: await aSealCheck(coordinator, path, {
        session: ids.session,
        can: shelves.kinds['can-no-10'] ?? '',
      }),
    },
  };
}

/** A can went out with the manifest and came back with it, and somebody had said what its label says. */
async function aReturnedGift(
  app: TestApp,
  { manifest, container }: { manifest: string; container: string },
): Promise<void> {
  await app.admin`
    insert into book.gift_fact (storehouse_id, container_id, sealed_by, label_facts, is_treated_seed, is_mouldy, said_by, said_at)
    select storehouse_id, ${container}, 'home', '{product}', false, false, signed_out_by, now() from book.gift_manifest
    where gift_manifest_id = ${manifest}`;
  await app.admin`
    insert into book.gift_line (storehouse_id, gift_manifest_id, container_id, position, owner_id, grams, eat_first_on,
      gift_closes_on, warmth, sealed_by, is_open, is_accepted, refused_because)
    select m.storehouse_id, m.gift_manifest_id, c.container_id, 0, c.household_id, 500, '2040-01-01', '2039-12-01', 'unknown', 'home', false, false,
      'A dent on the seam.'
    from book.gift_manifest m join book.container c on c.storehouse_id = m.storehouse_id and c.container_id = ${container}
    where m.gift_manifest_id = ${manifest}`;
}

/** The can of the world went into another and back, so that its code stands. */
async function aReCanning(
  { admin }: TestApp,
  ids: Record<string, string>,
  storehouseId: string,
  personId: string,
): Promise<string> {
  const [vessel] = await admin<{ id: string }[]>`insert into book.vessel (storehouse_id, vessel_id, kind)
    values (${storehouseId}, uuidv7(), 'container') returning vessel_id as id`;
  await admin`insert into book.container (storehouse_id, container_id, container_code, container_kind_id, lot_id,
      household_id, packed_on)
    select storehouse_id, ${vessel?.id ?? ''}, ${`ZZZZZZ${checkCharacter('ZZZZZZ')}`}, container_kind_id, lot_id, household_id,
      packed_on from book.container where container_id = ${ids.container ?? ''}`;
  const [row] = await admin<{ id: string }[]>`
    insert into book.re_can (storehouse_id, old_container_id, new_container_id, household_id, grams, spilled_grams,
      entry_id, undone_entry_id, done_by, done_at, packing_session_id, line, serial)
    select storehouse_id, container_id, ${vessel?.id ?? ''}, household_id, 5, 0, ${ids.entry ?? ''}, ${ids.entry ?? ''},
      ${personId}, now(), ${ids.session ?? ''}, 1, 900 from book.container where container_id = ${ids.container ?? ''}
    returning re_can_id as id`;
  return row?.id ?? '';
}

/** A thing for lending that came from a sheet. */
async function anImport(coordinator: Caller, path: string): Promise<string> {
  const sheets = [{ name: 'gear.csv', text: 'Equipment\nHand mill of the sheet\n' }];
  return bodyOf((await bringOver(coordinator, path, sheets)).posted, 201).id;
}

/** A seam that was looked at on a packing day, and is good. */
async function aSealCheck(
  coordinator: Caller,
  path: string,
  { session, can }: { session: string; can: string },
): Promise<string> {
  const machine = { name: 'Hand seamer', kind: 'can-seamer' };
  const { id: machineId } = bodyOf(await coordinator.post(`${path}/seal-machines`, machine), 201);
  const check = { sessionId: session, line: 1, containerKindId: can, how: 'visual', looksGood: true };
  return bodyOf(await coordinator.post(`${path}/seal-checks`, { machineId, serial: null, ...check }), 201)
    .check.id;
}

/** A packing session in which a household has a wish, a time and a helper. */
async function aPackingDay(
  caller: Caller,
  { coordinator, path, can }: { coordinator: Caller; path: string; can: string },
) {
  const day = { name: 'The canning day', startsAt: '2026-12-05T17:00:00Z', endsAt: '2026-12-05T23:00:00Z' };
  const { id: session } = bodyOf(await coordinator.post(`${path}/packing-sessions`, day), 201);
  const { bags } = bodyOf(await caller.get(`${path}/own-bags`));
  const wish = {
    foodId: bags[0].food.id,
    containerKindId: can,
    treatment: 'none',
    containers: 1,
    gramsEach: 500,
  };
  const here = `${path}/packing-sessions/${session}`;
  bodyOf(await caller.put(`${here}/wishes`, { wishes: [wish] }));
  const startsAt = '2026-12-05T17:30:00Z'; // once the line is set up
  const { id: slot } = bodyOf(await caller.post(`${here}/slots`, { startsAt }), 201);
  bodyOf(await caller.put(`${here}/hand`, { isComing: true }));
  return { session, slot };
}

/** A sealer with a scale in it that Dell has booked, a roller that Dell waits for, and a scale that is out with a part missing. */
async function someEquipment(storehouse: TestStorehouse, dell: Caller) {
  const { path, coordinator } = storehouse;
  const shed = { ...storehouse, keeper: { caller: coordinator } };
  const sealer = await anItem(shed, { isScale: true });
  const booked = await book(dell, sealer, ['2026-09-20T09:00', '2026-09-21T09:00']);
  const roller = await anItem(shed, { name: 'Roller', touchesFood: true }, []);
  const { foods } = bodyOf(await coordinator.get(`${path}/foods?limit=1`));
  const through = { foodIds: [foods[0].id] };
  bodyOf(await book(coordinator, roller, ['2026-09-20T09:00', '2026-09-21T09:00'], through), 201);
  const wish = { from: '2026-09-20T12:00', until: '2026-09-20T18:00', ...through };
  const waits = bodyOf(await dell.post(`${roller.path}/waiting`, wish), 201);
  const scale = await anItem(shed, { name: 'Scale', serviceEveryDays: 30 });
  const { id } = bodyOf(await book(dell, scale, ['2026-09-20T09:00', '2026-09-21T09:00']), 201);
  const parts = scale.parts.map((part) => ({
    partId: part.id,
    pieces: part.name === 'Hex key' ? 1 : part.pieces,
  }));
  const out = bodyOf(await dell.post(`${path}/bookings/${id}/loan`, { parts, takenBy: 'Dora' }), 201);
  const unit = sealer.units[0]?.id ?? '';
  const oiled = { what: 'Oiled.', isService: true };
  bodyOf(await coordinator.post(`${path}/equipment-units/${unit}/maintenance`, oiled), 201);
  const check = { laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 };
  bodyOf(await coordinator.post(`${path}/equipment-units/${unit}/scale-checks`, check), 201);
  return { item: sealer.id, unit, booking: bodyOf(booked, 201).id, waiting: waits.id, loan: out.id };
}

/** A can that somebody gave to a household. */
async function aGift(caller: Caller, path: string, containerKindId: string): Promise<string> {
  const { foods } = bodyOf(await caller.get(`${path}/foods?limit=1`));
  const gift = anIntake({ foodId: foods[0].id, containerKindId });
  return bodyOf(await caller.post(`${path}/intakes`, gift), 201).lotId;
}

/** A look from outside at a can that is as it should be. */
async function anInspection(caller: Caller, container: string): Promise<string> {
  const wish = { how: 'outside', findings: ['nothing-wrong'], outcome: 'table' };
  return bodyOf(await caller.post(`${container}/inspections`, wish), 201).inspection.id;
}

/** An offer of two cans, of which one is taken. */
async function anOfferOfTwo(
  path: string,
  { giver, taker, cans }: { giver: Caller; taker: Caller; cans: readonly TestCan[] },
): Promise<string> {
  const containerIds = cans.map(({ id }) => id);
  const { id } = bodyOf(await giver.post(`${path}/offers`, offerBody(containerIds)), 201);
  const claim = { containerIds: containerIds.slice(1), minorUnits: 0 };
  bodyOf(await taker.post(`${path}/offers/${id}/claims`, claim), 201);
  return id;
}

/** A cellar of a household's own with a day of a logger, and a can that stands in it. */
async function aLoggedPlace(caller: Caller, path: string, can: string) {
  const facts = {
    name: 'Cellar under the house',
    kind: 'cellar',
    isLit: false,
    isDamp: null,
    isRodentProof: true,
  };
  const { id: place } = bodyOf(await caller.post(`${path}/places`, { of: 'household', ...facts }), 201);
  const query = 'unit=C&dayOrder=ymd&fileName=august.csv';
  const file = '2026-08-01 00:00,12.5\n';
  const { logs } = bodyOf(await caller.post(`${path}/places/${place}/logs?${query}`, file), 201);
  bodyOf(await caller.post(`${path}/container-moves`, { containerIds: [can], placeId: place }), 201);
  return { place, log: logs[0].id };
}
