import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const packingApi = api.storehouses[':storehouse']['packing-sessions'];
export const sessionApi = packingApi[':session'];

export type OfSession = { readonly storehouse: string; readonly session: string };
type Body<Call extends { $get: unknown }> = Exclude<InferResponseType<Call['$get'], 200>, string>;
export type SessionFacts = Body<typeof packingApi>['sessions'][number];
export type SessionPage = Body<typeof sessionApi>;
export type PlanBody = Body<(typeof sessionApi)['plan']>;
export type LinePlan = PlanBody['lines'][number];
export type LogBody = Body<(typeof sessionApi)['log']>;
export type LoggedBag = LogBody['bags'][number];
export type Bringable = Body<(typeof sessionApi)['bringable-bags']>['bags'][number];
export type LoggedPour = LogBody['pours'][number];

export const sessionsQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['packing', param],
    queryFn: () => ask(packingApi.$get({ param, query: { limit: 'all' } })),
  });

export const sessionQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'session'],
    queryFn: () => ask(sessionApi.$get({ param })),
  });

export const freeTimesQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'free-times'],
    queryFn: () => ask(sessionApi['free-times'].$get({ param })),
  });

export const planQuery = (param: OfSession, people?: number) =>
  queryOptions({
    queryKey: ['packing', param, 'plan', people],
    queryFn: () =>
      ask(sessionApi.plan.$get({ param, query: people === undefined ? {} : { people: String(people) } })),
    placeholderData: (before) => before,
  });

/** A hall has no signal to spare: what was read stays readable for the day. */
export const logQuery = (param: OfSession) =>
  queryOptions({
    gcTime: 86_400_000,
    queryKey: ['packing', param, 'log'],
    queryFn: () => ask(sessionApi.log.$get({ param, query: {} })),
  });

export const bringableQuery = (param: OfSession) =>
  queryOptions({
    gcTime: 86_400_000,
    queryKey: ['packing', param, 'bringable'],
    queryFn: () => ask(sessionApi['bringable-bags'].$get({ param })),
  });

export const blankLabelsQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'labels'],
    queryFn: () => ask(sessionApi.labels.$get({ param })),
  });

/** Whatever a change of a session makes old. */
export const ofSession = (param: OfSession) => ['packing', param] as const;
