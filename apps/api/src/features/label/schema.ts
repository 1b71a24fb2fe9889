import { readCode } from '@sheafbook/units';
import { z } from 'zod';

export const MOST_LABELS = 500;

/** The code of a container as it stands on its label; a slip of the eye or the finger is caught by its check. */
export const containerCode = z.string().transform((text, context) => {
  const code = readCode(text);
  if (code === undefined) context.addIssue(`${text} is no code of a container; look at it again.`);
  return code ?? '';
});

/** Codes of containers as printed or typed, separated by commas; without any it is everything that holds something. */
export const codeList = z
  .string()
  .max(10_000)
  .transform((text) => text.split(',').filter((code) => code.trim() !== ''))
  .pipe(
    z
      .array(containerCode)
      .max(MOST_LABELS, 'Print 500 labels at a time at most.')
      .refine((codes) => new Set(codes).size === codes.length, 'Name each container once.'),
  );

export const labelQuery = z.strictObject({ codes: codeList.default([]) });
export type LabelQuery = z.infer<typeof labelQuery>;
