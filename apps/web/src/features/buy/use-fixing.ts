import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { useForgetDraft } from '../../ui/use-draft.ts';

const fixing = api.storehouses[':storehouse'].buys[':buy'].fixing;
type Wish = Parameters<typeof fixing.$post>[0]['json'];

/** Fixes the buy, as it was reckoned or as it was set by hand, and goes on to the order. */
export function useFixing(buy: string) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const forgetDraft = useForgetDraft();
  const param = { storehouse, buy };
  const { mutate, error, isPending, reset } = useMutation({
    mutationFn: async (json: Wish) =>
      await askOnce(`fix.${buy}`, json, (headers) => fixing.$post({ param, json }, { headers })),
    onSuccess: async () => {
      forgetDraft(`override.${buy}`);
      await navigate({ to: '/s/$storehouse/buys/$buy/order', params: param });
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
      await queries.invalidateQueries({ queryKey: ['next-steps'] });
    },
  });
  return { fix: mutate, error, isPending, reset };
}
