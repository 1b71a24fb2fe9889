import { TREATMENT_CODES } from '@sheafbook/keeping';
import { z } from 'zod';
import { gramsOrNone, instant, reason } from '../buy/schema.ts';
import { thingName } from '../storehouse/schema.ts';

const mils = z.int('Give whole thousandths of an inch.').min(1).max(1000);
const RUNS_BACK = 'The most is no less than the least.';
const note = z.string().trim().max(500).default('');

export const machineWish = z.strictObject({
  name: thingName,
  kind: z.enum(['can-seamer', 'heat-sealer', 'vacuum-sealer']),
});
export type MachineWish = z.infer<typeof machineWish>;

/** As the maker of the can or the lid gives them, in thousandths of an inch. */
export const limitWish = z
  .strictObject({
    widthLeast: mils,
    widthMost: mils,
    thicknessLeast: mils,
    thicknessMost: mils,
    countersinkLeast: mils,
    countersinkMost: mils,
    overlapPercent: z.int().min(1).max(100),
    lidPlate: mils,
    bodyPlate: mils,
    source: z.string().trim().min(1, 'Say which maker’s sheet the limits are from.').max(300),
  })
  .refine((limit) => limit.widthLeast <= limit.widthMost, { path: ['widthMost'], message: RUNS_BACK })
  .refine((limit) => limit.thicknessLeast <= limit.thicknessMost, {
    path: ['thicknessMost'],
    message: RUNS_BACK,
  })
  .refine((limit) => limit.countersinkLeast <= limit.countersinkMost, {
    path: ['countersinkMost'],
    message: RUNS_BACK,
  })
  .refine((limit) => limit.widthLeast > 2 * limit.lidPlate + limit.bodyPlate, {
    path: ['widthLeast'],
    message: 'Three plates would fill the whole seam; look at the sheet again.',
  });
export type LimitWish = z.infer<typeof limitWish>;

const measures = z.strictObject({
  widthMils: mils,
  thicknessMils: mils,
  countersinkMils: mils,
  coverHookMils: mils,
  bodyHookMils: mils,
});

const SEAL_OCCASIONS = [
  'first',
  'due',
  'jam',
  'adjustment',
  'changeover',
  'last',
  'suspect',
  'clearing',
] as const;

export const checkWish = z
  .strictObject({
    machineId: z.uuid(),
    sessionId: z.uuid(),
    line: z.int().min(1).max(20),
    /** Null for a can that was closed only to try the machine. */
    serial: z.int().positive().nullable(),
    containerKindId: z.uuid(),
    how: z.enum(['visual', 'teardown', 'squeeze']),
    looksGood: z.boolean(),
    measures: measures.nullable().default(null),
    /** Why it was looked at now. */
    occasion: z.enum(SEAL_OCCASIONS).default('due'),
    gauge: z.string().trim().max(60).default(''),
    note,
    /** When it was made, where it waited on a phone or a paper; left out it is now. */
    checkedAt: instant.optional(),
  })
  .refine(({ how, measures: read }) => how !== 'teardown' || read !== null, {
    path: ['measures'],
    message: 'A teardown is measured: width, thickness, countersink and both hooks.',
  });
export type CheckWish = z.infer<typeof checkWish>;

export const settling = z.strictObject({
  containerIds: z.array(z.uuid()).min(1).max(500),
  disposition: z.enum(['re-can', 'eat-now', 'release', 'discard']),
  note: z.string().trim().min(1, 'Say what was found.').max(500),
});
export type Settling = z.infer<typeof settling>;

export const reCanning = z
  .strictObject({
    containers: z
      .array(z.strictObject({ containerId: z.uuid(), spilledGrams: gramsOrNone.default(0) }))
      .min(1, 'Say which containers.')
      .max(100),
    containerKindId: z.uuid(),
    treatment: z.enum(TREATMENT_CODES),
    note,
    /** When it was done, where it waited on a phone; left out it is now. */
    doneAt: instant.optional(),
  })
  .refine(({ containers }) => new Set(containers.map((one) => one.containerId)).size === containers.length, {
    path: ['containers'],
    message: 'Each container stands once.',
  });
export type ReCanning = z.infer<typeof reCanning>;

export const undoing = z.strictObject({ reason });
