import type { HoldOfBag } from './queries.ts';

/** `ended` says how a hold ended: released by two, or with the bag, which was thrown away or went back. */
export function presentHold({ hold, bag }: HoldOfBag) {
  const ended = hold.releasedBy === null ? 'with-the-bag' : 'released';
  return {
    id: hold.holdId,
    bagId: hold.bagId,
    bagCode: bag.bagCode,
    bagNo: bag.bagNo,
    buyId: bag.buyId,
    reason: hold.reason,
    heldBy: hold.heldBy,
    heldAt: hold.heldAt.toISOString(),
    finding: hold.finding,
    releaseAskedBy: hold.releaseAskedBy,
    releasedBy: hold.releasedBy,
    endedAt: hold.releasedAt?.toISOString() ?? null,
    ended: hold.releasedAt === null ? null : ended,
  };
}
