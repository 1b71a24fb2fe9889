import { useQuery, useQueryClient } from '@tanstack/react-query';
import { newKey } from '../../api/new-key.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { joined } from '../../ui/loaded.tsx';
import type { Bag, Delivery, Sheet, SheetLine } from './landing-body.ts';
import { bagsQuery, deliveriesQuery, landingQuery } from './queries.ts';
import { type Act, isOfDelivery, type Queue } from './queue.ts';
import { drain } from './send.ts';
import { placeOf, tell, useQueue, useReached } from './store.ts';

/** The floor of a landing: what the book has, and what this phone has written down and not sent yet. */
export function useLanding(buy: string) {
  const { storehouse, personId } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy };
  const place = placeOf({ ...param, personId });
  const queue = useQueue(place);
  const isReached = useReached(place);
  const sheet = useQuery(landingQuery(param));
  const deliveries = useQuery(deliveriesQuery(param));
  const bags = useQuery(bagsQuery(param));
  const waits = queue.written.length > 0;
  useSending(place, waits, () => drain({ place, param, queries }));
  return {
    param,
    place,
    queue,
    isReached,
    reading: joined(sheet, joined(deliveries, bags)),
    /** Kept first, sent after: a phone that dies between the two loses nothing. */
    write(act: Act): void {
      tell(place, { type: 'wrote', id: newKey(), at: new Date().toISOString(), act });
      void drain({ place, param, queries });
    },
    mend(id: string, act: Act): void {
      tell(place, { type: 'mended', id, newId: newKey(), act });
      void drain({ place, param, queries });
    },
    drop(id: string): void {
      tell(place, { type: 'dropped', id });
      void drain({ place, param, queries });
    },
  };
}
export type Landing = ReturnType<typeof useLanding>;

/** The lorry that stands there: the last one that is not finished, in the book or only on this phone. */
export function openDelivery(queue: Queue, deliveries: readonly Delivery[]): OpenLorry | null {
  const written = queue.written.findLast(({ act }) => act.kind === 'delivery');
  if (written?.act.kind === 'delivery')
    return {
      id: written.act.localId,
      supplierId: written.act.facts.supplierId,
      version: null,
      isWaiting: true,
    };
  const open = deliveries.findLast(({ finishedAt }) => finishedAt === null);
  return open ? { id: open.id, supplierId: open.supplierId, version: open.version, isWaiting: false } : null;
}
export type OpenLorry = {
  readonly id: string;
  readonly supplierId: string;
  readonly version: number | null;
  readonly isWaiting: boolean;
};

/** One bag size on the floor of this lorry: counted, numbered and still waiting on this phone. */
export type Floor = {
  readonly line: SheetLine;
  /** Of this lorry; null until it was counted. */
  readonly counted: number | null;
  readonly bags: readonly Bag[];
  readonly waiting: readonly WaitingBag[];
};
type WaitingBag = {
  readonly id: string;
  readonly act: Extract<Act, { kind: 'bag' }>;
  readonly refusal: string | null;
};

export function floorOf(
  line: SheetLine,
  lorry: OpenLorry | null,
  known: { queue: Queue; deliveries: readonly Delivery[]; bags: readonly Bag[] },
): Floor {
  const { queue, deliveries, bags } = known;
  const { bagOfferId } = line;
  const ofLorry = lorry ? queue.written.filter(({ act }) => isOfDelivery(queue, act, lorry.id)) : [];
  const typed = ofLorry
    .flatMap(({ act }) => (act.kind === 'counts' ? act.counts : []))
    .findLast((count) => count.bagOfferId === bagOfferId);
  const booked = deliveries
    .find(({ id }) => id === lorry?.id)
    ?.counts.find((count) => count.bagOfferId === bagOfferId);
  return {
    line,
    counted: typed?.countedBags ?? booked?.countedBags ?? null,
    bags: bags
      .filter((bag) => bag.bagOfferId === bagOfferId && bag.deliveryId === lorry?.id)
      .toSorted((a, b) => a.bagNo - b.bagNo),
    waiting: ofLorry.flatMap(({ id, act, refusal }) =>
      act.kind === 'bag' && act.bag.bagOfferId === bagOfferId
        ? [{ id, act, refusal: refusal?.words ?? null }]
        : [],
    ),
  };
}

/** What the supplier of a lorry sent: the sizes of its orders that stand. */
export function linesOf(sheet: Sheet, supplierId: string): SheetLine[] {
  const orders = sheet.orders.filter((order) => order.supplierId === supplierId && !order.isCancelled);
  return sheet.lines.filter(({ orderNo }) => orders.some((order) => order.orderNo === orderNo));
}
