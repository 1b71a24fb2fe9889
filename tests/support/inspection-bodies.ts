const looked = { how: 'outside', findings: ['nothing-wrong'], outcome: 'table', kernels: null, note: '' };

/** A gift to a household whose history is known. */
export const anIntake = (facts: Record<string, unknown>) => ({
  ...{
    of: 'household',
    count: 1,
    gramsEach: 10,
    packedOn: '2024-05-01',
    treatment: null,
    moistureTenths: null,
  },
  answers: {
    ...{
      packedBy: 'paper',
      packedHow: 'bought-sealed',
      summers: 'cellar',
      harm: 'never',
      pests: 'no',
      opened: 'no',
    },
  },
  ...{ mark: '', allergensMet: '', donor: 'An aunt', note: '', ...facts },
});

/** A body that is well formed for each route of an inspection that takes one. */
export const inspectionBodiesOf = (ids: Record<string, string>): Record<string, Record<string, unknown>> => ({
  'POST /containers/:container/inspections': { ...looked, isMovedOut: false },
  'POST /inspections/:inspection/undoing': { reason: 'the wrong can' },
  'POST /containers/:container/small-tests': { kind: 'sprout', seeds: { laid: 20, sprouted: 17 }, note: '' },
  'POST /intakes': anIntake({ foodId: ids.food, containerKindId: ids.kind }),
  'POST /intakes/:lot/donor-readings': { purpose: 'a recall' },
});
