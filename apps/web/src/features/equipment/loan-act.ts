import type { InferRequestType } from 'hono/client';
import { ask } from '../../api/client.ts';
import { inside } from './queries.ts';

type OutBody = InferRequestType<(typeof inside.bookings)[':booking']['loan']['$post']>['json'];
type OnBody = InferRequestType<(typeof inside.bookings)[':booking']['relay']['$post']>['json'];
type BackBody = InferRequestType<(typeof inside.loans)[':loan']['return']['$post']>['json'];

/** Something that happened at the shed door. `typed` is the form as it stood, so that a refused one opens again as it was. */
export type LoanAct = {
  readonly itemId: string;
  readonly thing: string;
  /** The booking or the loan. */
  readonly of: string;
  readonly typed: unknown;
} & (
  | { readonly kind: 'out'; readonly json: OutBody }
  | { readonly kind: 'on'; readonly json: OnBody }
  | { readonly kind: 'back'; readonly json: BackBody }
);

/** Sends an act with the key that makes it count once, and the hour at which it was written down. */
export function sendLoanAct(storehouse: string, act: LoanAct, key: string): Promise<unknown> {
  const headers = { 'Idempotency-Key': key };
  if (act.kind === 'back')
    return ask(
      inside.loans[':loan'].return.$post(
        { param: { storehouse, loan: act.of }, json: act.json },
        { headers },
      ),
    );
  const param = { storehouse, booking: act.of };
  return act.kind === 'on'
    ? ask(inside.bookings[':booking'].relay.$post({ param, json: act.json }, { headers }))
    : ask(inside.bookings[':booking'].loan.$post({ param, json: act.json }, { headers }));
}
