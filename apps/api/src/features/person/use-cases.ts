import type { Tx } from '@sheafbook/db';
import type { Duty } from '../../platform/actor.ts';
import type { Outside } from '../../platform/context.ts';
import { insertDutyGrant } from './queries.ts';

/** Grants a duty inside the caller's transaction. The founder's first duty is granted by nobody. */
export async function grantDutyTo(
  tx: Tx,
  outside: Outside,
  grant: { storehouseId: string; personId: string; duty: Duty; grantedBy: string | null },
): Promise<void> {
  await insertDutyGrant(tx, { ...grant, grantedAt: outside.now() });
}
