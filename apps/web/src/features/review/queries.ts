import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export const auditQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['books', param, 'audit'], queryFn: () => ask(inside.audit.$get({ param })) });

export const tracesQuery = (param: InHouse, seed: string) =>
  queryOptions({
    queryKey: ['books', param, 'traces', seed],
    queryFn: () => ask(inside.traces.$get({ param, query: { seed } })),
    enabled: seed !== '',
  });

export const commonStockQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'common-stock'],
    queryFn: () => ask(inside['common-stock'].$get({ param, query: {} })),
  });

export const periodsQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['books', param, 'periods'], queryFn: () => ask(inside.periods.$get({ param })) });

/** As JSON; the same address also gives the text that the digest is reckoned from. */
type DigestBody = { readonly digestSha256: string | null; readonly holds: boolean };

export const digestQuery = (param: InHouse & { readonly throughOn: string }) =>
  queryOptions({
    queryKey: ['books', param, 'digest'],
    queryFn: () => ask(inside.periods[':throughOn'].digest.$get({ param, query: {} })) as Promise<DigestBody>,
  });

export const yearEndQuery = (param: InHouse, throughOn: string) =>
  queryOptions({
    queryKey: ['books', param, 'year-end', throughOn],
    queryFn: () => ask(inside['year-ends'].preview.$get({ param, query: { throughOn } })),
    enabled: throughOn !== '',
  });

export const closePreviewQuery = (param: InHouse, throughOn: string) =>
  queryOptions({
    queryKey: ['books', param, 'close-preview', throughOn],
    queryFn: () => ask(inside.periods.preview.$get({ param, query: { throughOn } })),
    enabled: throughOn !== '',
  });

type Days = { readonly fromOn: string; readonly toOn: string };

export const exceptionsQuery = (param: InHouse, days: Days) =>
  queryOptions({
    queryKey: ['books', param, 'exceptions', days],
    queryFn: () => ask(inside.exceptions.$get({ param, query: days })),
  });

export const monthsOfLooksQuery = (param: InHouse, { fromOn, toOn }: Days) =>
  queryOptions({
    queryKey: ['books', param, 'months-of-looks', fromOn, toOn],
    queryFn: () => ask(inside['private-reads'].months.$get({ param, query: { from: fromOn, to: toOn } })),
  });
