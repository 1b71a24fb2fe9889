import type { PackingSessionRow } from '@sheafbook/db/tables';
import { Problem } from '../../platform/problem.ts';

export type SessionStage = 'open' | 'running' | 'signed' | 'settled' | 'called-off';

const WHY: Readonly<Record<SessionStage, string>> = {
  open: 'The session has not begun yet.',
  running: 'The session has begun.',
  signed: 'The session is over and signed.',
  settled: 'The session is over and settled.',
  'called-off': 'The session was called off.',
};

export function requireSessionStage(session: PackingSessionRow, ...allowed: readonly SessionStage[]): void {
  const stage = session.stage as SessionStage;
  if (!allowed.includes(stage)) throw new Problem('session-stage-wrong', { detail: WHY[stage], stage });
}
