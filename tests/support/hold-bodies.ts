/** A body that is well formed for each route of holds over more than one bag. */
export const HOLD_BODIES: Record<string, Record<string, unknown>> = {
  'POST /holds': {
    of: { scope: 'lot', lotId: '0192f0c8-5a00-7000-8000-000000000001' },
    reason: 'a notice of the supplier',
  },
  'PUT /holds/:hold/answer': { hasSome: false, eatenOn: '2026-08-30', givenOn: null, note: 'two loaves' },
  'POST /holds/:hold/slips': {
    householdId: '0192f0c8-5a00-7000-8000-000000000001',
    signedBy: 'Ida Dell',
    writtenOn: '2026-09-01',
    became: [],
  },
  'POST /holds/:hold/destruction': { of: 'household', reason: 'the mill said so' },
};
