import { useMutation, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { OF_STOCK } from '../shelf/queries.ts';
import { type Answers, type Closings, lidsApi } from './queries.ts';

/** What was said of lids changes how jars keep, and what waits at home. */
const TOUCHED = ['lids', 'next-steps', 'keeping', 'inspections', ...OF_STOCK];

/** The two commands about lids; whatever showed them is read anew. */
export function useLids() {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const onSuccess = () => Promise.all(TOUCHED.map((key) => queries.invalidateQueries({ queryKey: [key] })));
  const param = { storehouse };
  return {
    answering: useMutation({
      mutationFn: (json: Answers) =>
        askOnce('lids', json, (headers) => lidsApi.answers.$post({ param, json }, { headers })),
      onSuccess,
    }),
    closing: useMutation({
      mutationFn: (json: Closings) =>
        askOnce('lids.closed', json, (headers) => lidsApi.closings.$post({ param, json }, { headers })),
      onSuccess,
    }),
  };
}
