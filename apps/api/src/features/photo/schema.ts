import { z } from 'zod';
import { pageQuery } from '../../platform/paging.ts';

export const MOST_PHOTO_BYTES = 2 * 1024 * 1024;

const picture = {
  /** A JPEG of 2 MB at most, as base64 text. */
  contentBase64: z
    .base64('Send the photo as base64 text.')
    .min(4)
    .max(Math.ceil(MOST_PHOTO_BYTES / 3) * 4, 'A photo is 2 MB at most. Make it smaller first.'),
  note: z.string().trim().max(500).default(''),
};

export const photoWish = z.strictObject({
  /** The one thing that the photo shows. */
  shows: z.enum(['bag', 'claim', 'delivery']),
  thingId: z.uuid(),
  ...picture,
});
export type PhotoWish = z.infer<typeof photoWish>;

export const photoQuery = pageQuery.extend({
  after: z.uuid().optional(),
  shows: z.enum(['bag', 'claim', 'delivery']).optional(),
  thingId: z.uuid().optional(),
});
export type PhotoQuery = z.infer<typeof photoQuery>;

export const equipmentPhotoWish = z
  .strictObject({
    /** The part that it shows, where it shows one. */
    partId: z.uuid().optional(),
    /** The loan whose going out or coming back it shows. */
    loan: z.strictObject({ loanId: z.uuid(), moment: z.enum(['out', 'back']) }).optional(),
    ...picture,
  })
  .refine(({ partId, loan }) => partId === undefined || loan === undefined, {
    path: ['partId'],
    message: 'A photo shows a part as it is, or a loan.',
  });
export type EquipmentPhotoWish = z.infer<typeof equipmentPhotoWish>;

export const equipmentPhotoQuery = z.strictObject({ loanId: z.uuid().optional() });
export type EquipmentPhotoQuery = z.infer<typeof equipmentPhotoQuery>;
