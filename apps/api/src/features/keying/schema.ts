import { isWallTime } from '@sheafbook/units';
import { z } from 'zod';

/** What a pen wrote first and somebody keys in now. Each command that a sheet of paper can stand for takes it. */
export const pen = {
  /** When it was written: an instant, or day and hour on the wall of the storehouse. */
  writtenAt: z
    .string()
    .refine(
      (text) => isWallTime(text) || z.iso.datetime({ offset: true }).safeParse(text).success,
      'Day and hour read like 2026-10-17T09:40.',
    )
    .optional(),
  /** The code of the paper that it was written on. */
  paperCode: z.string().trim().max(40, 'The code of a paper is shorter than that.').optional(),
};

export type Pen = { readonly writtenAt?: string | undefined; readonly paperCode?: string | undefined };

/** The pen's part of a command taken off it, so that the rest is what the command is about. */
export function apart<Wish extends Pen>({ writtenAt, paperCode, ...rest }: Wish) {
  return { pen: { writtenAt, paperCode }, rest };
}
