import type { InferRequestType } from 'hono/client';
import type { api } from '../../api/client.ts';
import type { TareWeighed } from '../tare/queries.ts';
import type { Bringable, LoggedBag, sessionApi } from './queries.ts';

/** What a phone writes down at the line. */
export type LogAct =
  | { readonly kind: 'bring'; readonly json: Brought; readonly bag: Bringable }
  | { readonly kind: 'left'; readonly json: Left; readonly bag: NamedBag }
  | { readonly kind: 'pour'; readonly json: InferRequestType<typeof sessionApi.pours.$post>['json'] }
  | { readonly kind: 'loss'; readonly json: InferRequestType<typeof sessionApi.losses.$post>['json'] }
  | { readonly kind: 'pack'; readonly json: PackOpened }
  | { readonly kind: 'shut'; readonly json: PackShut }
  | { readonly kind: 'queue'; readonly json: QueueTold }
  | { readonly kind: 'check'; readonly json: CheckMade }
  | { readonly kind: 'here'; readonly slot: string; readonly household: string; readonly json: Arrived }
  | { readonly kind: 'hand'; readonly person: string; readonly name: string; readonly json: HandTicked }
  | ({ readonly kind: 'undo' } & TakenBack)
  | { readonly kind: 're-can'; readonly json: ReCanned }
  | { readonly kind: 'tare'; readonly json: TareWeighed; readonly named: NamedKind };
/** What takes a pour back: by its entry, or, so long as that waits on this phone itself, by the key under which it does. */
type TakenBack = {
  readonly entry: string;
  readonly bag: { readonly bagId: string; readonly householdId: string };
  readonly containers: number;
  readonly grams: number;
  readonly reason: string;
};
type Arrived = InferRequestType<(typeof sessionApi.slots)[':slot']['arrival']['$put']>['json'];
type HandTicked = InferRequestType<(typeof sessionApi.hands)[':person']['$put']>['json'];
type ReCanned = InferRequestType<(typeof api)['storehouses'][':storehouse']['re-cannings']['$post']>['json'];
type ChecksApi = (typeof api)['storehouses'][':storehouse']['seal-checks'];
/** A check of a seal, with the hour at which it was made. */
export type CheckMade = InferRequestType<ChecksApi['$post']>['json'];
type Brought = InferRequestType<typeof sessionApi.bags.$post>['json'];
type Left = InferRequestType<typeof sessionApi.left.$put>['json'];
/** What a bag is called, kept with what is written of it. */
export type NamedBag = Pick<LoggedBag, 'food' | 'household' | 'bagNo'>;
/** What a kind of container is called, kept with what is written of it. */
type NamedKind = { readonly nameEn: string; readonly nameEs: string };
/** How many wait in front of a station. */
export type QueueTold = InferRequestType<typeof sessionApi.queues.$post>['json'];
type PackOpened = InferRequestType<(typeof sessionApi)['absorber-packs']['$post']>['json'];
export type PackShut = InferRequestType<
  (typeof sessionApi)['absorber-packs'][':pack']['shutting']['$post']
>['json'];
