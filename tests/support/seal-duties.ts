/** Who may pass the door of each route of seams and seals. */
export const SEAL_DUTIES: Readonly<Record<string, string>> = {
  'GET /seals': 'coordinator packing_lead equipment_keeper',
  'POST /seal-machines': 'coordinator packing_lead equipment_keeper',
  'PUT /seam-limits/:kind': 'coordinator packing_lead equipment_keeper',
  'GET /packing-sessions/:session/seal-checks': 'coordinator packing_lead equipment_keeper',
  'GET /packing-sessions/:session/seals': 'coordinator packing_lead equipment_keeper',
  'POST /seal-checks': 'coordinator packing_lead equipment_keeper',
  'POST /seal-holds/settling': 'coordinator packing_lead equipment_keeper',
  'POST /re-cannings': 'coordinator packing_lead equipment_keeper',
  'POST /re-cannings/:reCanning/undoing': 'coordinator packing_lead equipment_keeper',
  'PUT /packing-sessions/:session/slots/:slot/arrival': 'member',
  'GET /own-doubts': 'household',
  'GET /scales': 'member',
  'GET /equipment/:item/scale-checks': 'member',
  'POST /equipment-units/:unit/scale-checks': 'equipment_keeper packing_lead coordinator',
};
