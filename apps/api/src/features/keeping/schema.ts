import { POSSIBLE_TENTHS } from '@sheafbook/keeping';
import { isDay } from '@sheafbook/units';
import { z } from 'zod';

const day = z.string().refine(isDay, 'There is no such day; one looks like 2026-10-24.');
const tenths = z
  .int()
  .min(POSSIBLE_TENTHS.least, 'No place for food is colder than −60 °C (−76 °F).')
  .max(POSSIBLE_TENTHS.most, 'No place for food is warmer than 70 °C (158 °F).');

/** Containers that stand at one place since one day. No place is one that the book does not know, told as warm as somebody says. */
export const moveWish = z
  .strictObject({
    containerIds: z
      .array(z.uuid())
      .min(1, 'Name a container at least.')
      .max(500, 'Move 500 containers at a time at most.')
      .refine((ids) => new Set(ids).size === ids.length, 'Name each container once.'),
    placeId: z.uuid().nullable(),
    movedOn: day.optional(),
    toldTenths: tenths.nullable().default(null),
  })
  .refine(({ placeId, toldTenths }) => placeId === null || toldTenths === null, {
    path: ['toldTenths'],
    message: 'A place has a record of its own; say how warm it was there.',
  });
export type MoveWish = z.infer<typeof moveWish>;

/** One's own places and stock, or the common stock's. */
export const hotPlacesQuery = z.strictObject({ of: z.enum(['household', 'common']).default('household') });
export type HotPlacesQuery = z.infer<typeof hotPlacesQuery>;
