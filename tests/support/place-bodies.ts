const placeFacts = { name: 'Back room', kind: 'room', isLit: null, isDamp: false, isRodentProof: true };

/** A body that is well formed for each route of a place that takes one as JSON; a logger's file is a body by itself. */
export const PLACE_BODIES: Record<string, Record<string, unknown>> = {
  'POST /container-moves': {
    containerIds: ['01890a5d-ac96-774b-bcce-b302099a8057'],
    placeId: null,
    movedOn: '2026-09-01',
    toldTenths: 180,
  },
  'POST /places': { of: 'household', ...placeFacts },
  'PUT /places/:place': { version: 1, ...placeFacts },
  'PUT /places/:place/months': { months: [{ month: '2026-07', tenthsCelsius: 210 }] },
};
