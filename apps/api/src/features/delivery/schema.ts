import { z } from 'zod';
import { pen } from '../keying/schema.ts';
import { bookDay } from '../money/schema.ts';

const line = (most: number) => z.string().trim().max(most, `At most ${most} characters.`);

export const deliveryFacts = z.strictObject({
  ...pen,
  supplierId: z.uuid(),
  carrier: line(120).default(''),
  arrivedOn: bookDay,
  carrierNote: line(1000).default(''),
  /** Who counted, as written on the paper: it asks for two people. */
  countedBy: line(200).default(''),
});
export type DeliveryFacts = z.infer<typeof deliveryFacts>;

export const deliveryCounts = z.strictObject({
  ...pen,
  version: z.int().positive(),
  counts: z
    .array(
      z.strictObject({
        bagOfferId: z.uuid(),
        countedBags: z
          .int('Bags are counted in whole numbers.')
          .min(0, 'A count is 0 or more.')
          .max(100_000, 'That is more bags than a lorry carries.'),
        note: line(500).default(''),
      }),
    )
    .min(1, 'Name at least one bag size that was counted.')
    .max(200),
});
export type DeliveryCounts = z.infer<typeof deliveryCounts>;

export const deliveryEnd = z.strictObject({ version: z.int().positive() });
