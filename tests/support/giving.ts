import { bodyOf } from './buy.ts';
import { bringOver } from './import.ts';
import type { TestStorehouse } from './storehouse.ts';

/** What a pantry takes that asks for little: whatever a maker sealed, on Tuesdays and Thursdays. */
export const PLAIN_CARD = {
  ...{ acceptsMakerSealed: true, acceptsHomePacked: true, acceptsLicensedKitchen: null },
  ...{ acceptsReducedOxygen: true, mostDaysPastBest: null, pastBestClasses: null, leastLifeDays: 30 },
  ...{ containerKindCodes: null, labelFacts: ['product', 'pack-date'], foodCodesWanted: null },
  ...{ foodCodesNotWanted: [], allergensNotTaken: [], wantsAllergensApart: null, takesCold: null },
  ...{ givesReceipt: true, mostGramsPerVisit: null, mostGramsPerWeek: null },
  openings: [2, 4].map((weekday) => ({ weekday, opensAt: '09:00', closesAt: '12:30' })),
  ...{ note: '', confirmedOn: '2026-08-20', confirmedBy: 'the intake desk' },
};

const pantryFacts = {
  ...{ address: 'Side door, 4 Mill Lane', timeZone: 'America/Chicago', contactDuty: 'intake desk' },
  ...{ contact: 'intake@pantry.example', distanceMetres: 4800 },
};

/** A pantry whose card says what `card` says of it. */
export const aPantryWish = (name = 'Mill Lane pantry', card: object = {}, facts: object = {}) => ({
  ...{ name, ...pantryFacts, ...facts },
  card: { ...PLAIN_CARD, ...card },
});

/** A body that is well formed for each route of giving that takes one. */
export const givingBodies = (
  ids: Readonly<Record<string, string>>,
): Record<string, Record<string, unknown>> => ({
  'POST /pantries': aPantryWish('Another pantry'),
  'PUT /pantries/:pantry': { version: 1, name: 'Mill Lane', ...pantryFacts, isRetired: false },
  'PUT /pantries/:pantry/card': { version: 1, card: PLAIN_CARD },
  'PUT /containers/:container/gift-facts': {
    ...{ sealedBy: 'maker', labelFacts: ['product'], isTreatedSeed: false, isMouldy: false },
  },
  'POST /containers/:container/ladder-steps': { to: 'animals', reason: 'stale' },
  'POST /gift-matchings': {
    trips: [{ pantryId: ids.pantry ?? ids.kind, onDay: '2026-09-08', capacityGrams: 90_000 }],
  },
  'POST /gift-manifests': { matchingId: ids.matching ?? ids.kind, trip: 0, driver: 'Ruth', leaveOut: [] },
  'POST /gift-manifests/:manifest/receipt': {
    ...{ version: 1, receivedOn: '2026-09-01', receiverDuty: 'intake desk', note: '' },
    refused: [{ containerId: ids.container ?? ids.kind, reason: 'dented' }],
  },
  'POST /gift-manifests/:manifest/receipt-undoing': { version: 1, reason: 'the wrong slip' },
  'POST /gift-manifests/:manifest/calling-off': { version: 1, reason: 'no van' },
});

export type GivenCan = { readonly id: string; readonly code: string; readonly grams: number };
type Cans = {
  readonly food: string;
  readonly grams: number;
  readonly count: number;
  readonly stored: string;
};

/** Common stock in No. 10 cans, brought over from the sheets of an older book. */
export async function commonCans(storehouse: TestStorehouse, wanted: readonly Cans[]): Promise<GivenCan[]> {
  const rows = wanted.map(
    ({ food, grams, count, stored }) => `common,${food},can-no-10,${count},${grams} g,${stored},`,
  );
  const text = `Owner,Food,Container,Count,Mass each,Stored,Origin\n${rows.join('\n')}\n`;
  const { posted } = await bringOver(storehouse.coordinator, storehouse.path, [{ name: 'stock.csv', text }]);
  bodyOf(posted, 201);
  const queue = await storehouse.coordinator.get(`${storehouse.path}/giving-queue`);
  return bodyOf(queue).containers.map(({ id, code, grams }: GivenCan) => ({ id, code, grams }));
}
