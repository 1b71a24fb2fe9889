import { balanceOf } from '../balance.ts';
import type { AuditFinding, AuditInput } from './audit-rows.ts';
import { finding } from './finding.ts';

/** Invariant 4: what a packing day cost is shared out when it is settled. Units: as told. Errors: none. Source: job map 15. */
export function sessionFindings({ sessions, accounts }: AuditInput): AuditFinding[] {
  const ended = new Set(
    sessions.flatMap(({ sessionId, stage }) =>
      stage === 'settled' || stage === 'called-off' ? [sessionId] : [],
    ),
  );
  const open = accounts.filter(
    (account) =>
      account.kind === 'session_clearing' &&
      account.causeId !== null &&
      ended.has(account.causeId) &&
      balanceOf(account) !== 0,
  );
  return [
    finding({
      number: 4,
      key: 'ended-sessions',
      invariant: 'Clearing of every settled or called-off packing day is zero',
      holds: open.length === 0,
      counts: [
        [ended.size, 'packing days ended'],
        [open.length, 'accounts not at zero'],
      ],
    }),
  ];
}
