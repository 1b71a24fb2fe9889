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
  _ids: Readonly<Record<string, string>>,
): Record<string, Record<string, unknown>> => ({
  'POST /pantries': aPantryWish('Another pantry'),
  'PUT /pantries/:pantry': { version: 1, name: 'Mill Lane', ...pantryFacts, isRetired: false },
  'PUT /pantries/:pantry/card': { version: 1, card: PLAIN_CARD },
});
