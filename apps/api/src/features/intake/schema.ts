import { INTAKE_ANSWERS } from '@sheafbook/keeping';
import { z } from 'zod';
import { bringIn } from '../container/schema.ts';

const of = z.enum(['household', 'common']);
const note = z.string().trim().max(500).default('');

/** Stock that somebody gives, with what is known of it. `donor` is kept apart and printed nowhere. */
export const intakeWish = bringIn.omit({ originNote: true }).extend({
  of,
  answers: z.strictObject({
    packedBy: z.enum(INTAKE_ANSWERS.packedBy),
    packedHow: z.enum(INTAKE_ANSWERS.packedHow),
    summers: z.enum(INTAKE_ANSWERS.summers),
    harm: z.enum(INTAKE_ANSWERS.harm),
    pests: z.enum(INTAKE_ANSWERS.pests),
    opened: z.enum(INTAKE_ANSWERS.opened),
  }),
  mark: z.string().trim().max(120).default(''),
  allergensMet: z.string().trim().max(300).default(''),
  donor: z.string().trim().min(1, 'Say who gave it, or “unknown”.').max(200),
  note,
});
export type IntakeWish = z.infer<typeof intakeWish>;

export const intakeQuery = z.strictObject({ of: of.default('household') });
export type IntakeQuery = z.infer<typeof intakeQuery>;

export const donorReadingWish = z.strictObject({
  purpose: z.string().trim().min(1, 'Say what for; it is written down.').max(300),
});
