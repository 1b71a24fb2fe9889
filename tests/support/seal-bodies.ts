/** A body that is well formed for each route of seals and seams that takes one. */
export const sealBodies = (
  ids: Readonly<Record<string, string>>,
): Record<string, Record<string, unknown>> => ({
  'POST /seal-machines': { name: 'Seamer', kind: 'can-seamer' },
  'PUT /seam-limits/:kind': {
    ...{
      widthLeast: 110,
      widthMost: 120,
      thicknessLeast: 55,
      thicknessMost: 62,
      source: 'the maker’s sheet',
    },
    ...{ countersinkLeast: 120, countersinkMost: 130, overlapPercent: 55, lidPlate: 10, bodyPlate: 9 },
  },
  'POST /seal-checks': {
    ...{ machineId: ids.machine ?? ids.kind, sessionId: ids.session ?? ids.kind, line: 1, serial: null },
    ...{ containerKindId: ids.kind, how: 'visual', looksGood: true, note: '' },
  },
  'POST /seal-holds/settling': {
    containerIds: [ids.container ?? ids.kind],
    disposition: 'eat-now',
    note: 'soft',
  },
  'POST /lids/answers': { of: 'common', containerIds: [ids.container ?? ids.kind], looseCodes: [], note: '' },
  'POST /lids/closings': { of: 'common', containerIds: [ids.container ?? ids.kind], note: '' },
  'POST /re-cannings': {
    ...{ containers: [{ containerId: ids.container ?? ids.kind }], containerKindId: ids.kind },
    ...{ treatment: 'none', note: '' },
  },
  'POST /packing-sessions/:session/queues': { line: 1, station: 'fill', waiting: 3 },
  'PUT /packing-sessions/:session/slots/:slot/arrival': { isHere: true },
  'POST /re-cannings/:reCanning/undoing': { reason: 'the wrong can' },
});
