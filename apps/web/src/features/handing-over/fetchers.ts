import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';
import type { PickUpsBody } from '../buy/buy-body.ts';

type OfBuy = (typeof api.storehouses)[':storehouse']['buys'][':buy'];
export type Uncollected = InferResponseType<OfBuy['uncollected']['$get'], 200>;
export type Piece = PickUpsBody['waiting'][number];
export type PickUp = PickUpsBody['pickUps'][number];

/** One household at the door: what waits for it, when it comes, and what it has fetched. */
export type Fetcher = {
  readonly householdId: string;
  readonly name: string;
  readonly seat: number;
  readonly waiting: readonly Piece[];
  /** Its appointment that has not taken place. */
  readonly open: PickUp | null;
  readonly fetched: readonly PickUp[];
  /** The last day to fetch what waits longest; null before the buy is shared out. */
  readonly until: string | null;
};

type Known = {
  readonly waiting: readonly Piece[];
  readonly pickUps: readonly PickUp[];
  readonly households: readonly { readonly id: string; readonly name: string; readonly seat: number }[];
  readonly uncollected: Uncollected | null;
};

/** Whoever still has to fetch stands first, by the hour at which they come; then by seat. */
export function fetchersOf({ waiting, pickUps, households, uncollected }: Known): Fetcher[] {
  const ids = new Set([...waiting, ...pickUps].map(({ householdId }) => householdId));
  const fetchers = households
    .filter(({ id }) => ids.has(id))
    .map(({ id, name, seat }): Fetcher => {
      const own = pickUps.filter(({ householdId }) => householdId === id);
      const [until = null] = (uncollected?.waiting ?? [])
        .filter(({ householdId }) => householdId === id)
        .map(({ fetchUntil }) => fetchUntil)
        .toSorted();
      return {
        householdId: id,
        ...{ name, seat, until },
        waiting: waiting.filter(({ householdId }) => householdId === id),
        open: own.find(({ collectedAt }) => collectedAt === null) ?? null,
        fetched: own.filter(({ collectedAt }) => collectedAt !== null),
      };
    });
  const hourOf = ({ open }: Fetcher) => open?.startsAt ?? '9';
  const isDone = ({ waiting: left }: Fetcher) => (left.length === 0 ? 1 : 0);
  return fetchers.toSorted(
    (a, b) => isDone(a) - isDone(b) || hourOf(a).localeCompare(hourOf(b)) || a.seat - b.seat,
  );
}
