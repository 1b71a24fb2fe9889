import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { api, ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useOnline } from '../../ui/use-online.ts';
import { shrinkPhoto, toBase64 } from './shrink.ts';
import { dropWaiting, keepWaiting, listWaiting, type Shown, type WaitingPhoto } from './waiting.ts';

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

async function send(photo: WaitingPhoto): Promise<void> {
  const { id, jpeg } = photo;
  await post(photo, await toBase64(jpeg), { headers: { 'Idempotency-Key': id } }).catch((error: unknown) => {
    // The very same picture of the very same thing is there already: nothing is lost by letting this one go.
    if (!(error instanceof ApiProblem && error.code === 'already-there')) throw error;
  });
  await dropWaiting(id);
}

function post(of: Shown, contentBase64: string, options: { headers: Record<string, string> }) {
  const { storehouse, thingId } = of;
  if ('buy' in of) {
    const json = { shows: of.shows, thingId, contentBase64, note: '' };
    return ask(inside.buys[':buy'].photos.$post({ param: { storehouse, buy: of.buy }, json }, options));
  }
  const param = { storehouse, item: of.item };
  const json = { contentBase64, ...partOrLoan(of.shows, thingId) };
  return ask(inside.equipment[':item'].photos.$post({ param, json }, options));
}

function partOrLoan(shows: Shown['shows'], id: string) {
  if (shows === 'part') return { partId: id };
  if (shows === 'equipment') return {};
  return { loan: { loanId: id, moment: shows === 'loan-out' ? ('out' as const) : ('back' as const) } };
}

const AGAIN_AFTER_MILLISECONDS = 5_000;

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
