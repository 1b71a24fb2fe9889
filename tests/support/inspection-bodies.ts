const looked = { how: 'outside', findings: ['nothing-wrong'], outcome: 'table', kernels: null, note: '' };

/** A body that is well formed for each route of an inspection that takes one. */
export const INSPECTION_BODIES: Record<string, Record<string, unknown>> = {
  'POST /containers/:container/inspections': { ...looked, isMovedOut: false },
  'POST /inspections/:inspection/undoing': { reason: 'the wrong can' },
};
