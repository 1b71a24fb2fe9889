import { spellCode } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { OF_STOCK } from '../shelf/queries.ts';
import { inside } from './queries.ts';
import { useRotationText } from './words.ts';

type Taken = { readonly entryId: string; readonly says: string; readonly warning: string | null };

/** Taking a container to the kitchen in one step, what that did, and putting it back. */
export function useTaking() {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [taken, setTaken] = useState<Taken | null>(null);
  const renew = () => Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
  const taking = useMutation({
    mutationFn: (container: string) =>
      askOnce(`kitchen.${container}`, {}, (headers) =>
        inside.containers[':container'].kitchen.$post(
          { param: { storehouse, container }, json: {} },
          { headers },
        ),
      ),
    onSuccess: ({ entryId, food, takenGrams, next, earlier }) => {
      const name = nameIn(format.language, food);
      const after = next?.container ? words.thenNext(spellCode(next.container.code)) : words.lastOne;
      setTaken({
        entryId,
        says: `${words.taken(format.mass(takenGrams), name)} ${after}`,
        warning: earlier?.container ? words.earlier(spellCode(earlier.container.code)) : null,
      });
      return renew();
    },
  });
  const undoing = useMutation({
    mutationFn: (entry: string) => {
      const json = { reason: '' };
      return askOnce(`kitchen-undo.${entry}`, json, (headers) =>
        inside.kitchen.takes[':entry'].undoing.$post({ param: { storehouse, entry }, json }, { headers }),
      );
    },
    onSuccess: () => {
      setTaken(null);
      return renew();
    },
  });
  return { taken, taking, undoing };
}
export type Taking = ReturnType<typeof useTaking>;
