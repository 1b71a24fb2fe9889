import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useEffect, useState } from 'react';
import { api, ask } from '../../api/client.ts';

const preview = api.storehouses[':storehouse'].buys[':buy'].preview;
type PreviewWish = InferRequestType<typeof preview.$post>['json'];

const STILL_MILLISECONDS = 300; // the thumb has come to rest

/** What a pledge would cost, asked for once the thumb rests; nothing is kept of it. */
export function usePreview(param: { storehouse: string; buy: string }, wish: PreviewWish | undefined) {
  const text = JSON.stringify(wish ?? null);
  const [still, setStill] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setStill(text), STILL_MILLISECONDS);
    return () => clearTimeout(timer);
  }, [text]);
  return useQuery({
    queryKey: ['buy', param, 'preview', still],
    enabled: still !== 'null',
    placeholderData: keepPreviousData,
    queryFn: () => ask(preview.$post({ param, json: JSON.parse(still) as PreviewWish })),
  });
}
