import type { Context } from '../../platform/context.ts';
import type { PageQuery } from '../../platform/paging.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listDutiesHeld, listPersons } from './queries.ts';

/** Everyone in the storehouse, with household and duties. */
export function readPersons(context: Context, page: PageQuery) {
  const { storehouseId } = context.actor;
  const { after, limit } = page;
  return withTx(context, async (tx) => {
    const rows = await listPersons(tx, storehouseId, { after, limit });
    const held = await listDutiesHeld(
      tx,
      storehouseId,
      rows.map((row) => row.person.personId),
    );
    return rows.map((row) => ({
      ...row,
      duties: held.filter(({ personId }) => personId === row.person.personId).map(({ duty }) => duty),
    }));
  });
}
