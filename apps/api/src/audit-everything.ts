import { administer } from '@sheafbook/db';
import { auditText, presentAudit } from './features/audit/present.ts';
import { auditAsOperator } from './features/audit/use-cases.ts';
import type { Outside } from './platform/context.ts';

/**
 * Audits every storehouse of a database, each behind its own policies as the app sees it; only the list of storehouses
 * is read as administrator, since no storehouse sees another.
 */
export async function auditEverything(outside: Outside, adminUrl: string) {
  const storehouses = await administer(
    adminUrl,
    (sql) =>
      sql<{ id: string }[]>`select storehouse_id as id from book.storehouse order by name, storehouse_id`,
  );
  const audits = [];
  for (const { id } of storehouses) audits.push(await auditAsOperator(outside, id));
  return {
    holds: audits.every((audit) => audit.holds),
    json: audits.map((audit) => ({ id: audit.storehouseId, ...presentAudit(audit) })),
    text: audits.length === 0 ? 'There is no storehouse here yet.' : audits.map(auditText).join('\n\n'),
  };
}
