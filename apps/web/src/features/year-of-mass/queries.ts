import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const route = api.storehouses[':storehouse']['year-of-mass'];
type InHouse = { readonly storehouse: string };
export type Whose = 'household' | 'store';
export type Part = 'landed' | 'from-others' | 'changed' | 'eaten' | 'given' | 'lost' | 'to-others';
type OfYear = { readonly year: number; readonly of: Whose };

export const yearOfMassQuery = (param: InHouse, { year, of }: OfYear) =>
  queryOptions({
    queryKey: ['year-of-mass', param, year, of],
    queryFn: () => ask(route.$get({ param, query: { year: String(year), of } })),
  });
export type YearOfMass = Awaited<ReturnType<NonNullable<ReturnType<typeof yearOfMassQuery>['queryFn']>>>;

export const yearsMovementsQuery = (param: InHouse, { year, of, part }: OfYear & { part: Part }) =>
  queryOptions({
    queryKey: ['year-of-mass', param, year, of, part],
    queryFn: () => ask(route.movements.$get({ param, query: { year: String(year), of, part } })),
  });
