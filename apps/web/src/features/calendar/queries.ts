import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { Language } from '../../text/taste.ts';

const inside = api.storehouses[':storehouse'];
export const feedsApi = inside['calendar-feeds'];

export type AppointmentBody = InferResponseType<typeof inside.appointments.$get, 200>['appointments'][number];
export type FeedBody = InferResponseType<typeof feedsApi.$get, 200>['feeds'][number];
export type NewFeedBody = InferResponseType<typeof feedsApi.$post, 201>;

/** What has a day or an hour, said in a language by the server, which says it to calendar programs too. */
export const appointmentsQuery = (param: { storehouse: string }, language: Language) => ({
  queryKey: ['appointments', param.storehouse, language],
  queryFn: () => ask(inside.appointments.$get({ param, query: { language } })),
});

export const feedsQuery = (param: { storehouse: string }) => ({
  queryKey: ['calendar-feeds', param.storehouse],
  queryFn: () => ask(feedsApi.$get({ param })),
});
