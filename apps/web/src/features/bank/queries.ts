import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inHouse = api.storehouses[':storehouse'];
export const bankApi = inHouse.bank;
export const lineApi = bankApi.lines[':bankLine'];
type InHouse = { readonly storehouse: string };

export type LinesPage = Exclude<InferResponseType<typeof bankApi.lines.$get, 200>, string>;
export type Line = LinesPage['lines'][number];
export type EntryAtBank = InferResponseType<(typeof lineApi)['entries']['$get'], 200>['entries'][number];
export type Agreement = InferResponseType<typeof bankApi.reconciliation.$get, 200>;
export type Forecast = InferResponseType<typeof bankApi.forecast.$get, 200>;
export type Preview = InferResponseType<typeof bankApi.previews.$post, 200>;
export type Columns = NonNullable<Preview['columns']>;
type SentColumns = InferRequestType<typeof bankApi.files.$post>['json']['columns'];
/** Columns as they are sent. */
export const sentColumns = (columns: Columns): SentColumns => ({
  ...columns,
  wordColumns: [...columns.wordColumns],
});
export type PostWish = InferRequestType<(typeof lineApi)['posting']['$post']>['json'];
export type Kind = PostWish['as'];
export type LineState = 'open' | 'done' | 'set-aside' | 'all';

export const bankKey = (param: InHouse) => ['bank', param] as const;

export const linesQuery = (param: InHouse, of: { state: LineState; search: string }) =>
  infiniteQueryOptions({
    queryKey: [...bankKey(param), 'lines', of],
    initialPageParam: '',
    queryFn: async ({ pageParam }): Promise<LinesPage> => {
      const after = pageParam === '' ? {} : { after: pageParam };
      const search = of.search.trim() === '' ? {} : { search: of.search.trim() };
      const query = { state: of.state, limit: '30', ...after, ...search };
      return (await ask(bankApi.lines.$get({ param, query }))) as LinesPage;
    },
    getNextPageParam: (page) => page.next ?? undefined,
  });

export type FilesPage = Exclude<InferResponseType<typeof bankApi.files.$get, 200>, string>;

export const filesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: [...bankKey(param), 'files'],
    queryFn: async () => (await ask(bankApi.files.$get({ param, query: { limit: '12' } }))) as FilesPage,
  });

export const candidatesQuery = (param: InHouse & { readonly bankLine: string }) =>
  queryOptions({
    queryKey: [...bankKey({ storehouse: param.storehouse }), 'candidates', param.bankLine],
    queryFn: () => ask(lineApi.entries.$get({ param })),
  });

export const agreementQuery = (param: InHouse) =>
  queryOptions({
    queryKey: [...bankKey(param), 'agreement'],
    queryFn: () => ask(bankApi.reconciliation.$get({ param, query: {} })),
  });

export const forecastQuery = (param: InHouse, query: { on: string; more: string }) =>
  queryOptions({
    queryKey: [...bankKey(param), 'forecast', query],
    queryFn: () => ask(bankApi.forecast.$get({ param, query })),
  });

/** Every household, supplier and buy that a line may be of, by name. */
export const partiesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['bank-parties', param],
    staleTime: 60_000,
    queryFn: async () => {
      const [households, suppliers, buys] = await Promise.all([
        ask(inHouse.households.$get({ param, query: { limit: 'all' } })),
        ask(inHouse.suppliers.$get({ param, query: { limit: 'all' } })),
        ask(inHouse.buys.$get({ param, query: { limit: 'all' } })),
      ]);
      if (typeof households === 'string' || typeof suppliers === 'string' || typeof buys === 'string')
        throw new Error('lists are asked for as JSON');
      const named = (rows: readonly { id: string; name: string }[]) =>
        rows.map(({ id, name }) => ({ value: id, name }));
      return {
        households: named(households.households),
        suppliers: named(suppliers.suppliers),
        buys: named(buys.buys.filter(({ stage }) => stage !== 'closed' && stage !== 'called-off')),
      };
    },
  });
