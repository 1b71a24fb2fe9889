import { useMutation, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { useForgetDraft } from '../../ui/use-draft.ts';
import { bankKey, lineApi, type PostWish } from './queries.ts';

const FORMS = ['bank-line', 'bank-aside', 'bank-answer', 'bank-undo'];

/** What can be done with one line of the bank; whatever changed is read again afterwards. */
export function useLine(bankLine: string) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const forgetDraft = useForgetDraft();
  const param = { storehouse, bankLine };
  const onSuccess = () => {
    for (const form of FORMS) forgetDraft(`${form}.${bankLine}`); // the line leaves the list, and its forms with it
    return queries.invalidateQueries({ queryKey: bankKey({ storehouse }) });
  };
  const matching = useMutation({
    mutationFn: (entryId: string) =>
      askOnce(`bank-match.${bankLine}`, { entryId }, (header) =>
        lineApi.match.$post({ param, json: { entryId } }, { headers: header }),
      ),
    onSuccess,
  });
  const posting = useMutation({
    mutationFn: (json: PostWish) =>
      askOnce(`bank-post.${bankLine}`, json, (header) =>
        lineApi.posting.$post({ param, json }, { headers: header }),
      ),
    onSuccess,
  });
  const settingAside = useMutation({
    mutationFn: (reason: string) =>
      askOnce(`bank-aside.${bankLine}`, { reason }, (header) =>
        lineApi['setting-aside'].$post({ param, json: { reason } }, { headers: header }),
      ),
    onSuccess,
  });
  const undoing = useMutation({
    mutationFn: (json: { reason: string; takesBack: boolean }) =>
      askOnce(`bank-undo.${bankLine}`, json, (header) =>
        lineApi.undoing.$post({ param, json }, { headers: header }),
      ),
    onSuccess,
  });
  return { matching, posting, settingAside, undoing };
}
export type LineActions = ReturnType<typeof useLine>;
