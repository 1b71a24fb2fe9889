import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { api, ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useHouse } from '../../ui/house.ts';
import { useOnline } from '../../ui/use-online.ts';
import { markWaiting, unmark } from './marks.ts';
import { sendPhoto } from './send-photo.ts';
import { shrinkPhoto } from './shrink.ts';
import { dropWaiting, keepWaiting, listWaiting, type Shown } from './waiting.ts';

const inside = api.storehouses[':storehouse'];

const photosQuery = (of: Shown) =>
  queryOptions({ queryKey: ['photos', of.storehouse, of.shows, of.thingId], queryFn: () => read(of) });

async function read(of: Shown) {
  const { storehouse, thingId } = of;
  if ('buy' in of) {
    const query = { shows: of.shows, thingId, limit: 'all' } as const;
    return ask(inside.buys[':buy'].photos.$get({ param: { storehouse, buy: of.buy }, query }));
  }
  const param = { storehouse, item: of.item };
  const ofLoan = of.shows === 'loan-out' || of.shows === 'loan-back';
  const { photos } = await ask(
    inside.equipment[':item'].photos.$get({ param, query: ofLoan ? { loanId: thingId } : {} }),
  );
  const moment = of.shows === 'loan-out' ? 'out' : 'back';
  return {
    photos: photos.filter((photo) =>
      ofLoan ? photo.moment === moment : photo.partId === (of.shows === 'part' ? thingId : null),
    ),
  };
}

const waitingQuery = (of: Shown) =>
  queryOptions({
    queryKey: ['photos-waiting', of.storehouse, of.shows, of.thingId],
    queryFn: () => listWaiting(of),
    staleTime: 0,
  });

const AGAIN_AFTER_MILLISECONDS = 5_000;

/** The photos of one thing: those that the server has, those that wait, and taking, sending and taking away. */
export function usePhotos(of: Shown) {
  const client = useQueryClient();
  const { personId } = useHouse();
  const whose = { storehouse: of.storehouse, personId };
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
      for (const photo of await listWaiting(of)) {
        await sendPhoto(photo);
        unmark(whose, photo.id);
      }
    },
    onSettled: renew,
  });
  const adding = useMutation({
    mutationFn: async (file: File) => {
      const jpeg = await shrinkPhoto(file);
      const id = newKey();
      await keepWaiting({ ...of, id, jpeg });
      markWaiting(whose, id);
    },
    onSuccess: async () => {
      await client.invalidateQueries({ queryKey: waitingQuery(of).queryKey });
      sending.mutate();
    },
  });
  const dropping = useMutation({
    mutationFn: async (id: string) => {
      await dropWaiting(id);
      unmark(whose, id);
    },
    onSuccess: renew,
  });
  const removing = useMutation({
    mutationFn: (photo: string) =>
      ask(inside.photos[':photo'].$delete({ param: { storehouse: of.storehouse, photo } })),
    onSuccess: renew,
  });
  const count = waiting.data?.length ?? 0;
  const { mutate, isPending, error } = sending;
  const isLost = error instanceof ApiProblem && error.code === 'offline';
  const isRefused = error !== null && !isLost;
  useEffect(() => {
    if (!isOnline || count === 0 || isPending || isRefused) return;
    // A phone that believes it has a signal may have none yet.
    const soon = setTimeout(() => mutate(), isLost ? AGAIN_AFTER_MILLISECONDS : 0);
    return () => clearTimeout(soon);
  }, [isOnline, count, isPending, isLost, isRefused, mutate]);
  return { kept, waiting: waiting.data ?? [], adding, sending, isSending: isPending, dropping, removing };
}
