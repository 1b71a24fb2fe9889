import { z } from 'zod';
import { DUTIES } from '../../platform/actor.ts';

export const dutyName = z.enum(DUTIES);
export const dutyWish = z.strictObject({ duty: dutyName });
