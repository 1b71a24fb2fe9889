import { z } from 'zod';

export const sessionEquipmentWish = z.strictObject({ itemId: z.uuid() });
export type SessionEquipmentWish = z.infer<typeof sessionEquipmentWish>;
