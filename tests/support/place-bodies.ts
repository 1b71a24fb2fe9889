const placeFacts = { name: 'Back room', kind: 'room', isLit: null, isDamp: false, isRodentProof: true };
const loggerFile = { text: '06/01/2026 00:00,18.5\n06/02/2026 00:00,19\n', unit: 'C', dayOrder: 'mdy' };

/** A body that is well formed for each route of a place that takes one. */
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
  'POST /places/:place/log-previews': { ...loggerFile, badAfterLine: 0 },
  'POST /places/:place/logs': { ...loggerFile, fileName: 'june.csv' },
};
