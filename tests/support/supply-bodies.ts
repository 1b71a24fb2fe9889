import type { BodyIds } from './route-bodies.ts';

/** A body that is well formed for each route of supplies and of a day's settlement that takes one. */
export const supplyBodies = (ids: BodyIds): Record<string, Record<string, unknown>> => ({
  'POST /packing-sessions/:session/mixes': {
    mixId: '01890a5d-ac96-774b-bcce-b302099a8057',
    seen: '0'.repeat(64),
  },
  'POST /packing-sessions/:session/mixes/undoing': {
    ...{ packingMixId: '01890a5d-ac96-774b-bcce-b302099a8057', reason: 'the wrong lot' },
  },
  'POST /packing-sessions/:session/settlement-previews': { supplies: [] },
  'POST /packing-sessions/:session/settlement': { supplies: [], seen: '0'.repeat(64) },
  'POST /packing-sessions/:session/settlement/undoing': { reason: 'the wrong count' },
  'POST /supplies': { name: 'Gloves, small', kind: 'glove', packPieces: 100, packMinorUnits: 900 },
  'PUT /supplies/:supply': { version: 1, name: 'Gloves', packPieces: 100, packMinorUnits: 950 },
  'POST /supplies/:supply/counts': { countedPieces: 90, bookPieces: 100, reason: 'a box was torn' },
  'POST /supply-purchases': {
    paidBy: { who: 'household', householdId: ids.household },
    lines: [{ supplyId: ids.supply ?? ids.kind, pieces: 100, minorUnits: 900 }],
  },
  'PUT /supply-prices': { supplyCode: 'absorber-300', priceMinorUnits: 25 },
});
