import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';

type Household = (typeof api.storehouses)[':storehouse']['households'][':household'];
export type HouseholdStatement = Exclude<InferResponseType<Household['statement']['$get'], 200>, string>;
