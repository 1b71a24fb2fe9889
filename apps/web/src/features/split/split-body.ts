import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';

type OfBuy = (typeof api.storehouses)[':storehouse']['buys'][':buy'];
export type Split = Exclude<InferResponseType<OfBuy['splits']['$get'], 200>, string>['splits'][number];
export type Share = Split['shares'][number];
export type Comparison = InferResponseType<OfBuy['lines'][':line']['split-comparison']['$get'], 200>;
export type Simulated = InferResponseType<
  (typeof api.storehouses)[':storehouse']['split-simulation']['$get'],
  200
>['splits'][number];
export type RuleRun = Comparison['rules'][number];
export type Rule = RuleRun['rule'];
