import { z } from 'zod';
import { DUTIES } from '../../platform/actor.ts';
import { bookDay } from '../money/schema.ts';

export const dutyName = z.enum(DUTIES);
/** The day on which a duty is meant to end; none takes it out again. */
export const plannedEndWish = z.strictObject({ endsOn: bookDay.nullable() });

export const dutyWish = z.strictObject({ duty: dutyName });
