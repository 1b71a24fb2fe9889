import { z } from 'zod';

/** A mass of a food, and its moisture in tenths of a per cent when somebody measured it. */
export const waysQuery = z.strictObject({
  food: z.uuid(),
  grams: z.coerce.number().int().min(1).max(100_000_000),
  moistureTenths: z.coerce.number().int().min(0).max(1000).optional(),
});
export type WaysQuery = z.infer<typeof waysQuery>;

const SUPPLY_CODES = [
  'absorber-20',
  'absorber-50',
  'absorber-100',
  'absorber-200',
  'absorber-300',
  'absorber-500',
  'absorber-1000',
  'absorber-2000',
  'dry-ice-kilogram',
] as const;

export const supplyPriceWish = z.strictObject({
  supplyCode: z.enum(SUPPLY_CODES),
  priceMinorUnits: z.int().min(0).max(1_000_000_000).nullable(),
});
export type SupplyPriceWish = z.infer<typeof supplyPriceWish>;
