import { expect, test } from 'vitest';
import { aBook } from '../../test/a-book.ts';
import { lineTimeCharged, sessionSharedOut } from '../events/session-events.ts';
import type { AuditSession } from './audit-rows.ts';
import { sessionFindings } from './session-checks.ts';

const cost = { drafts: lineTimeCharged({ sessionId: 'autumn', amountMinorUnits: 150 }) };
const shared = (amountMinorUnits: number) => ({
  drafts: sessionSharedOut({ sessionId: 'autumn', charges: [{ householdId: 'dell', amountMinorUnits }] }),
});
const look = (stage: AuditSession['stage'], entries: Parameters<typeof aBook>[0]) =>
  sessionFindings(aBook(entries, {}, { sessions: [{ sessionId: 'autumn', stage }] }))[0];

test('a packing day that is settled to the cent holds', () => {
  expect(look('settled', [cost, shared(150)])).toMatchObject({
    ...{ number: 4, key: 'ended-sessions', holds: true },
    figure: 'packing days ended: 1, accounts not at zero: 0',
  });
});

test.for(['settled', 'called-off'] as const)('a cent that is left of a day that is %s breaks', (stage) => {
  for (const charged of [149, 151])
    expect(look(stage, [cost, shared(charged)])).toMatchObject({
      holds: false,
      figure: 'packing days ended: 1, accounts not at zero: 1',
    });
});

test('what a day that is not settled has cost so far is no breach', () => {
  for (const stage of ['open', 'running', 'signed'] as const)
    expect(look(stage, [cost])).toMatchObject({ holds: true, figure: expect.stringContaining('ended: 0') });
});
