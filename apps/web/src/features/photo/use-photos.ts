import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { api, ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useOnline } from '../../ui/use-online.ts';
import { shrinkPhoto, toBase64 } from './shrink.ts';
import { dropWaiting, keepWaiting, listWaiting, type Shown, type WaitingPhoto } from './waiting.ts';

const inside = api.storehouses[':storehouse'];

const photosQuery = ({ storehouse, buy, shows, thingId }: Shown) =>
  queryOptions({
    queryKey: ['photos', storehouse, shows, thingId],
    queryFn: () =>
      ask(
        inside.buys[':buy'].photos.$get({
          param: { storehouse, buy },
          query: { shows, thingId, limit: 'all' },
        }),
      ),
  });

const waitingQuery = (of: Shown) =>
  queryOptions({
    queryKey: ['photos-waiting', of.storehouse, of.shows, of.thingId],
    queryFn: () => listWaiting(of),
    staleTime: 0,
  });

async function send({ id, jpeg, storehouse, buy, shows, thingId }: WaitingPhoto): Promise<void> {
  const json = { shows, thingId, contentBase64: await toBase64(jpeg), note: '' };
  await ask(
    inside.buys[':buy'].photos.$post(
      { param: { storehouse, buy }, json },
      { headers: { 'Idempotency-Key': id } },
    ),
  ).catch((error: unknown) => {
    // The very same picture of the very same thing is there already: nothing is lost by letting this one go.
    if (!(error instanceof ApiProblem && error.code === 'already-there')) throw error;
  });
  await dropWaiting(id);
}

/** The photos of one thing: those that the server has, those that wait, and taking, sending and taking away. */
export function usePhotos(of: Shown) {
  const client = useQueryClient();
  const isOnline = useOnline();
  const kept = useQuery(photosQuery(of));
  const waiting = useQuery(waitingQuery(of));
  const renew = () =>
    Promise.all([
      client.invalidateQueries({ queryKey: photosQuery(of).queryKey }),
      client.invalidateQueries({ queryKey: waitingQuery(of).queryKey }),
    ]);
  /** One after another, in the order they were taken; the first refusal stops the rest. */
  const sending = useMutation({
    mutationFn: async () => {
      for (const photo of await listWaiting(of)) await send(photo);
    },
    onSettled: renew,
  });
  const adding = useMutation({
    mutationFn: async (file: File) => {
      const jpeg = await shrinkPhoto(file);
      await keepWaiting({ ...of, id: newKey(), jpeg });
    },
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: waitingQuery(of).queryKey });
      sending.mutate();
    },
  });
  const dropping = useMutation({ mutationFn: dropWaiting, onSuccess: renew });
  const removing = useMutation({
    mutationFn: (photo: string) =>
      ask(inside.photos[':photo'].$delete({ param: { storehouse: of.storehouse, photo } })),
    onSuccess: renew,
  });
  const count = waiting.data?.length ?? 0;
  const { mutate, isPending } = sending;
  useEffect(() => {
    if (isOnline && count > 0) mutate();
  }, [isOnline, count, mutate]);
  return { kept, waiting: waiting.data ?? [], adding, sending, isSending: isPending, dropping, removing };
}
