import { useMutation, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { useForgetDraft } from '../../ui/use-draft.ts';
import { OF_STOCK } from '../shelf/queries.ts';
import { type Answers, type Closings, lidsApi } from './queries.ts';

/** What was said of lids changes how jars keep, and what waits at home. */
const TOUCHED = ['lids', 'next-steps', 'keeping', 'inspections', ...OF_STOCK];

/** Under what name a form keeps what is typed of the lids of one list. */
export const draftOf = (list: string): string => `lids.${list}`;

/** The two commands about the lids of a list; whatever showed them is read anew. */
export function useLids(list: string) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const forget = useForgetDraft();
  const readAnew = () => Promise.all(TOUCHED.map((key) => queries.invalidateQueries({ queryKey: [key] })));
  const param = { storehouse };
  return {
    answering: useMutation({
      mutationFn: (json: Answers) =>
        askOnce('lids', json, (headers) => lidsApi.answers.$post({ param, json }, { headers })),
      onSuccess: () => {
        forget(draftOf(list)); // first, since the form of what is due then begins anew
        return readAnew();
      },
    }),
    closing: useMutation({
      mutationFn: (json: Closings) =>
        askOnce('lids.closed', json, (headers) => lidsApi.closings.$post({ param, json }, { headers })),
      onSuccess: readAnew,
    }),
  };
}
export type Lids = ReturnType<typeof useLids>;
