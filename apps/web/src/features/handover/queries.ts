import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const { handover } = api.storehouses[':storehouse'];

export const handoverQuery = (param: { readonly storehouse: string }) =>
  queryOptions({ queryKey: ['handover', param], queryFn: () => ask(handover.$get({ param })) });

export type HandoverPage = Awaited<ReturnType<NonNullable<ReturnType<typeof handoverQuery>['queryFn']>>>;
