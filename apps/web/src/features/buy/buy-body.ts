import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';

type BuyRoutes = (typeof api.storehouses)[':storehouse']['buys'][':buy'];
export type BuyPage = InferResponseType<BuyRoutes['$get'], 200>;
export type BuyLineBody = BuyPage['lines'][number];
export type Pledges = InferResponseType<BuyRoutes['pledges']['$get'], 200>;
export type OwnPledge = Pledges['own'][number];
export type Fill = InferResponseType<BuyRoutes['fill']['$get'], 200>;
export type FillLine = Fill['lines'][number];
export type Quote = Exclude<InferResponseType<BuyRoutes['quotes']['$get'], 200>, string>['quotes'][number];
export type Offer = Quote['offers'][number];
export type Preview = InferResponseType<BuyRoutes['preview']['$post'], 200>;
export type PickUpsBody = Exclude<InferResponseType<BuyRoutes['pick-ups']['$get'], 200>, string>;
