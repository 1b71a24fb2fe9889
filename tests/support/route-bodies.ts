import { itemBody } from './equipment.ts';
import { FUND_BODIES } from './fund-routes.ts';
import { givingBodies } from './giving.ts';
import { HOLD_BODIES } from './hold-bodies.ts';
import { inspectionBodiesOf } from './inspection-bodies.ts';
import { aJpeg } from './jpeg.ts';
import { offerBodies } from './offer.ts';
import { PLACE_BODIES } from './place-bodies.ts';
import { sealBodies } from './seal-bodies.ts';
import { supplyBodies } from './supply-bodies.ts';
import { TEN_ALIKE } from './tare.ts';

/** The ids that a body may name, by what they name. */
export type BodyIds = Readonly<Record<string, string>>;

const money = { minorUnits: 500, note: 'a note' };
const offerOf = (ids: BodyIds) => ({
  buyLineId: ids.line,
  bagSize: 50,
  breakKind: 'all-units',
  mostBags: null,
  breaks: [{ fromBags: 1, bagPriceMinorUnits: 3600 }],
});
const termsOf = (ids: BodyIds) => ({
  reference: 'by telephone',
  currency: 'USD',
  validUntil: '2026-10-31',
  minimumGoodsMinorUnits: 0,
  minimumGrams: 0,
  freightSteps: [{ fromGrams: 0, minorUnits: 900 }],
  freightFreeFromMinorUnits: null,
  leadDays: 3,
  cropYear: 2026,
  moistureNote: '',
  foreignPriceNote: '',
  offers: [offerOf(ids)],
});
const pledge = { leastGrams: 0, wantedGrams: 22_680, mostGrams: 22_680, wholeBags: true, asTyped: 'one bag' };
const ceiling = { ceilingMinorUnits: 900, ceilingPerGrams: 1000, substituteLineId: null };
const buyFacts = {
  name: 'Winter grain',
  gatheringClosesAt: '2026-10-20T23:00:00Z',
  orderOn: '2026-10-24',
  landingOn: '2026-11-02',
  landingPlace: 'the hall',
};
const figures = {
  ...{ foodGroup: 'grains', kilocaloriesPer100Grams: 350, proteinMilligramsPer100Grams: 9000 },
  ...{ fatMilligramsPer100Grams: 3000, carbohydrateMilligramsPer100Grams: 60_000 },
  ...{ fibreMilligramsPer100Grams: 8000, bulkMicrogramsPerMillilitre: 700_000 },
  ...{ allergens: ['wheat'], gluten: 'yes', needsMoistureTest: true, source: 'the label of a sack' },
};
const packingDay = {
  ...{ name: 'A day at the line', place: 'the hall', lines: 1, peopleALine: 6 },
  ...{ startsAt: '2026-12-05T17:00:00Z', endsAt: '2026-12-05T23:00:00Z' },
};
const rules = {
  ...{
    rulesVersion: 2,
    depositPercent: 40,
    freightBasis: 'by-weight',
    blendNumerator: 1,
    blendDenominator: 2,
  },
  ...{
    splitRule: 'proportional',
    commonCapGrams: 0,
    levyHundredthsOfPercent: 0,
    writeOffLimitMinorUnits: 2000,
  },
  ...{ priceRisePercent: 5, claimWindowHours: 48, uncollectedDays: 14 },
};
const eater = {
  ...{ name: 'Ida', birthOn: '2019-04-30', sex: 'female', activity: 'active', presentPercent: 100 },
  ...{ heightCentimetres: 120, massKilograms: 24, typedKilocalories: null },
  ...{ excludedAllergens: ['milk'], excludedFoodCodes: ['rice-white-long'], avoidsGluten: false },
};
const bankFile = { text: 'Date,Words,Amount\n2026-08-28,DELL,7.00\n2026-08-31,FEE,-1.00\n' };
const bankColumns = {
  ...{ firstRow: 1, dayColumn: 0, dayOrder: 'ymd', amountColumn: 2, inColumn: null, outColumn: null },
  ...{ balanceColumn: null, wordColumns: [1], decimalMark: '.' },
};
const window = { startsAt: '2026-09-06T15:00:00Z', endsAt: '2026-09-06T16:00:00Z' };
const wall = { from: '2026-10-06T09:00', until: '2026-10-07T09:00' };
const bag = {
  ...{ supplierMark: 'L-7', harvestYear: 2026, grossGrams: 22_930, tareGrams: 250, condition: 'dry' },
  ...{ moistureTenthsPercent: 120, decision: 'accepted', note: '', isExemptFromWeighing: false },
};

/** A body that is well formed for each route inside a storehouse that takes one. */
export const bodiesOf = (ids: BodyIds): Record<string, Record<string, unknown>> => ({
  'PUT /': { version: 1, name: 'Alder Row', timeZone: 'America/Chicago', massDisplay: 'lb', language: 'en' },
  'POST /rules': rules,
  'POST /calendar-feeds': { scope: 'item', item: { kind: 'buy', id: ids.buy } },
  'POST /invitations': { householdName: 'Hale', days: 14 },
  'POST /persons/:person/duties': { duty: 'equipment_keeper' },
  'POST /households': { name: 'Isle', personName: 'Ivo Isle' },
  'PUT /households/:household': { version: 1, name: 'Jory' },
  'PUT /households/:household/contact': { version: 0, phone: '1', address: 'a', shownToMembers: false },
  'POST /households/:household/eaters': eater,
  'PUT /households/:household/eaters/:eater': { ...eater, version: 1 },
  'PUT /households/:household/plan': {
    ...{ version: 0, needBasis: 'energy', targetDays: 90, targetGroups: ['grains'], addYear: false },
    guidelines: [{ foodGroup: 'grains', gramsPerAdultYear: 180_000 }],
  },
  'POST /households/:household/helpers': { personId: ids.person, days: 30, reason: 'a broken arm' },
  'POST /households/:household/leaving': { version: 1 },
  'POST /import-trials': {
    files: [{ name: 'people.csv', base64: 'SG91c2Vob2xkCkRlbGwK' }],
    dayOrder: 'day-first',
  },
  'POST /imports': {
    files: [{ name: 'people.csv', kind: 'households', base64: 'SG91c2Vob2xkCkRlbGwK', leftOut: [] }],
    ...{ openingOn: '2026-09-01', decimalSign: 'point', dayOrder: 'day-first', seen: 'a'.repeat(64) },
  },
  'POST /imports/:import/undoing': { reason: 'the wrong file' },
  'POST /equipment': itemBody({ name: 'Grain mill' }),
  'PUT /equipment/:item': { version: 1, ...itemBody({ isScale: true }) },
  'PUT /equipment/:item/parts': {
    parts: [{ name: 'Chuck', pieces: 1, isCritical: true, valueMinorUnits: 3800 }],
  },
  'PUT /equipment-units/:unit': { version: 1, condition: 'dirty', conditionNote: 'oil', missing: [] },
  'POST /equipment/:item/bookings': { ...wall, householdId: ids.household },
  'POST /bookings/:booking/acceptance': { foodIds: [ids.food] },
  'POST /equipment-service-times': { ...wall, unitId: ids.unit, note: 'new belt' },
  'POST /bookings/:booking/relay-answer': { version: 1, agrees: true },
  'POST /bookings/:booking/swap': { version: 1 },
  'POST /bookings/:booking/loan': { parts: [], takenBy: 'Dora', depositFrom: 'balance', note: '' },
  'POST /bookings/:booking/relay': {
    ...{ parts: [], takenBy: 'Dora', broughtBy: 'Cole', isCleaned: true, note: '', uses: 1 },
  },
  'POST /loans/:loan/return': {
    ...{ parts: [], broughtBy: 'Dora', condition: 'ready', note: '', uses: 24, damageMinorUnits: 0 },
    refundTo: 'balance',
  },
  'POST /loans/:loan/damage': { minorUnits: 450, note: 'A dent in the hopper.' },
  'POST /equipment-units/:unit/maintenance': { what: 'Oiled.', isService: true, condition: 'ready' },
  'POST /equipment-units/:unit/scale-checks': { laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 },
  'POST /equipment-units/:unit/thermometer-checks': { knownTenths: 0, shownTenths: 4, limitTenths: 10 },
  'POST /container-tares': { containerKindId: ids.kind, readings: TEN_ALIKE },
  'POST /equipment/:item/waiting': { ...wall, householdId: ids.household },
  'POST /foods': { foodCode: 'emmer', nameEn: 'Emmer', nameEs: 'Farro', keepingClass: null, ...figures },
  'PUT /foods/:food': { version: 1, nameEn: 'Emmer', nameEs: 'Farro', ...figures },
  'PUT /foods/:food/retirement': { version: 1, isRetired: true },
  'POST /container-kinds': {
    ...{ kindCode: 'jug', nameEn: 'Jug', nameEs: 'Jarra', capacityMicrolitres: 2_000_000 },
    ...{ tareGrams: 90, priceMinorUnits: 250, source: 'weighed' },
  },
  'PUT /container-kinds/:kind': { version: 1, tareGrams: 90, priceMinorUnits: 250 },
  ...inspectionBodiesOf(ids as Record<string, string>),
  ...offerBodies(ids),
  ...HOLD_BODIES,
  ...PLACE_BODIES,
  ...FUND_BODIES,
  ...givingBodies(ids),
  ...sealBodies(ids),
  ...supplyBodies(ids),
  'POST /suppliers': { name: 'Quarry Mill', contact: 'by telephone' },
  'PUT /suppliers/:supplier': { version: 1, name: 'Quarry Mill', contact: '' },
  'POST /buys': {
    ...buyFacts,
    lines: [{ foodId: ids.food, massUnit: 'lb', stepUnits: 5, splitRule: null, commonCapGrams: 0 }],
  },
  'PUT /buys/:buy': { ...buyFacts, version: 1 },
  'POST /buys/:buy/lines': {
    ...{ foodId: ids.food, massUnit: 'kg', stepUnits: 5, splitRule: 'proportional', commonCapGrams: null },
  },
  'PUT /buys/:buy/lines/:line': { version: 1, stepUnits: 5, splitRule: null, commonCapGrams: null },
  'PUT /buys/:buy/landing-plan': { landingOn: '2026-11-20', landingPlace: 'Grange hall', version: 1 },
  'POST /buys/:buy/stage': { to: 'gathering' },
  'POST /buys/:buy/calling-off': {
    ...{ reason: 'too dear', cancellationNote: 'agreed' },
    cancellationCosts: [{ supplierId: ids.supplier, minorUnits: 100 }],
  },
  'POST /buys/:buy/quotes': { ...termsOf(ids), supplierId: ids.supplier },
  'PUT /buys/:buy/quotes/:quote': { ...termsOf(ids), version: 1 },
  'POST /buys/:buy/quotes/:quote/withdrawal': { version: 1 },
  'PUT /buys/:buy/quotes/:quote/confirmed-terms': {
    ...{ version: 1, validUntil: '2026-10-31', freightSteps: [{ fromGrams: 0, minorUnits: 900 }] },
    freightFreeFromMinorUnits: null,
    offers: [{ bagOfferId: ids.bagOffer, breaks: [{ fromBags: 1, bagPriceMinorUnits: 3600 }] }],
  },
  'PUT /buys/:buy/lines/:line/quote': { version: 1, quoteId: ids.quote },
  'POST /buys/:buy/pledges': { buyLineId: ids.line, ...pledge, ...ceiling },
  'PUT /buys/:buy/pledges/:pledge': { version: 1, ...pledge, ...ceiling },
  'POST /buys/:buy/pledges/:pledge/withdrawal': { version: 1 },
  'POST /buys/:buy/preview': { buyLineId: ids.line, ...pledge, ...ceiling },
  'POST /buys/:buy/fixing': {
    overrideReason: 'by hand',
    override: [
      {
        buyLineId: ids.line,
        bags: [{ bagOfferId: ids.bagOffer, bags: 2 }],
        allotments: [{ pledgeId: ids.pledge, units: 100 }],
      },
    ],
  },
  'POST /buys/:buy/reopening': { reason: 'more came', toldHouseholdIds: [ids.household] },
  'POST /buys/:buy/order-consents': { duty: 'coordinator', note: 'please ring before' },
  'POST /buys/:buy/withdrawals': {
    ...{ householdId: ids.household, reason: 'moving', declinedHouseholdIds: [ids.household] },
  },
  'POST /buys/:buy/deposits': { ...money, householdId: ids.household, till: 'bank', fromBalance: false },
  'POST /buys/:buy/deposits/refunds': {
    ...money,
    householdId: ids.household,
    till: 'cash',
    toBalance: false,
  },
  'POST /buys/:buy/deposits/waivers': { householdId: ids.household, reason: 'a hard year' },
  'POST /buys/:buy/deliveries': {
    ...{
      supplierId: ids.supplier,
      carrier: 'Valley',
      arrivedOn: '2026-09-01',
      carrierNote: 'n',
      countedBy: 'A',
    },
  },
  'PUT /deliveries/:delivery/counts': {
    version: 1,
    counts: [{ bagOfferId: ids.bagOffer, countedBags: 1, note: '' }],
  },
  'POST /deliveries/:delivery/bags': { bags: [{ bagOfferId: ids.bagOffer, ...bag }] },
  'POST /deliveries/:delivery/finish': { version: 1 },
  'PUT /bags/:bag': {
    ...{ version: 1, condition: 'dry', decision: 'accepted', note: '', moistureTenthsPercent: 120 },
    isExemptFromWeighing: false,
  },
  'PUT /bags/:bag/weight': {
    version: 1,
    grossGrams: 22_930,
    tareGrams: 250,
    buyId: ids.buy,
    reason: 'again',
  },
  'POST /bags/:bag/loss': { grams: 10, to: 'spilled', because: 'a torn corner' },
  'POST /bags/:bag/discard': { finding: 'mice' },
  'POST /bags/:bag/holds': { reason: 'a smell' },
  'POST /bags/:bag/uses': { grams: 10, to: 'eaten', note: '' },
  'POST /holds/:hold/release-request': { finding: 'clean' },
  'POST /buys/:buy/invoices': {
    ...{ supplierId: ids.supplier, number: 'Q-7', onDay: '2026-09-01', currency: 'USD', foreignNote: '' },
    lines: [{ kind: 'goods', buyLineId: ids.line, minorUnits: 100 }],
  },
  'POST /invoices/:invoice/void': { reason: 'twice' },
  'POST /equipment/:item/photos': { contentBase64: aJpeg().toString('base64') },
  'POST /buys/:buy/photos': {
    ...{ shows: 'bag', thingId: ids.bag, contentBase64: aJpeg().toString('base64'), note: 'torn' },
  },
  'POST /buys/:buy/claims': {
    ...{ supplierId: ids.supplier, buyLineId: ids.line, kind: 'damage', minorUnits: 100, currency: 'USD' },
    because: 'torn',
  },
  'POST /claims/:claim/credit': {
    minorUnits: 100,
    currency: 'USD',
    till: 'bank',
    onDay: '2026-09-01',
    note: '',
  },
  'POST /claims/:claim/refusal': { onDay: '2026-09-01', because: 'too late' },
  'POST /claims/:claim/writing-off': { onDay: '2026-09-01', because: 'they never answered' },
  'POST /buys/:buy/lines/:line/splits': { rule: 'proportional' },
  'POST /buys/:buy/late-credits': {
    ...{ chargeLineId: ids.charge, minorUnits: 100, till: 'bank', currency: 'USD', onDay: '2026-09-01' },
    reason: 'goodwill',
  },
  'POST /buys/:buy/pick-ups': { householdId: ids.household, ...window },
  'PUT /pick-ups/:pickUp': { version: 1, ...window },
  'POST /buys/:buy/collections': { householdId: ids.household, signedBy: 'Dora' },
  'POST /pick-ups/:pickUp/collection': { signedBy: 'Dora', pieces: [{ bagId: ids.bag, grams: 10 }] },
  'POST /buys/:buy/uncollected/:household': { note: 'never came' },
  'PUT /buys/:buy/lines/:line/container-wishes': { wishes: [{ containerKindId: ids.kind, grams: 500 }] },
  'POST /containers': {
    ...{
      bagId: ids.bag,
      containerKindId: ids.kind,
      count: 1,
      gramsEach: 10,
      packedOn: '2026-09-01',
      note: '',
    },
  },
  'PUT /containers/:container/treatment': { treatment: 'none', moistureTenths: null },
  'POST /containers/:container/pours': { bagId: ids.bag, grams: 10 },
  'POST /containers/:container/uses': { grams: 10, to: 'eaten', note: '' },
  'POST /pours/:entry/undoing': { reason: 'the wrong bag' },
  'POST /containers/:container/kitchen': { grams: 10 },
  'POST /kitchen/takes/:entry/undoing': { reason: 'the wrong can' },
  'POST /kitchen/uses': { lotId: ids.bag, grams: 10, to: 'eaten', note: '' },
  'POST /stock': {
    ...{ foodId: ids.food, originNote: 'a cellar', harvestYear: 2024, containerKindId: ids.kind, count: 1 },
    ...{ gramsEach: 100, packedOn: '2026-08-01' },
  },
  'POST /payments': {
    ...money,
    currency: 'USD',
    onDay: '2026-09-01',
    householdId: ids.household,
    till: 'bank',
  },
  'POST /refunds': {
    ...money,
    currency: 'USD',
    onDay: '2026-09-01',
    householdId: ids.household,
    till: 'bank',
  },
  'POST /bank-charges': { ...money, currency: 'USD', onDay: '2026-09-01' },
  'POST /cash-bankings': { ...money, currency: 'USD', onDay: '2026-09-01' },
  'POST /fund-receipts': { ...money, currency: 'USD', onDay: '2026-09-01', till: 'cash' },
  'POST /fund-spendings': { ...money, currency: 'USD', onDay: '2026-09-01', till: 'cash' },
  'POST /hardship-covers': { minorUnits: 100, householdId: ids.household, reason: 'a hard year' },
  'POST /supplier-payments': {
    ...{ ...money, onDay: '2026-09-01', supplierId: ids.supplier, till: 'bank', invoiceId: ids.invoice },
    isPrepayment: false,
  },
  'POST /opening-balances': {
    ...{
      of: 'household',
      householdId: ids.household,
      balanceMinorUnits: 100,
      onDay: '2026-09-01',
      reason: 'old',
    },
  },
  'POST /year-ends': { throughOn: '2026-08-31', note: '' },
  'POST /bank/previews': { ...bankFile, columns: bankColumns },
  'POST /bank/files': { ...bankFile, name: 'august.csv', columns: bankColumns, leaveOutRows: [1] },
  'POST /bank/balances': { onDay: '2026-08-31', minorUnits: 600 },
  'POST /bank/lines/:bankLine/match': { entryId: ids.entry },
  'POST /bank/lines/:bankLine/posting': {
    ...{ as: 'payment', householdId: ids.household, buyId: null, supplierId: null, isPrepayment: false },
    ...{ onDay: '2026-08-31', answer: 'two sacks, two payments' },
  },
  'POST /bank/lines/:bankLine/setting-aside': { reason: 'another account' },
  'POST /bank/lines/:bankLine/undoing': { reason: 'the wrong household', takesBack: false },
  'POST /tin/counts': {
    ...{ countedMinorUnits: 1250, expectedMinorUnits: 1200, countedWithPersonId: ids.person },
    ...{ pieces: [{ eachMinorUnits: 125, count: 10 }], reason: 'a coin under the tray' },
  },
  'POST /write-offs': { householdId: ids.household, minorUnits: 100, currency: 'USD', reason: 'moved away' },
  'POST /entries/:entry/reversal': { reason: 'a slip', onDay: '2026-09-01' },
  'POST /periods': { throughOn: '2026-08-31' },
  'POST /periods/:throughOn/signatures': { duty: 'treasurer', digestSha256: '0'.repeat(64), remarks: 'seen' },
  'POST /packing-sessions': packingDay,
  'PUT /packing-sessions/:session': { ...packingDay, version: 1 },
  'POST /packing-sessions/:session/calling-off': { because: 'the hall is shut' },
  'POST /packing-sessions/:session/equipment': { itemId: ids.item },
  'PUT /packing-sessions/:session/wishes': { wishes: [] },
  'POST /packing-sessions/:session/slots': { startsAt: '2026-12-05T17:30:00Z' },
  'POST /packing-sessions/:session/bags': { bagId: ids.bag, householdId: ids.household },
  'POST /packing-sessions/:session/labels': {
    ...{ bagId: ids.bag, householdId: ids.household, containerKindId: ids.kind, treatment: 'none', count: 2 },
  },
  'POST /packing-sessions/:session/pours': {
    ...{ line: 1, bagId: ids.bag, householdId: ids.household, containerKindId: ids.kind },
    ...{ treatment: 'none', targetGrams: 500, grams: [500] },
  },
  'POST /packing-sessions/:session/pours/:entry/undoing': { reason: 'the wrong can' },
  'POST /packing-sessions/:session/losses': {
    ...{ bagId: ids.bag, householdId: ids.household, grams: 10, to: 'spilled' },
  },
  'PUT /packing-sessions/:session/left': { bagId: ids.bag, householdId: ids.household, leftGrams: 0 },
  'POST /packing-sessions/:session/absorber-packs': { sizeMillilitres: 300, packets: 25 },
  'POST /packing-sessions/:session/absorber-packs/:pack/shutting': { packetsLeft: 5 },
  'PUT /packing-sessions/:session/hand': { isComing: true },
  'PUT /packing-sessions/:session/hands/:person': { state: 'came' },
  'POST /stock-counts': { accountId: ids.bag, countedGrams: 22_000, note: 'weighed again' },
  'POST /stock-counts/:count/booking': { reason: 'a torn corner' },
  'POST /notices': {
    ...{ audience: { to: 'duty', duty: 'treasurer' }, about: 'The tin', says: 'Count it.' },
    ...{ dueOn: '2030-01-31', isSafety: true },
  },
  'PUT /telling-wishes': {
    ...{ version: 0, language: 'es', timeZone: 'America/Chicago', fromHour: 7, toHour: 21, digestHour: 18 },
    ...{ isEmailOn: true, stoppedKinds: ['notice'] },
  },
  'PUT /notices/:notice/reading': { isAcknowledged: true },
});

/** A body that is well formed for each route outside the storehouses that takes one. */
export const BODIES_OUTSIDE: Record<string, Record<string, unknown>> = {
  'POST /api/session': { email: 'a@example.org', password: 'a long enough password' },
  'PUT /api/password': { currentPassword: 'a long enough password', newPassword: 'another long password' },
  'POST /api/set-up': {
    ...{
      email: 'a@example.org',
      password: 'a long enough password',
      personName: 'Ada',
      householdName: 'Ash',
    },
    storehouse: { name: 'Alder', currency: 'USD', timeZone: 'UTC', massDisplay: 'lb', language: 'en' },
  },
  'POST /api/invitations/:storehouse/:token': {
    ...{ personName: 'Bo', householdName: 'Birch' },
    login: { email: 'bo@example.org', password: 'a long enough password' },
  },
};
