import { api, ask } from '../../api/client.ts';
import type { PickUp } from './fetchers.ts';

const QUARTER_MS = 900_000;

/** An appointment for a household that had none and stands at the door, or stood there when a pen signed. */
export async function comeNow(
  param: { storehouse: string; buy: string },
  householdId: string,
): Promise<PickUp> {
  const now = Date.now();
  const [startsAt, endsAt] = [now, now + QUARTER_MS].map((at) => new Date(at).toISOString());
  const json = { householdId, startsAt: startsAt ?? '', endsAt: endsAt ?? '' };
  return ask(api.storehouses[':storehouse'].buys[':buy']['pick-ups'].$post({ param, json }));
}
