/** What is written down of a lorry, as its papers would have it. */
export type DeliveryFacts = {
  readonly supplierId: string;
  readonly carrier: string;
  readonly arrivedOn: string;
  readonly countedBy: string;
  readonly carrierNote: string;
};

export type Condition = 'dry' | 'torn' | 'wet' | 'infested' | 'odour' | 'wrong';
export type Decision = 'accepted' | 'accepted-with-note' | 'refused';

/** One bag as the scale and the eyes found it. Units: grams. */
export type BagReading = {
  readonly bagOfferId: string;
  readonly supplierMark: string;
  readonly grossGrams?: number;
  readonly tareGrams?: number;
  readonly condition: Condition;
  readonly decision: Decision;
  readonly note: string;
  readonly isExemptFromWeighing: boolean;
};

/** Something that happened at the lorry. A delivery may be named by the id that this phone gave it; `unit` is the scale's. */
export type Act =
  | { readonly kind: 'delivery'; readonly localId: string; readonly facts: DeliveryFacts }
  | { readonly kind: 'counts'; readonly deliveryId: string; readonly counts: readonly Count[] }
  | {
      readonly kind: 'bag';
      readonly deliveryId: string;
      readonly bag: BagReading;
      readonly unit: 'lb' | 'kg';
    }
  | {
      readonly kind: 'weight';
      readonly bagId: string;
      readonly bagCode: string;
      readonly weight: Reweighing;
      readonly unit: 'lb' | 'kg';
    };

export type Count = { readonly bagOfferId: string; readonly countedBags: number };
export type Reweighing = {
  readonly version: number;
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly reason: string;
  readonly moisture?: { readonly wasTenths: number; readonly isTenths: number };
};
export type Refusal = { readonly code: string; readonly words: string };

/** An act with the key that makes it count once, however often it is sent. */
export type Written = {
  readonly id: string;
  readonly at: string;
  readonly act: Act;
  readonly refusal: Refusal | null;
};

/** Oldest first. `ids` leads from the ids of this phone to those of the book. */
export type Queue = { readonly written: readonly Written[]; readonly ids: Readonly<Record<string, string>> };

export const EMPTY_QUEUE: Queue = { written: [], ids: {} };

export type Event =
  | { readonly type: 'wrote'; readonly id: string; readonly at: string; readonly act: Act }
  | { readonly type: 'sent'; readonly id: string; readonly bookId?: string }
  | { readonly type: 'refused'; readonly id: string; readonly refusal: Refusal }
  /** A refused act, put right in its own place; its new key makes it a new command. */
  | { readonly type: 'mended'; readonly id: string; readonly newId: string; readonly act: Act }
  | { readonly type: 'dropped'; readonly id: string };

/** The queue after an event. Nothing leaves it but by being sent, or thrown away by hand. */
export function step(queue: Queue, event: Event): Queue {
  const { written, ids } = queue;
  const without = written.filter(({ id }) => id !== event.id);
  const put = (change: (one: Written) => Written) =>
    written.map((one) => (one.id === event.id ? change(one) : one));
  switch (event.type) {
    case 'wrote': {
      if (without.length < written.length) return queue;
      const { id, at, act } = event;
      return { written: [...written, { id, at, act, refusal: null }], ids };
    }
    case 'sent': {
      const sent = written.find(({ id }) => id === event.id);
      const isNamed = sent?.act.kind === 'delivery' && event.bookId !== undefined;
      return { written: without, ids: isNamed ? { ...ids, [localIdOf(sent.act)]: event.bookId } : ids };
    }
    case 'refused':
      return { written: put((one) => ({ ...one, refusal: event.refusal })), ids };
    case 'mended':
      return { written: put(({ at }) => ({ id: event.newId, at, act: event.act, refusal: null })), ids };
    case 'dropped':
      return mayDrop(queue, event.id) ? { written: without, ids } : queue;
  }
}

/** Whether something waits for somebody to put it right or to throw it away. */
export const isRefused = ({ written }: Queue): boolean => written.some(({ refusal }) => refusal !== null);

const localIdOf = (act: Act): string => (act.kind === 'delivery' ? act.localId : '');

/** A lorry whose counts or bags still wait can be put right, but not thrown away under them. */
export function mayDrop({ written }: Queue, id: string): boolean {
  const act = written.find((one) => one.id === id)?.act;
  if (act?.kind !== 'delivery') return act !== undefined;
  return !written.some((one) => 'deliveryId' in one.act && one.act.deliveryId === act.localId);
}

/**
 * What is sent next: the oldest, and nothing past one that was refused, so that bags get their numbers in the order in
 * which they stood on the scale.
 */
export function nextToSend({ written, ids }: Queue): Written | undefined {
  const [first] = written;
  if (!first || first.refusal) return undefined;
  const { act } = first;
  if (!('deliveryId' in act)) return first;
  return { ...first, act: { ...act, deliveryId: ids[act.deliveryId] ?? act.deliveryId } };
}

/** Whether an act is about this lorry, by either of its ids. */
export const isOfDelivery = ({ ids }: Queue, act: Act, deliveryId: string): boolean =>
  'deliveryId' in act && (ids[act.deliveryId] ?? act.deliveryId) === deliveryId;
