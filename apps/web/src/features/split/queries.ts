import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import type { Comparison } from './split-body.ts';

const inside = api.storehouses[':storehouse'];
type OfBuy = { readonly storehouse: string; readonly buy: string };

export const splitsQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'splits'],
    queryFn: () => ask(inside.buys[':buy'].splits.$get({ param, query: {} })),
  });

export const simulationQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['split-simulation', param],
    queryFn: () => ask(inside['split-simulation'].$get({ param })),
  });

/** The answer of a comparison, or why there is none: everything is split already, or nothing has landed. */
export type Compared = { readonly comparison: Comparison | null; readonly why: ApiProblem | null };

export const comparisonQuery = (param: OfBuy & { readonly line: string }) =>
  queryOptions({
    queryKey: ['buy', { storehouse: param.storehouse, buy: param.buy }, 'comparison', param.line],
    queryFn: async (): Promise<Compared> => {
      try {
        const call = inside.buys[':buy'].lines[':line']['split-comparison'].$get({ param });
        return { comparison: await ask(call), why: null };
      } catch (error) {
        if (error instanceof ApiProblem && error.status === 409) return { comparison: null, why: error };
        throw error;
      }
    },
  });
