import { z } from 'zod';

export const traceQuery = z.strictObject({
  /** Any text; the same seed draws the same codes on anyone's machine. */
  seed: z
    .string()
    .trim()
    .min(1, 'Write a seed, such as the day and two names.')
    .max(200, 'A seed has 200 characters at most.'),
  format: z.enum(['json', 'csv']).default('json'),
});

/** What a way can begin at. A mark is named by any lot that carries it, a kitchen by its household, a place by what stands there. */
export const FOUND_KINDS = [
  'bag',
  'container',
  'lot',
  'mark',
  'delivery',
  'session',
  'manifest',
  'kitchen',
  'place',
] as const;
export type FoundKind = (typeof FOUND_KINDS)[number];

export const wayQuery = z
  .strictObject({
    /** A code of ours, a supplier's mark, the name of a packing day or of a place of the store’s, or the number of an order or manifest. */
    code: z.string().trim().min(1, 'Type a code.').max(120, 'A code has 120 characters at most.').optional(),
    kind: z.enum(FOUND_KINDS).optional(),
    id: z.uuid().optional(),
    /** A recall opens what households did with their parts; each finds in its record that somebody looked. */
    task: z.literal('recall').optional(),
  })
  .refine(({ code, id }) => (code === undefined) !== (id === undefined), {
    path: ['code'],
    message: 'Type a code, or name one thing.',
  })
  .refine(({ kind, id }) => (kind === undefined) === (id === undefined), {
    path: ['kind'],
    message: 'Say what kind of thing it is.',
  });
export type WayQuery = z.infer<typeof wayQuery>;
